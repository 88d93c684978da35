import type { CaseFile } from '../casefile/readCase.ts';
import { joinStream } from '../casefile/stream.ts';
import { sections } from './header.ts';
import type { Memo } from './memo.ts';
import { nextMeasurement } from './suspects.ts';
import type { Answer, Computed, Expectation, Finding, Plotted, Reading, Study, Suspect } from './types.ts';

/** A study of a file; the lists of the whole case follow from what each cell brings and comes to. */
export function studyOf(file: CaseFile, memo: Memo): Study {
  const about = file.diagnostics.map((diagnostic): Finding => ({ cell: undefined, diagnostic }));
  return new Studied(new Lists(file, memo), about, memo.cellFindings, undefined);
}

/** The same study with other findings; what rules kept of it stays, unless there is something else to keep. */
export function withFindings(
  study: Study,
  fileFindings: Study['fileFindings'],
  cellFindings: Study['cellFindings'],
  keptByRules: unknown = study.keptByRules,
): Study {
  const lists = study instanceof Studied ? study.lists : new Lists(study.file, study.memo);
  return new Studied(lists, fileFindings, cellFindings, keptByRules);
}

/**
 * Lists that are made when they are first asked for: after a keystroke an editor needs few of them.
 * A class, since an object that is written down with getters takes many times as long to make as all else of it.
 */
class Lists {
  readonly file: CaseFile;
  readonly memo: Memo;
  #text: string | undefined;
  #readings: readonly Reading[] | undefined;
  #computed: readonly Computed[] | undefined;
  #expectations: readonly Expectation[] | undefined;
  #answers: readonly Answer[] | undefined;
  #plotted: readonly Plotted[] | undefined;
  #suspects: readonly Suspect[] | undefined;
  #next: { readonly name: string | undefined } | undefined;

  constructor(file: CaseFile, memo: Memo) {
    this.file = file;
    this.memo = memo;
  }

  get text(): string {
    this.#text ??= joinStream(this.file.stream);
    return this.#text;
  }

  get readings(): readonly Reading[] {
    const { header, names } = this.memo;
    this.#readings ??= all(
      [{ readings: header.header.values.values() }, ...names.cells],
      (each) => each.readings,
    );
    return this.#readings;
  }

  get computed(): readonly Computed[] {
    this.#computed ??= all(this.memo.outcomes, (each) => each.computed);
    return this.#computed;
  }

  get expectations(): readonly Expectation[] {
    this.#expectations ??= all(this.memo.outcomes, (each) => each.expectations);
    return this.#expectations;
  }

  get answers(): readonly Answer[] {
    this.#answers ??= all(this.memo.outcomes, (each) => each.answers);
    return this.#answers;
  }

  get plotted(): readonly Plotted[] {
    this.#plotted ??= all(this.memo.outcomes, (each) => each.plotted);
    return this.#plotted;
  }

  get suspects(): readonly Suspect[] {
    this.#suspects ??= all(this.memo.outcomes, (each) => each.suspects);
    return this.#suspects;
  }

  get next(): string | undefined {
    this.#next ??= { name: nextMeasurement(this.suspects, notTakenIn(this.memo.reading)) };
    return this.#next.name;
  }
}

class Studied implements Study {
  readonly lists: Lists;
  readonly fileFindings: Study['fileFindings'];
  readonly cellFindings: Study['cellFindings'];
  readonly keptByRules: unknown;
  #findings: readonly Finding[] | undefined;

  constructor(
    lists: Lists,
    fileFindings: Study['fileFindings'],
    cellFindings: Study['cellFindings'],
    keptByRules: unknown,
  ) {
    this.lists = lists;
    this.fileFindings = fileFindings;
    this.cellFindings = cellFindings;
    this.keptByRules = keptByRules;
  }

  get file(): CaseFile {
    return this.lists.file;
  }
  get memo(): Memo {
    return this.lists.memo;
  }
  get title(): string {
    return this.memo.header.header.title;
  }
  get text(): string {
    return this.lists.text;
  }
  get readings(): readonly Reading[] {
    return this.lists.readings;
  }
  get computed(): readonly Computed[] {
    return this.lists.computed;
  }
  get expectations(): readonly Expectation[] {
    return this.lists.expectations;
  }
  get answers(): readonly Answer[] {
    return this.lists.answers;
  }
  get plotted(): readonly Plotted[] {
    return this.lists.plotted;
  }
  get suspects(): readonly Suspect[] {
    return this.lists.suspects;
  }
  get next(): string | undefined {
    return this.lists.next;
  }
  get findings(): readonly Finding[] {
    this.#findings ??= all([this.fileFindings, ...this.cellFindings], (each) => each);
    return this.#findings;
  }
}

/** Whether a reading of that name is missing: no cell has it, or the cell says that it was not taken. What the header holds is not measured. */
function notTakenIn(reading: Memo['reading']): (name: string) => boolean {
  return (name) => {
    if (sections.some((each) => name.startsWith(`${each}.`))) return false;
    const value = reading(name)?.value;
    return value === undefined || (value.kind === 'absent' && value.status === 'not measured');
  };
}

function all<P, T>(parts: readonly P[], of: (part: P) => Iterable<T>): T[] {
  const list: T[] = [];
  for (const part of parts) for (const each of of(part)) list.push(each);
  return list;
}
