import type { Summary } from '../../core/study/summary.ts';

/** The last lines of a check: all cases together. */
export function summaryText(summary: Summary): string {
  const verdicts = [
    `${summary.holds} ${summary.holds === 1 ? 'holds' : 'hold'}`,
    `${summary.fails} ${summary.fails === 1 ? 'fails' : 'fail'}`,
    `${summary['too close to call']} too close to call`,
    `${summary['not measured']} not measured`,
    `${summary['cannot compute']} cannot compute`,
  ].join(', ');
  return `${counted(summary.cases, 'case')}: ${verdicts}; ${found(summary).join(', ')}.\n`;
}

/** Of cases that give what their record says, nothing that was found is a surprise: ": these 17 errors … are meant". */
export function meantText({ errors, warnings, infos }: Summary): string {
  const all = errors + warnings + infos;
  if (all === 0) return '';
  const told = found({ errors, warnings, infos }).filter((each) => !each.startsWith('0 '));
  const last = told.pop() ?? '';
  const list = told.length === 0 ? last : `${told.join(', ')} and ${last}`;
  return all === 1 ? `: the ${list} is meant` : `: the ${list} are meant`;
}

function found({ errors, warnings, infos }: Pick<Summary, 'errors' | 'warnings' | 'infos'>): string[] {
  return [counted(errors, 'error'), counted(warnings, 'warning'), counted(infos, 'note')];
}

const counted = (count: number, what: string): string => `${count} ${what}${count === 1 ? '' : 's'}`;
