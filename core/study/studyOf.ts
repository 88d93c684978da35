import type { CaseFile } from '../casefile/readCase.ts';
import { joinStream } from '../casefile/stream.ts';
import type { CellFacts } from './cellFacts.ts';
import type { Memo } from './memo.ts';
import type { Outcome } from './outcome.ts';
import { nextMeasurement } from './suspects.ts';
import type { Finding, Study } from './types.ts';

/** What a study is made of; the lists of the whole case follow from it. */
interface Parts {
  readonly file: CaseFile;
  readonly cells: readonly CellFacts[];
  readonly outcomes: readonly Outcome[];
  readonly cellFindings: Study['cellFindings'];
  readonly memo: Memo;
}

/** A study whose lists are made when they are first asked for: after a keystroke an editor needs few of them. */
export function studyOf({ file, cells, outcomes, cellFindings, memo }: Parts): Study {
  const { header } = memo.header;
  const fileFindings = file.diagnostics.map((diagnostic): Finding => ({ cell: undefined, diagnostic }));
  const text = once(() => joinStream(file.stream));
  const readings = once(() => all([{ readings: header.values.values() }, ...cells], (each) => each.readings));
  const computed = once(() => all(outcomes, (each) => each.computed));
  const expectations = once(() => all(outcomes, (each) => each.expectations));
  const answers = once(() => all(outcomes, (each) => each.answers));
  const plotted = once(() => all(outcomes, (each) => each.plotted));
  const suspects = once(() => all(outcomes, (each) => each.suspects));
  const next = once(() => nextMeasurement(suspects(), notTakenIn(memo.reading)));
  const findings = once(() => all([fileFindings, ...cellFindings], (each) => each));
  return {
    get text() {
      return text();
    },
    file,
    title: header.title,
    get readings() {
      return readings();
    },
    get computed() {
      return computed();
    },
    get expectations() {
      return expectations();
    },
    get answers() {
      return answers();
    },
    get plotted() {
      return plotted();
    },
    get suspects() {
      return suspects();
    },
    get next() {
      return next();
    },
    get findings() {
      return findings();
    },
    fileFindings,
    cellFindings,
    memo,
  };
}

/** The same study with other findings. */
export function withFindings(
  study: Study,
  fileFindings: Study['fileFindings'],
  cellFindings: Study['cellFindings'],
): Study {
  const findings = once(() => all([fileFindings, ...cellFindings], (each) => each));
  return {
    get text() {
      return study.text;
    },
    file: study.file,
    title: study.title,
    get readings() {
      return study.readings;
    },
    get computed() {
      return study.computed;
    },
    get expectations() {
      return study.expectations;
    },
    get answers() {
      return study.answers;
    },
    get plotted() {
      return study.plotted;
    },
    get suspects() {
      return study.suspects;
    },
    get next() {
      return study.next;
    },
    get findings() {
      return findings();
    },
    fileFindings,
    cellFindings,
    memo: study.memo,
  };
}

/** Whether a reading of that name is missing: no cell has it, or the cell says that it was not taken. */
function notTakenIn(reading: Memo['reading']): (name: string) => boolean {
  return (name) => {
    const value = reading(name)?.value;
    return value === undefined || (value.kind === 'absent' && value.status === 'not measured');
  };
}

function once<T>(make: () => T): () => T {
  let made: { readonly value: T } | undefined;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}

function all<P, T>(parts: readonly P[], of: (part: P) => Iterable<T>): T[] {
  const list: T[] = [];
  for (const part of parts) for (const each of of(part)) list.push(each);
  return list;
}
