import { chartKindNames } from './chartKinds.ts';
import type { Keys } from './key.ts';

const whenWords = ['before', 'after', 'known good', 'freeze frame'] as const;

/** Keys that any cell may carry. */
export const everyKey = {
  for: {
    holds: { words: ['teacher', 'student', 'after answer'] },
    meaning: 'who sees the cell in a handout; without it everyone does',
    example: 'teacher',
  },
} as const satisfies Keys;

export const as = {
  holds: 'name',
  meaning: 'the name that other cells use for this one',
  example: 'koeo',
} as const;

export const when = {
  holds: { words: whenWords },
  meaning: 'when in the story it was measured; without it: as found, before the repair',
  example: 'before',
} as const;

export const state = {
  holds: 'state',
  meaning: 'the engine state it was measured in',
  example: 'warm idle',
} as const;

export const states = {
  holds: { named: 'state', inExpressions: true },
  meaning: 'several engine states side by side, each with a short name',
  example: 'idle: warm idle',
  insteadOf: ['state', 'values'],
} as const;

export const tool = {
  holds: 'text',
  meaning: 'the instrument, by its name under `tools` in the header',
  example: 'gauge',
} as const;

export const because = {
  holds: 'sentence',
  meaning: 'why, in the teacher’s words',
  example: 'Manifold pressure and manifold vacuum are two sides of one number.',
} as const;

export const cite = {
  holds: { list: 'sentence' },
  meaning: 'where the limit or the method comes from',
  example: 'maker’s service information',
} as const;

export const chart = {
  holds: { words: chartKindNames },
  meaning: 'the chart to draw beside the values',
  example: 'switching',
} as const;

export const values = {
  holds: 'map',
  meaning: 'the values, each under the name of its signal',
  example: 'map: 29.6 inHg',
} as const;

export const table = {
  holds: 'table',
  meaning: 'values as rows: a heading row with `reading`, the states and `unit`, then a row a signal',
  example: '|\n  reading  idle  unit\n  rpm      780   rpm',
  insteadOf: ['values'],
} as const;

export const file = {
  holds: 'text',
  meaning: 'a file in the case’s own folder or below',
  example: 'captures/o2-2500.csv',
  names: true,
} as const;

export const time = {
  holds: {
    short: 'column',
    keys: {
      column: { holds: 'text', meaning: 'the heading of the column', example: 'Time (s)' },
      unit: {
        holds: 'text',
        meaning:
          'the unit of its numbers, where its heading gives none; of a clock in two groups, `hh:mm` or `mm:ss`',
        example: 'ms',
      },
    },
  },
  meaning: 'the heading of the column that holds the time',
  example: 'Time (s)',
} as const;

export const format = {
  holds: {
    keys: {
      delimiter: {
        holds: { words: ['comma', 'semicolon', 'tab', 'space', 'pipe'] },
        meaning: 'what stands between columns',
        example: 'semicolon',
      },
      decimal: {
        holds: { words: ['point', 'comma'] },
        meaning: 'the decimal mark in the file',
        example: 'comma',
      },
      'heading rows': {
        holds: 'quantity',
        meaning: 'rows above the samples that name the columns and their units',
        example: '2',
      },
      skip: { holds: 'quantity', meaning: 'lines before the heading', example: '2' },
    },
  },
  meaning: 'how the file is written; what is not said is recognised from its content, and shown',
  example: '{delimiter: semicolon, decimal: comma, heading rows: 2}',
} as const;

export const channels = {
  holds: {
    inExpressions: true,
    named: {
      short: 'column',
      keys: {
        column: { holds: 'text', meaning: 'the heading of the column', example: 'O2 B1S1 [V]' },
        unit: { holds: 'text', meaning: 'the unit of the numbers in the column', example: 'V' },
        signal: { holds: 'text', meaning: 'the signal that it shows', example: 'o2_b1s1' },
        accuracy: {
          holds: 'quantity',
          meaning: 'half-width common to all samples of the channel',
          example: '0.01 V',
        },
        scale: {
          holds: 'quantity',
          meaning: 'what one unit in the file stands for: a probe’s or a transducer’s factor',
          example: '100 A/V',
        },
        offset: { holds: 'quantity', meaning: 'what is added after scaling', example: '-0.5 V' },
        time: {
          holds: time.holds,
          meaning: 'the heading of the channel’s own time, where it was taken at other moments than the rest',
          example: 'rear time (s)',
        },
      },
    },
  },
  meaning: 'the columns to read, each under the name that expressions use',
  example: 'front: {column: "O2 B1S1 [V]", unit: V, signal: o2_b1s1}',
} as const;

const aboutExpectation = {
  'if fails': {
    holds: 'sentence',
    meaning: 'what to do or to think when it fails',
    example: 'Look for unmetered air before fuel.',
  },
  shows: { holds: { words: ['fault'] }, meaning: 'the author means it to fail', example: 'fault' },
  because,
  cite,
} as const;

/** One expectation of a check: an expression alone, or with remarks. */
export const expectation = {
  short: 'expect',
  keys: {
    expect: {
      holds: 'expression',
      meaning: 'what should hold',
      example: 'idle between -10 % and 10 %',
      property: 'expression',
      required: true,
    },
    ...aboutExpectation,
  },
} as const;

/** One proof of a repair: an expression alone, or with remarks. */
export const proof = {
  short: 'verify',
  keys: {
    verify: {
      holds: 'expression',
      meaning: 'what must hold after the repair',
      example: 'after.ltft_b1 between -5 % and 5 %',
      property: 'expression',
      required: true,
    },
    ...aboutExpectation,
  },
} as const;
