import type { Expectation, Standing, Suspect } from './types.ts';

/** A suspect as written, with what it predicts and what would rule it out, evaluated. */
export interface Considered {
  readonly cell: number;
  readonly name: string;
  readonly expectations: readonly Expectation[];
}

/**
 * Weighs a suspect: ruled out when a `ruled out if` holds or a prediction fails,
 * not tested when none of its expectations is decided, otherwise still possible.
 */
export function weigh(considered: Considered): Suspect {
  const { cell, name, expectations } = considered;
  const against = expectations.filter(speaksAgainst);
  const speaksFor = expectations.filter(
    (each) =>
      each.truth.verdict === (each.part === 'predicts' ? 'holds' : 'fails') && !against.includes(each),
  );
  const missing = expectations.filter((each) => !against.includes(each) && !speaksFor.includes(each));
  const decided = against.length + speaksFor.length > 0;
  const standing: Standing = against.length > 0 ? 'ruled out' : decided ? 'still possible' : 'not tested';
  const by = (against.length > 0 ? against : speaksFor).map((each) => each.text);
  return { cell, name, standing, by, speaksFor, against, missing };
}

function speaksAgainst({ part, truth }: Expectation): boolean {
  return part === 'predicts' ? truth.verdict === 'fails' : truth.verdict === 'holds';
}

/**
 * The measurement not yet taken that would separate the most suspects that are left:
 * it is counted for every pair of one cell of which at least one predicts something of it, and not both the same.
 * Undefined when none would separate any.
 */
export function nextMeasurement(
  suspects: readonly Suspect[],
  notTaken: (name: string) => boolean,
): string | undefined {
  const left = suspects.filter((each) => each.standing !== 'ruled out');
  const said = new Map<string, Map<Suspect, string>>();
  for (const suspect of left) {
    for (const expectation of suspect.missing) {
      for (const name of expectation.from) {
        if (!notTaken(name)) continue;
        const bySuspect = said.get(name) ?? new Map<Suspect, string>();
        bySuspect.set(suspect, `${bySuspect.get(suspect) ?? ''}\n${expectation.part} ${expectation.text}`);
        said.set(name, bySuspect);
      }
    }
  }
  let best: string | undefined;
  let most = 0;
  for (const [name, bySuspect] of said) {
    const pairs = pairsSeparated(left, bySuspect);
    if (pairs > most) {
      most = pairs;
      best = name;
    }
  }
  return best;
}

function pairsSeparated(left: readonly Suspect[], said: ReadonlyMap<Suspect, string>): number {
  let pairs = 0;
  for (let i = 0; i < left.length; i++) {
    for (let j = i + 1; j < left.length; j++) {
      const [a, b] = [left[i], left[j]];
      if (a?.cell !== b?.cell || a === undefined || b === undefined) continue;
      if (said.get(a) !== said.get(b)) pairs++;
    }
  }
  return pairs;
}
