import fc from 'fast-check';

/** A slip of the hand: some characters go, others come. */
export interface Mutation {
  /** Where, as a part of the text's length. */
  readonly at: number;
  readonly deleted: number;
  readonly inserted: string;
}

const slips = [
  '',
  ' ',
  '\n',
  '\r\n',
  '---\n',
  '\n---\n---\n',
  '--- what?\n',
  'x',
  '1,5',
  ' inhg',
  ' psi',
  ': ',
  '- ',
  '"',
  '{',
  '&a ',
  '\t',
  'before.',
  'note: |\n  # Rain\n',
  '§',
  '😀',
];

export const mutations: fc.Arbitrary<readonly Mutation[]> = fc.array(
  fc.record({
    at: fc.double({ min: 0, max: 1, noNaN: true }),
    deleted: fc.constantFrom(0, 0, 1, 2, 5, 40),
    inserted: fc.constantFrom(...slips),
  }),
  { minLength: 1, maxLength: 4 },
);

export function mutated(text: string, list: readonly Mutation[]): string {
  return list.reduce((now, { at, deleted, inserted }) => {
    const start = Math.floor(at * now.length);
    return now.slice(0, start) + inserted + now.slice(start + deleted);
  }, text);
}
