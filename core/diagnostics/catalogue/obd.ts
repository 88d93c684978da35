import type { Rows } from '../row.ts';

/** What is wrong with a vehicle identification number: its length, a character (`at` counts from 0), or position 9. */
type VinProblem =
  | { readonly kind: 'length'; readonly length: number }
  | { readonly kind: 'character'; readonly character: string; readonly at: number }
  | { readonly kind: 'check digit'; readonly is: string; readonly due: string };

/** Findings in recorded answers of the diagnostic link: the `obd` of a readings cell, and `casebook decode`. */
export interface ObdFacts {
  readonly 'obd-not-hex': { readonly word: string };
  readonly 'obd-odd-length': { readonly digits: string; readonly count: number };
  readonly 'obd-wrong-checksum': { readonly is: string; readonly due: string };
  readonly 'obd-short-frame': { readonly says: number; readonly has: number; readonly first?: true };
  readonly 'obd-unknown-frame': { readonly first: string };
  /** `mixed`: two messages without ids run into each other. */
  readonly 'obd-no-first-frame': { readonly number: number; readonly mixed?: true };
  readonly 'obd-wrong-sequence': {
    readonly sender: string;
    readonly expected: number;
    readonly got: number;
  };
  readonly 'obd-unfinished': { readonly sender: string; readonly got: number; readonly total: number };
  readonly 'obd-short-answer': { readonly what: string; readonly needs: number; readonly has: number };
  readonly 'obd-code-count': { readonly says: number; readonly has: number };
  readonly 'obd-unknown-parameter': { readonly service: string; readonly id: string; readonly bytes: string };
  readonly 'obd-unknown-answer': { readonly bytes: string };
  readonly 'obd-refused': { readonly service: string; readonly code: string; readonly why: string };
  readonly 'obd-noise': { readonly lines: number; readonly first: string };
  readonly 'obd-nothing': { readonly requests: number };
  readonly 'obd-too-long': { readonly most: string };
  readonly 'obd-more-problems': { readonly more: number };
  readonly 'vin-form': { readonly vin: string; readonly problem: VinProblem };
}

const from = (sender: string): string => (sender === '' ? '' : ` of ${sender}`);
const bytes = (count: number): string => `${count} ${count === 1 ? 'byte' : 'bytes'}`;

export const obdRows: Rows<ObdFacts> = {
  'obd-not-hex': {
    severity: 'error',
    title: 'A recorded line with something that is no hexadecimal number',
    say: ({ word }) =>
      `\`${word}\` is no hexadecimal number: only 0 to 9 and A to F stand in one. Look whether a letter was taken for a digit, such as O for 0 or l for 1; a remark goes behind \` #\`.`,
    why: 'One wrong digit makes another value of the same length. The line is left out rather than guessed.',
    wrong: 'obd: |\n  41 OC 1A F8',
    right: 'obd: |\n  41 0C 1A F8',
  },
  'obd-odd-length': {
    severity: 'error',
    title: 'Hexadecimal digits that do not pair up',
    say: ({ digits, count }) =>
      `\`${digits}\` has ${count} ${count === 1 ? 'digit' : 'digits'}, and a byte is two. A digit is missing or one too many; copy the line again.`,
    why: 'With a digit lost in the middle every byte behind it would be read wrong. The line is left out rather than guessed.',
    wrong: 'obd: |\n  41 0C 1A F',
    right: 'obd: |\n  41 0C 1A F8',
  },
  'obd-wrong-checksum': {
    severity: 'error',
    title: 'A frame whose checksum does not fit',
    say: ({ is, due }) =>
      `The checksum at the end is ${is} and should be ${due}: the line was damaged on the way, or copied without its last byte. It is left out; record it again.`,
    why: 'The checksum is there to tell a damaged frame from a good one. A value from a damaged frame means nothing.',
    wrong: 'obd: |\n  48 6B 10 41 05 7B 85',
    right: 'obd: |\n  48 6B 10 41 05 7B 84',
  },
  'obd-short-frame': {
    severity: 'error',
    title: 'A frame with fewer bytes than it says',
    say: ({ says, has, first }) =>
      first === true && says < 8 && has >= 6
        ? `A first frame announces ${bytes(says)} for the whole message, and so few are sent in a single frame. The line was damaged; record it again.`
        : `The frame should carry ${bytes(says)} and has ${has}. Copy the whole line, or record it again.`,
    why: 'A frame says how much it carries. When bytes are missing, it was cut off while it was recorded or copied.',
    wrong: 'obd: |\n  7E8 04 41 0C 1A',
    right: 'obd: |\n  7E8 04 41 0C 1A F8',
  },
  'obd-unknown-frame': {
    severity: 'error',
    title: 'A frame of no known sort',
    say: ({ first }) =>
      `The frame starts with ${first}: the first digit should be 0 (single), 1 (first), 2 (consecutive) or 3 (flow control). The line was damaged, or it is no diagnostic answer.`,
    why: 'The first digit of a frame says how it belongs to a message (ISO 15765-2). With another one nobody can tell.',
    wrong: 'obd: |\n  7E8 94 41 0C 1A F8',
    right: 'obd: |\n  7E8 04 41 0C 1A F8',
  },
  'obd-no-first-frame': {
    severity: 'error',
    title: 'The rest of a message without its start',
    say: ({ number, mixed }) =>
      mixed === true
        ? `Here is part ${number} once more: two messages run into each other, and nothing says whose each part is. Both are left out; record them again with headers.`
        : `This is part ${number} of a message whose first frame is not here. Copy the lines above it, too.`,
    why: 'Only the first frame says what a long message is and how long it is.',
    wrong: 'obd: |\n  7E8 21 48 35 39 48 34 35 00',
    right: 'obd: |\n  7E8 10 0D 49 04 01 31 32 33\n  7E8 21 34 35 36 37 38 39 30',
  },
  'obd-wrong-sequence': {
    severity: 'error',
    title: 'Frames of a message out of order',
    say: ({ sender, expected, got }) =>
      `Part ${got} of the message${from(sender)} stands where part ${expected} is due: a frame is missing, or lines were moved. The message is left out; record it again.`,
    why: 'The parts of a long message are numbered so that a lost one is noticed. With a part missing, everything behind it would be read wrong.',
    wrong: 'obd: |\n  7E8 10 14 49 02 01 31 31 31\n  7E8 22 31 31 31 31 31 31 31',
    right: 'obd: |\n  7E8 10 0A 49 04 01 31 31 31\n  7E8 21 31 31 31 31 00 00 00',
  },
  'obd-unfinished': {
    severity: 'error',
    title: 'A message that does not come to its end',
    say: ({ sender, got, total }) =>
      `The message${from(sender)} announces ${bytes(total)} and stops after ${got}. Copy the lines that follow, or record it again: an interface without flow control gets only the first frame.`,
    why: 'A long message comes in several frames. One that was cut off cannot be read.',
    wrong: 'obd: |\n  7E8 10 14 49 02 01 31 31 31',
    right: 'obd: |\n  7E8 10 0A 49 04 01 31 31 31\n  7E8 21 31 31 31 31 00 00 00',
  },
  'obd-short-answer': {
    severity: 'error',
    title: 'An answer with fewer bytes than its parameter has',
    say: ({ what, needs, has }) =>
      `${what}: ${bytes(needs)} ${needs === 1 ? 'is' : 'are'} due, and ${has === 0 ? 'none is' : has === 1 ? 'only 1 is' : `only ${has} are`} here. Copy the whole line, or record it again.`,
    why: 'Each parameter has a fixed number of bytes (SAE J1979). With one missing the value would be another.',
    wrong: 'obd: |\n  41 0C 1A',
    right: 'obd: |\n  41 0C 1A F8',
  },
  'obd-code-count': {
    severity: 'warning',
    title: 'More or fewer codes than are announced',
    say: ({ says, has }) =>
      `The answer announces ${says} ${says === 1 ? 'code' : 'codes'} and holds ${has}. Those that are here are read; record it again if one is missing.`,
    why: 'On CAN networks the answer says first how many codes follow.',
    wrong: 'obd: |\n  7E8 04 43 02 01 71',
    right: 'obd: |\n  7E8 04 43 01 01 71',
  },
  'obd-unknown-parameter': {
    severity: 'info',
    title: 'A parameter that is not known here',
    say: ({ service, id, bytes: raw }) =>
      `Service ${service} answers ${id}, which is not known here. Its bytes are kept as they are: ${raw === '' ? 'none' : raw}.`,
    why: 'The standard’s table is long, and makers add to it. What is not known is said, never guessed.',
    wrong: 'obd: |\n  41 9D 00 10 00 20',
    right: 'obd: |\n  41 0C 1A F8',
  },
  'obd-unknown-answer': {
    severity: 'info',
    title: 'Bytes that are no generic answer',
    say: ({ bytes: raw }) =>
      `\`${raw}\` is no answer of services 01 to 0A, and is left as it is. A maker’s own answer is written under \`values\`, with what the maker’s information says it means.`,
    why: 'Only generic services (SAE J1979) mean the same on every vehicle.',
    wrong: 'obd: |\n  62 F1 90 31',
    right: 'obd: |\n  41 0C 1A F8',
  },
  'obd-refused': {
    severity: 'info',
    title: 'A controller refuses a request',
    say: ({ service, code, why }) => `The controller refuses service ${service} with ${code}: ${why}.`,
    why: 'A refusal starts with 7F, then the service that was asked for and the reason (ISO 15031-5; reasons from memory of ISO 14229-1).',
    wrong: 'obd: |\n  7F 01 12',
    right: 'obd: |\n  41 0C 1A F8',
  },
  'obd-noise': {
    severity: 'info',
    title: 'Lines without data',
    say: ({ lines, first }) =>
      lines === 1
        ? `One line holds no data and is passed over: \`${first}\`.`
        : `${lines} lines hold no data and are passed over, the first: \`${first}\`.`,
    why: 'What an interface says between answers is no reading. It is counted, so that nothing is lost unseen.',
    wrong: 'obd: |\n  SEARCHING...\n  41 0C 1A F8',
    right: 'obd: |\n  41 0C 1A F8',
  },
  'obd-nothing': {
    severity: 'warning',
    title: 'A recording without an answer',
    say: ({ requests }) =>
      requests === 0
        ? 'There is no answer in here. An answer starts with the service plus 40: `41 0C 1A F8`.'
        : `There ${requests === 1 ? 'is one request' : `are ${requests} requests`} in here and no answer. An answer starts with the service plus 40: \`41 0C 1A F8\`.`,
    why: 'A recording that gives no reading was mostly copied from the wrong place.',
    wrong: 'obd: |\n  01 0C',
    right: 'obd: |\n  41 0C 1A F8',
  },
  'obd-too-long': {
    severity: 'error',
    title: 'A recording that is too long',
    say: ({ most }) =>
      `The recording is longer than the ${most} characters that are read. Cut it into parts, or keep the moment that matters.`,
    why: 'So much is no moment that a person looks at. The limit keeps a damaged file from stopping the program.',
    wrong: 'obd: |\n  … a day of recording …',
    right: 'obd: |\n  … the moment of the fault …',
  },
  'obd-more-problems': {
    severity: 'error',
    title: 'Many lines that could not be read',
    say: ({ more }) =>
      `There ${more === 1 ? 'is one more finding' : `are ${more} more findings`} of this sort in the recording. Put the first ones right, or record it again.`,
    why: 'A damaged recording has the same finding on every line. The first ones are told, the rest is counted.',
    wrong: 'obd: |\n  … hundreds of cut lines …',
    right: 'obd: |\n  41 0C 1A F8',
  },
  'vin-form': {
    severity: 'warning',
    title: 'A vehicle identification number that cannot be right',
    say: ({ vin, problem }) => {
      switch (problem.kind) {
        case 'length':
          return `\`${vin}\` has ${problem.length} characters, and a vehicle identification number has 17. Some are missing or too many.`;
        case 'character':
          return `\`${vin}\` has \`${problem.character}\` in position ${problem.at + 1}. A vehicle identification number has capitals and digits only, and never I, O or Q, which look like 1 and 0.`;
        case 'check digit':
          return `\`${vin}\` has ${problem.is} in position 9, and the other characters make it ${problem.due}. On a vehicle built for North America a character is wrong; elsewhere the position may hold anything.`;
      }
    },
    why: 'The characters of a vehicle identification number are fixed (ISO 3779), and in North America the ninth is computed from the others, so that a slip is noticed (49 CFR 565.15(c)).',
    wrong: 'vehicle:\n  vin: 11111111211111111',
    right: 'vehicle:\n  vin: 11111111111111111',
  },
};
