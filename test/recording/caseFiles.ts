import { message } from '../../core/diagnostics/words.ts';
import { type CaseFiles, type FileContent, inMemory } from '../../core/recording/files.ts';
import { checkCase } from '../../core/rules/checkCase.ts';
import { type CaseResult, caseResult } from '../../core/study/results.ts';
import type { Study } from '../../core/study/types.ts';

/** Files beside a case, by their names: texts, bytes, or why there are none. */
export function filesOf(named: Readonly<Record<string, string | Uint8Array | FileContent>>): CaseFiles {
  const contents = new Map(
    Object.entries(named).map(([name, each]): [string, FileContent] => {
      if (typeof each === 'string') return [name, inMemory(new TextEncoder().encode(each))];
      return [name, each instanceof Uint8Array ? inMemory(each) : each];
    }),
  );
  return (file) => contents.get(file) ?? { kind: 'none', why: { is: 'not there' } };
}

/** A case with one capture of the file `log.csv`, named `log`, and more lines of its cell. */
export const caseWith = (lines: string, more = ''): string =>
  `diag: 1\ncase: A capture\n---\ncapture: Log\nas: log\nstate: cruise\nfile: log.csv\n${lines}${more}`;

export function studied(log: string | Uint8Array | FileContent, lines = '', more = ''): Study {
  return checkCase(caseWith(lines, more), undefined, filesOf({ 'log.csv': log }));
}

export const resultOf = (study: Study): CaseResult => caseResult(study, 'case.diag');

/** What is said about a case, with its code. */
export function said(study: Study): readonly string[] {
  return study.findings.map(({ diagnostic }) => `${diagnostic.code}: ${message(diagnostic)}`);
}

/** A channel's samples in the unit that it is read in. */
export function samplesOf(study: Study, name: string): readonly number[] | undefined {
  const value = study.readings.find((each) => each.fullName === name)?.value;
  if (value?.kind !== 'series') return undefined;
  const { factor, offset } = value.type.unit;
  return Array.from(value.samples, (si) => (si - (value.type.kind === 'point' ? offset : 0)) / factor);
}

export function timesOf(study: Study, name: string): readonly number[] | undefined {
  const value = study.readings.find((each) => each.fullName === name)?.value;
  return value?.kind === 'series' ? [...value.time] : undefined;
}
