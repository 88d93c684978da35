import type { Rows } from '../row.ts';

/** Findings about readings that were decoded from the diagnostic link, beside what else the case says. */
export interface ObdReadingFacts {
  readonly 'obd-controllers-differ': {
    readonly name: string;
    readonly taken: string;
    readonly from: string;
    readonly others: readonly string[];
  };
  readonly 'obd-answered-often': {
    readonly name: string;
    readonly times: number;
    readonly low: string;
    readonly high: string;
    readonly last: string;
  };
  readonly 'obd-typed-differs': { readonly name: string; readonly typed: string; readonly decoded: string };
  readonly 'obd-freeze-frame': {
    readonly inFrame: boolean;
    /** Of several frames the one that counts and one that does not. */
    readonly frames?: { readonly taken: number; readonly left: number };
  };
  readonly 'obd-several-states': { readonly states: number };
  readonly 'obd-code-not-listed': {
    readonly code: string;
    readonly status: 'stored' | 'pending' | 'permanent';
  };
  readonly 'obd-code-not-stored': { readonly code: string };
  readonly 'vin-differs': {
    readonly vin: string;
    readonly sender: string;
    readonly expected: string;
    /** The header says it; otherwise an earlier recording. */
    readonly isWritten: boolean;
  };
}

export const obdReadingRows: Rows<ObdReadingFacts> = {
  'obd-controllers-differ': {
    severity: 'warning',
    title: 'Controllers that give different values for one thing',
    say: ({ name, taken, from, others }) =>
      `\`${name}\` is ${taken} from ${from}, and ${others.join(', ')}. The value of ${from} is taken. Find out which module measures and which one is told.`,
    why: 'Several modules may answer one request. The engine’s own is taken, which has the lowest address (ISO 15765-4: 7E8; 10 where the address is one byte). Where another says otherwise, one of them was asked at another moment or is wrong.',
    wrong: 'obd: |\n  7E8 03 41 05 7B\n  7E9 03 41 05 3C',
    right: 'obd: |\n  7E8 03 41 05 7B\n  7E9 03 41 05 7B',
  },
  'obd-answered-often': {
    severity: 'info',
    title: 'A value that was read several times',
    say: ({ name, times, low, high, last }) =>
      `\`${name}\` was answered ${times} times, from ${low} to ${high}. The last one counts: ${last}. A value over time belongs in a capture.`,
    why: 'A cell of readings holds one moment. Which of several answers is meant cannot be seen.',
    wrong: 'obd: |\n  41 0C 0B B8\n  41 0C 1A F8',
    right: 'obd: |\n  41 0C 0B B8',
  },
  'obd-typed-differs': {
    severity: 'warning',
    title: 'A typed value that the bytes do not give',
    say: ({ name, typed, decoded }) =>
      `\`${name}\` is typed as ${typed}, and the bytes give ${decoded}. The typed value counts; put right the one that is a slip.`,
    why: 'A value that stands twice in a cell is compared: once typed, once as the bytes that came from the vehicle.',
    wrong: 'values:\n  map: 34 kPa\nobd: 41 0B 2C',
    right: 'values:\n  map: 44 kPa\nobd: 41 0B 2C',
  },
  'obd-freeze-frame': {
    severity: 'warning',
    title: 'A freeze frame and current data in one cell',
    say: ({ inFrame, frames }) =>
      frames !== undefined
        ? `This answer is of freeze frame ${frames.left}, another moment than frame ${frames.taken} above. It is left out; put it in a cell of its own.`
        : inFrame
          ? 'The cell says `when: freeze frame`, and this answer is of service 01, current data. It is left out; put it in a cell of its own.'
          : 'This answer is of service 02, a freeze frame, and the cell does not say so. It is left out; put it in a cell with `when: freeze frame`.',
    why: 'A freeze frame is what the controller kept when the code was stored. It is another moment than what was read today.',
    wrong: 'readings: Now\nobd: 42 0C 00 1A F8',
    right: 'readings: When the code was stored\nwhen: freeze frame\nobd: 42 0C 00 1A F8',
  },
  'obd-several-states': {
    severity: 'error',
    title: 'A recording in a cell of several states',
    say: ({ states }) =>
      `The cell has ${states} states, and nothing says in which of them this was recorded. Give each state a cell of its own with \`state\` and \`obd\`.`,
    why: 'A recording says what was answered, not how the engine ran.',
    wrong: 'states:\n  idle: warm idle\n  drive: cruise\nobd: 41 0B 2C',
    right: 'state: warm idle\nobd: 41 0B 2C',
  },
  'obd-code-not-listed': {
    severity: 'warning',
    title: 'A code that the vehicle gives and the header does not list',
    say: ({ code, status }) =>
      `The controller gives ${code} as ${status}, and the header’s \`codes\` do not list it. Add \`- {code: ${code}, status: ${status}}\`.`,
    why: 'Codes are what a colleague searches a case by, and one that is forgotten is evidence lost.',
    wrong: 'codes:\n  - P0171\n…\nobd: 43 01 01 74',
    right: 'codes:\n  - P0171\n  - P0174\n…\nobd: 43 02 01 71 01 74',
  },
  'obd-code-not-stored': {
    severity: 'info',
    title: 'A listed code that the vehicle does not give',
    say: ({ code }) =>
      `The header lists ${code}, and the recorded answers with codes do not have it. Was it cleared before, or read from another module?`,
    why: 'The header’s codes and the recorded ones tell one story, or the difference is a part of it.',
    wrong: 'codes:\n  - P0171\n…\nobd: 43 00',
    right: 'codes:\n  - P0171\n…\nobd: 43 01 01 71',
  },
  'vin-differs': {
    severity: 'warning',
    title: 'A recording that gives another vehicle’s number',
    say: ({ vin, sender, expected, isWritten }) =>
      `${sender === '' ? 'A controller' : `The controller ${sender}`} gives ${vin} as its vehicle’s number, and ${isWritten ? 'the header says' : 'an earlier recording gives'} ${expected}. Was this recorded on another car, or does the controller come from one?`,
    why: 'A recording that was filed with the wrong car makes every reading in it wrong for this one. A used controller that was not set up tells its old car’s number.',
    wrong:
      'vehicle:\n  vin: 11111111111111111\n…\nobd: |\n  014\n  0: 49 02 01 31 31 31\n  1: 31 31 31 31 31 31 31\n  2: 31 31 31 31 31 31 41',
    right:
      'vehicle:\n  vin: 11111111111111111\n…\nobd: |\n  014\n  0: 49 02 01 31 31 31\n  1: 31 31 31 31 31 31 31\n  2: 31 31 31 31 31 31 31',
  },
};
