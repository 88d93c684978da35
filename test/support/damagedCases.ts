import { randomFrom } from './expressionSentence.ts';
import { samples } from './samples.ts';

type Pick = (below: number) => number;

const numbers = [
  ...['-0', '0', '99999999999999999999999999999999999', '0.0000000000000000000001', '1e308', '5e-324', '1,5'],
  ...[
    '1.2.3',
    '0x10',
    '1_000',
    '+-3',
    '± 1',
    '.5',
    '5.',
    '1e',
    '∞',
    '½',
    '²',
    '٣',
    '１２',
    '-300 °C',
    '101 %',
  ],
  ...['NaN', 'null', '~', '1:30'],
];

const oddSigns = [
  ...['\u200f', '\u202e', '\0', '\u00a0', '\ufeff', '\u2028', '\u0085', '\r', '\r\n', '\t', '😀', '\ud800'],
  ...[
    'e\u0301',
    'µ',
    'Ω',
    '°',
    '″',
    '–',
    '−',
    '’',
    '“',
    '…',
    '×',
    '·',
    '％',
    '：',
    '，',
    '<script>',
    '{{',
    ']]',
  ],
  ...[
    '|',
    '>',
    '>-',
    '%',
    '@',
    '`',
    '*a',
    '&a',
    '!!str ',
    '? ',
    ': ',
    '- ',
    ' #',
    '---',
    '\n---\n',
    '\n...\n',
  ],
  ...['<<<<<<< x\n', '"', "'", '""', '\\', '__proto__', 'constructor'],
];

const expressions = [
  ...[
    '1',
    'x',
    '(',
    '((((',
    ')',
    'a.',
    '.a',
    'a["x"]',
    'a[',
    '1 V +',
    '^',
    '2 ^ 3 ^ 4',
    'and',
    'not',
    'is not',
  ],
  ...[
    'between 1 V and',
    'within',
    'in',
    'from 1 s to 2 s',
    'where (',
    'if true then 1 else',
    'min()',
    'min(1,)',
  ],
  ...['mean(x=1)', '"abc', 'unclear', '1 .. 2', '..', 'at most 3 V', '3 < 4 < 5', '==', '&&', '1 %', '1 ± 2'],
];

const units = [
  ...[
    'inHg',
    'psi',
    'kPa gauge',
    '°C',
    'V',
    'Ω',
    'rpm',
    'Hz',
    '%',
    'g/s',
    'ms',
    'V/(A)',
    'V/A/s',
    'm²',
    'm^-1',
  ],
  ...['1', 'in', '"', 'furlong', 'psii', 'KPA', 'F', 'K', 'degC'],
];

const alphabet = [...numbers, ...oddSigns, ...expressions, ...units];

/** Cases with a few acts of damage each: lost, doubled and swapped lines, cells, words, numbers, units and signs. */
export function* damagedCases(seed: number, count: number): Generator<string> {
  const pick = randomFrom(seed);
  const texts = [...samples.values()];
  const words = [...new Set(texts.join('\n').match(/[\p{L}_][\p{L}\p{N}_]*/gu) ?? [])];
  for (let i = 0; i < count; i++) {
    let text = texts[pick(texts.length)] ?? '';
    for (let times = 1 + pick(4); times > 0; times--) text = damaged(text, pick, words, texts);
    yield text;
  }
}

function damaged(text: string, pick: Pick, words: readonly string[], texts: readonly string[]): string {
  const at = pick(text.length + 1);
  const any = (of: readonly string[]): string => of[pick(of.length)] ?? '';
  switch (pick(14)) {
    case 0:
      return text.slice(0, at) + String.fromCharCode(pick(128)) + text.slice(at + 1);
    case 1:
      return text.slice(0, at) + text.slice(at + 1 + pick(4));
    case 2:
      return text.slice(0, at) + any(alphabet) + text.slice(at);
    case 3:
      return inParts(text, '\n', (lines) => lines.splice(pick(lines.length), 1 + pick(3)));
    case 4:
      return inParts(text, '\n', (lines) => lines.splice(pick(lines.length), 0, any(lines)));
    case 5:
      return inParts(text, '\n', (lines) => swap(lines, pick));
    case 6:
      return inParts(text, '\n---\n', (cells) => swap(cells, pick));
    case 7:
      return inParts(text, '\n---\n', (cells) => cells.splice(pick(cells.length), 0, any(cells)));
    case 8:
      return replacedOne(text, /\d+(?:\.\d+)?/g, pick, () => any(numbers));
    case 9:
      return replacedOne(text, /[\p{L}_][\p{L}\p{N}_]*/gu, pick, () => any(words));
    case 10:
      return replacedOne(text, /(?<=[:-] ).*/g, pick, () => any([...alphabet, any(words)]));
    case 11:
      return replacedOne(text, /(?<= )\S+$/gm, pick, () => any(units));
    case 12: {
      const other = any(texts);
      const from = pick(other.length);
      return text.slice(0, at) + other.slice(from, from + pick(200)) + text.slice(at);
    }
    default:
      return replacedOne(text, /(?<=[(,]) ?[^(),]+(?=[,)])/g, pick, () => any([...expressions, any(words)]));
  }
}

function inParts(text: string, by: string, change: (parts: string[]) => unknown): string {
  const parts = text.split(by);
  change(parts);
  return parts.join(by);
}

function swap(parts: string[], pick: Pick): void {
  const [a, b] = [pick(parts.length), pick(parts.length)];
  const [first, second] = [parts[a] ?? '', parts[b] ?? ''];
  parts[a] = second;
  parts[b] = first;
}

function replacedOne(text: string, what: RegExp, pick: Pick, by: () => string): string {
  const all = [...text.matchAll(what)];
  const one = all[pick(all.length)];
  return one === undefined ? text : text.slice(0, one.index) + by() + text.slice(one.index + one[0].length);
}
