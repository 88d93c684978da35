import { chartKindNames } from './chartKinds.ts';
import { diag } from './header.ts';
import type { Kind } from './key.ts';
import {
  as,
  because,
  channels,
  chart,
  cite,
  everyKey,
  expectation,
  file,
  format,
  proof,
  state,
  states,
  table,
  time,
  tool,
  values,
  when,
} from './shared.ts';

/** Every kind of cell with its keys. The schema, the types, completion, hover and the reference page come from here. */
export const kinds = {
  diag: { ...diag, keys: { ...diag.keys, ...everyKey } },
  note: { meaning: 'text in Markdown', title: 'markdown', keys: everyKey },
  readings: {
    meaning: 'values measured at one engine state, or at several side by side',
    title: 'sentence',
    keys: {
      as,
      when,
      state,
      states,
      tool,
      taken: { holds: 'text', meaning: 'date and time, as written', example: '2024-03-05 10:20' },
      odometer: { holds: 'quantity', meaning: 'distance driven at that time', example: '128400 km' },
      values,
      table,
      obd: {
        holds: { list: 'text' },
        meaning:
          'answers of the vehicle’s diagnostic link as recorded, in hexadecimal: each generic value in them (SAE J1979) becomes a reading of the cell',
        example: '|\n  7E8 04 41 0C 0B B8\n  7E8 03 41 0B 2C',
      },
      chart,
      ...everyKey,
    },
  },
  reference: {
    meaning: 'what is known beforehand: limits, curves, known-good figures or a known-good capture',
    title: 'sentence',
    keys: {
      as,
      source: {
        holds: 'sentence',
        meaning: 'where it is known from',
        example: 'maker’s service information',
      },
      state,
      states,
      values,
      table,
      file,
      format,
      time,
      channels,
      ...everyKey,
    },
  },
  capture: {
    meaning: 'sampled channels, from a file beside the case or written out',
    title: 'sentence',
    keys: {
      as,
      when,
      state,
      tool,
      file,
      rows: {
        holds: 'anything',
        meaning: 'the samples written out: a heading row, then a row a sample',
        example: '|\n  time  front\n  0     0.12\n  0.5   0.78',
        insteadOf: ['file'],
      },
      format,
      time,
      channels,
      chart,
      ...everyKey,
    },
  },
  check: {
    meaning: 'computed names and expectations',
    title: 'sentence',
    keys: {
      as,
      let: {
        holds: { named: 'expression', inExpressions: true },
        meaning: 'computed names, each with its expression',
        example: 'total: total_trim(stft_b1, ltft_b1)',
      },
      expect: {
        holds: { list: expectation },
        meaning: 'what should hold',
        example: '- total between -10 % and 10 %',
      },
      shows: expectation.keys.shows,
      because,
      'if fails': expectation.keys['if fails'],
      cite,
      chart,
      ...everyKey,
    },
  },
  test: {
    meaning: 'something done by hand whose outcome is evidence: smoke, swap, wiggle, clamp, look',
    title: 'sentence',
    keys: {
      as,
      did: { holds: 'sentence', meaning: 'what was done', example: 'Smoke through the booster hose.' },
      at: { holds: 'sentence', meaning: 'where', example: 'rear corner of the plenum' },
      found: { holds: 'sentence', meaning: 'what was seen', example: 'Smoke at the gasket.' },
      result: {
        holds: { words: ['yes', 'no', 'unclear'] },
        meaning: 'yes, no or unclear: the answer to the title, best one that asks',
        example: 'yes',
      },
      tool,
      picture: {
        ...file,
        meaning: 'a picture of it, in the case’s own folder or below',
        example: 'pictures/smoke.jpg',
      },
      ...everyKey,
    },
  },
  picture: {
    meaning: 'a photograph or a screen, with what can be read off it',
    title: 'sentence',
    keys: {
      as,
      file: { ...file, example: 'pictures/gasket.jpg', required: true },
      alt: {
        holds: 'sentence',
        meaning: 'the picture in words, for those who cannot see it',
        example: 'A paper gasket folded over at one corner.',
      },
      shows: { holds: 'sentence', meaning: 'what to look at', example: 'the folded corner' },
      marks: {
        holds: 'map',
        meaning: 'what can be read off it: names and quantities',
        example: 'gap: 1.2 mm',
      },
      ...everyKey,
    },
  },
  chart: {
    meaning: 'a chart of its own',
    title: 'sentence',
    keys: {
      kind: {
        holds: { words: chartKindNames },
        meaning: 'what sort of chart',
        example: 'trims',
        property: 'chartKind',
      },
      plot: {
        holds: {
          list: {
            short: 'plot',
            keys: {
              plot: {
                holds: 'expression',
                meaning: 'what to draw',
                example: 'o2.front',
                property: 'expression',
                required: true,
              },
              against: { holds: 'expression', meaning: 'what along the other axis', example: 'log.maf' },
              label: { holds: 'sentence', meaning: 'what to write beside it', example: 'front sensor' },
            },
          },
        },
        meaning: 'what to draw',
        example: '- o2.front',
      },
      mark: {
        holds: {
          list: {
            short: 'mark',
            keys: {
              mark: {
                holds: 'expression',
                meaning: 'a value or a range to mark',
                example: '0.45 V',
                property: 'expression',
                required: true,
              },
              label: { holds: 'sentence', meaning: 'what to write beside it', example: 'rich above' },
            },
          },
        },
        meaning: 'values and limits to mark',
        example: '- 0.45 V',
      },
      ...everyKey,
    },
  },
  suspects: {
    meaning: 'faults that could explain the case, and what each predicts',
    title: 'sentence',
    keys: {
      consider: {
        holds: {
          list: {
            short: 'name',
            keys: {
              name: {
                holds: 'sentence',
                meaning: 'the fault',
                example: 'air past the meter',
                required: true,
              },
              predicts: {
                holds: { list: 'expression' },
                meaning: 'what must be so if it is this fault',
                example: '- trims.idle > trims.fast',
              },
              'ruled out if': {
                holds: { list: 'expression' },
                meaning: 'what cannot be so if it is this fault',
                example: '- trims.fast > trims.idle + 5 %',
              },
              because,
              cite,
            },
          },
        },
        meaning: 'the faults',
        example: '- name: air past the meter',
        required: true,
      },
      ...everyKey,
    },
  },
  question: {
    meaning: 'something to ask a student',
    title: 'sentence',
    keys: {
      ask: { holds: 'sentence', meaning: 'the question', example: 'Add the two readings.', required: true },
      answer: {
        holds: 'expression',
        meaning: 'the answer, computed',
        example: 'before.idle.map + gauged.vacuum',
      },
      choices: {
        holds: {
          list: {
            short: 'choice',
            keys: {
              choice: {
                holds: 'sentence',
                meaning: 'one of the answers',
                example: 'an air leak',
                required: true,
              },
              right: { holds: { words: ['yes', 'no'] }, meaning: 'whether it is right', example: 'yes' },
              because,
            },
          },
        },
        meaning: 'answers to choose from',
        example: '- {choice: an air leak, right: yes}',
      },
      accept: {
        holds: { list: 'text' },
        meaning: 'how far off an answer may be, or other wordings to accept',
        example: '0.3 inHg',
      },
      hints: {
        holds: { list: 'sentence' },
        meaning: 'shown one after the other',
        example: '- Think of the barometer.',
      },
      because,
      points: { holds: 'quantity', meaning: 'what a right answer is worth', example: '2' },
      ...everyKey,
    },
  },
  repair: {
    meaning: 'what was done, and the proof',
    title: 'sentence',
    keys: {
      done: { holds: 'sentence', meaning: 'what was done', example: 'Gasket replaced.' },
      parts: {
        holds: {
          list: {
            short: 'part',
            keys: {
              part: { holds: 'sentence', meaning: 'the part', example: 'plenum gasket', required: true },
              number: { holds: 'text', meaning: 'its number', example: 'G-14' },
              count: { holds: 'quantity', meaning: 'how many', example: '1' },
            },
          },
        },
        meaning: 'the parts that were fitted',
        example: '- plenum gasket',
      },
      hours: { holds: 'quantity', meaning: 'working time in hours', example: '1.5' },
      verify: {
        holds: { list: proof },
        meaning: 'what must hold after the repair',
        example: '- after.ltft_b1 between -5 % and 5 %',
      },
      ...everyKey,
    },
  },
  caution: { meaning: 'a safety note shown above what follows it', title: 'sentence', keys: everyKey },
} as const satisfies Readonly<Record<string, Kind>>;

export type KindName = keyof typeof kinds;

export const kindNames = Object.keys(kinds) as readonly KindName[];

/** The kind of that name; nothing for words that every object knows, like `constructor`. */
export function kindOf(name: string): Kind | undefined {
  return Object.hasOwn(kinds, name) ? kinds[name as KindName] : undefined;
}
