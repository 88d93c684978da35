import { didYouMean, oneOf, type Rows } from '../row.ts';

/** Findings about names: what a name stands for, and what depends on what. */
export interface NamesFacts {
  readonly 'unknown-name': { readonly name: string; readonly nearest: readonly string[] };
  readonly 'ambiguous-name': { readonly name: string; readonly candidates: readonly string[] };
  readonly 'unknown-member': {
    readonly of: string;
    readonly member: string;
    readonly nearest: readonly string[];
    readonly has: readonly string[];
    /** It is a signal, but this is no cell of readings. */
    readonly known?: boolean;
  };
  readonly 'not-a-value': { readonly name: string; readonly has: readonly string[] };
  readonly 'unknown-signal': {
    readonly name: string;
    readonly nearest: readonly string[];
    /** There is none, or it cannot be read: it may well declare the name. */
    readonly header?: 'not read';
  };
  readonly 'duplicate-name': { readonly name: string; readonly where: string };
  readonly 'shadowed-name': { readonly name: string; readonly what: string };
  readonly cycle: { readonly members: readonly string[]; readonly more: number };
  readonly 'unknown-tool': {
    readonly name: string;
    readonly nearest: readonly string[];
    readonly has: readonly string[];
  };
}

/** A header's section has its own keys, and no signals. */
const isSection = (of: string): boolean => ['vehicle', 'engine', 'site'].includes(of);

const few = (names: readonly string[]): string =>
  names.length > 8 ? `${names.slice(0, 8).join(', ')} … (${names.length} in all)` : names.join(', ');

/** "a, b or c"; of many names the first 8. */
const oneOfFew = (names: readonly string[]): string =>
  names.length > 8 ? `${names.slice(0, 8).join(', ')} … and ${names.length - 8} more` : oneOf(names);

export const namesRows: Rows<NamesFacts> = {
  'unknown-name': {
    severity: 'error',
    title: 'A name that nothing has',
    say: ({ name, nearest }) =>
      `No reading, capture or computed name is called \`${name}\`, and it is no signal.${didYouMean(nearest)}`,
    why: 'A check on a name that nothing has would never be decided. A signal that was not measured is another matter: its name is known and the result says "not measured".',
    wrong: 'expect:\n  - before.idle.mpa < 14 inHg',
    right: 'expect:\n  - before.idle.map < 14 inHg',
  },
  'ambiguous-name': {
    severity: 'error',
    title: 'A name that several cells have',
    say: ({ name, candidates }) => `\`${name}\` is in several cells. Say which one: ${oneOfFew(candidates)}.`,
    why: 'The same signal is often read before and after a repair. A bare name is only taken when one cell has it.',
    wrong: 'expect:\n  - ltft_b1 between -5 % and 5 %',
    right: 'expect:\n  - after.ltft_b1 between -5 % and 5 %',
  },
  'unknown-member': {
    severity: 'error',
    title: 'A cell has no such name',
    say: ({ of, member, nearest, has, known }) =>
      `\`${of}\` has no \`${member}\`${known || isSection(of) ? '' : ', and it is no signal'}.${didYouMean(nearest)}${
        has.length > 0 ? ` It has ${few(has)}.` : ''
      }`,
    why: 'What stands behind the point must be a name that the cell holds, one of its states, or a signal.',
    wrong: 'expect:\n  - before.idel.map < 14 inHg',
    right: 'expect:\n  - before.idle.map < 14 inHg',
  },
  'not-a-value': {
    severity: 'error',
    title: 'A whole cell where one value is due',
    say: ({ name, has }) =>
      `\`${name}\` names a group of values, not one. Add a point and one of: ${few(has)}.`,
    why: 'A cell or a state holds several values; an expression computes with one of them.',
    wrong: 'expect:\n  - before < 14 inHg',
    right: 'expect:\n  - before.idle.map < 14 inHg',
  },
  'unknown-signal': {
    severity: 'error',
    title: 'A reading of no known signal',
    say: ({ name, nearest, header }) =>
      header === undefined
        ? `\`${name}\` is not a signal that is known here.${didYouMean(nearest)} An own one is declared in the header under \`signals\`.`
        : `\`${name}\` is not a signal that is known without the header, which is missing or cannot be read. Put that right first: it may declare the signal.`,
    why: 'Units, ranges and cross-checks hang on the signal’s name. A misspelt one would silently lose them all.',
    wrong: 'values:\n  mpa: 13.1 inHg',
    right: 'values:\n  map: 13.1 inHg',
  },
  'duplicate-name': {
    severity: 'error',
    title: 'A name given twice',
    say: ({ name, where }) =>
      `\`${name}\` is already the name of ${where}. Each name may stand for one thing only.`,
    why: 'Two things of one name cannot be told apart by the checks that use it.',
    wrong: 'as: before   # in two cells',
    right: 'as: before\n…\nas: after',
  },
  'shadowed-name': {
    severity: 'error',
    title: 'A name that is already taken by the language',
    say: ({ name, what }) =>
      `\`${name}\` is ${what}, so it cannot be a name of your own. Choose another, such as \`my_${name}\`.`,
    why: 'If a computed value were called like a signal, a reader could not tell which of the two a check uses.',
    wrong: 'let:\n  map: before.idle.map + gauged.vacuum',
    right: 'let:\n  baro_seen: before.idle.map + gauged.vacuum',
  },
  cycle: {
    severity: 'error',
    title: 'Names that need each other',
    say: ({ members, more }) =>
      members.length + more === 1
        ? `\`${members[0]}\` is computed from itself. Break the circle: write one of its parts as a reading or a number.`
        : `${members.map((each) => `\`${each}\``).join(' → ')}${more > 0 ? ` → … and ${more} more` : ''} → \`${members[0]}\`: these are computed from each other, so none can be computed. Break the circle at one of them.`,
    why: 'Order does not matter in a case, so a value that needs itself, directly or through others, has no value.',
    wrong: 'let:\n  a: b + 1 %\n  b: a - 1 %',
    right: 'let:\n  a: before.idle.ltft_b1\n  b: a - 1 %',
  },
  'unknown-tool': {
    severity: 'error',
    title: 'An instrument that the header does not list',
    say: ({ name, nearest, has }) =>
      `No tool in the header is called \`${name}\`.${didYouMean(nearest)}${has.length > 0 ? ` Listed: ${few(has)}.` : ' List it under `tools` in the header.'}`,
    why: 'The instrument’s accuracy decides how far apart two readings may be and still agree.',
    wrong: 'tool: guage',
    right: 'tool: gauge',
  },
};
