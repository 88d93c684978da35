import compressionTest from './templates/compression-test.diag';
import emptyCase from './templates/empty-case.diag';
import teachingCase from './templates/teaching-case.diag';
import trimsAtSeveralLoads from './templates/trims-at-several-loads.diag';
import voltageDrop from './templates/voltage-drop.diag';

/** What a new case can start from. */
export interface Template {
  readonly name: string;
  /** One line for the list. */
  readonly meaning: string;
  readonly text: string;
}

export const templates: readonly Template[] = [
  { name: 'empty-case', meaning: 'the header and the first readings, to be filled in', text: emptyCase },
  {
    name: 'teaching-case',
    meaning: 'a case with questions, answers and remarks for the teacher',
    text: teachingCase,
  },
  {
    name: 'compression-test',
    meaning: 'cranking, running and leak-down by cylinder, with the checks',
    text: compressionTest,
  },
  {
    name: 'trims-at-several-loads',
    meaning: 'fuel trims at idle, fast idle and cruise, and what their shape says',
    text: trimsAtSeveralLoads,
  },
  {
    name: 'voltage-drop',
    meaning: 'drops from point to point under load, and their limits',
    text: voltageDrop,
  },
];
