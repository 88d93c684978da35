/** The part of `casebook check --format json` that a sample's record holds. */
export interface CheckedCase {
  readonly file: string;
  readonly expectations: readonly {
    readonly cell: number;
    readonly part: string;
    readonly text: string;
    readonly verdict: string;
  }[];
  readonly suspects: readonly { readonly name: string; readonly standing: string }[];
  readonly diagnostics: readonly {
    readonly code: string;
    readonly severity: string;
    readonly line: number;
    readonly column: number;
  }[];
}

/** What each sample is known to give, a line each, by file: `cell 8, expect "idle < 10 %": fails`. */
export type SampleRecord = { readonly [file: string]: readonly string[] };

export function recordOf(cases: readonly CheckedCase[]): SampleRecord {
  return Object.fromEntries(cases.map((checked) => [checked.file, linesOf(checked)]));
}

/** How `found` differs from what was recorded, as sentences; none when every sample gives exactly its record. */
export function differences(recorded: SampleRecord, found: SampleRecord): string[] {
  const files = [...new Set([...Object.keys(recorded), ...Object.keys(found)])].sort();
  return files.flatMap((file) => {
    const [before, after] = [recorded[file], found[file]];
    if (before === undefined) return [`${file} has no record.`];
    if (after === undefined) return [`${file} is recorded and was not checked.`];
    return [
      ...without(before, after).map((line) => `${file} no longer gives: ${line}`),
      ...without(after, before).map((line) => `${file} now gives: ${line}`),
    ];
  });
}

function linesOf({ expectations, suspects, diagnostics }: CheckedCase): string[] {
  return [
    ...expectations.map(({ cell, part, text, verdict }) => `cell ${cell}, ${part} "${text}": ${verdict}`),
    ...suspects.map(({ name, standing }) => `suspect "${name}": ${standing}`),
    ...diagnostics.map(({ code, severity, line, column }) => `${line}:${column} ${severity} ${code}`),
  ];
}

/** The lines of `all` that are not in `others`, counting repeated ones. */
function without(all: readonly string[], others: readonly string[]): string[] {
  const left = [...others];
  return all.filter((line) => {
    const at = left.indexOf(line);
    if (at >= 0) left.splice(at, 1);
    return at < 0;
  });
}
