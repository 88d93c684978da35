import type { Signal } from '../types.ts';
import { signedByteOfPercent, usually } from './usual.ts';

/** Steady states in closed loop; each trim alone, since the sum of both is what has the usual limit of 10 %. */
const steady = [
  'warm idle',
  'idle in gear',
  '1500 rpm no load',
  '2500 rpm no load',
  'light cruise',
  'cruise',
];

/** Loop status and what the fuel control adds or takes away. */
export const trims: readonly Signal[] = [
  loop('loop', 'Fuel control of bank 1: does it follow the oxygen sensor?', [
    'loop status',
    'fuel system status',
    'fuel system 1',
    'closed loop',
    'open loop',
  ]),
  loop('loop_b2', 'Fuel control of bank 2: does it follow the oxygen sensor?', ['fuel system 2']),
  trim('stft_b1', 'Short-term fuel trim, bank 1', '$06', [
    'short term fuel trim',
    'short term fuel trim 1',
    'short term fuel trim bank 1',
    'short term trim',
    'short trim bank 1',
    'stft',
    'stft 1',
    'stft bank 1',
    'shrtft1',
    'integrator',
  ]),
  trim('ltft_b1', 'Long-term fuel trim, bank 1', '$07', [
    'long term fuel trim',
    'long term fuel trim 1',
    'long term fuel trim bank 1',
    'long term trim',
    'long trim bank 1',
    'ltft',
    'ltft 1',
    'ltft bank 1',
    'ltft bank1',
    'longft1',
    'block learn',
  ]),
  trim('stft_b2', 'Short-term fuel trim, bank 2', '$08', [
    'short term fuel trim 2',
    'short term fuel trim bank 2',
    'short trim bank 2',
    'stft 2',
    'stft bank 2',
    'shrtft2',
  ]),
  trim('ltft_b2', 'Long-term fuel trim, bank 2', '$09', [
    'long term fuel trim 2',
    'long term fuel trim bank 2',
    'long trim bank 2',
    'ltft 2',
    'ltft bank 2',
    'longft2',
  ]),
  trim('stft_b1s2', 'Short-term trim of the rear sensor, bank 1', '$55, value from memory', [
    'rear short trim bank 1',
    'secondary short trim bank 1',
    'rear trim',
  ]),
  trim('ltft_b1s2', 'Long-term trim of the rear sensor, bank 1', '$56, value from memory', [
    'rear long trim bank 1',
    'secondary long trim bank 1',
  ]),
  trim('stft_b2s2', 'Short-term trim of the rear sensor, bank 2', '$57, value from memory', [
    'rear short trim bank 2',
    'secondary short trim bank 2',
  ]),
  trim('ltft_b2s2', 'Long-term trim of the rear sensor, bank 2', '$58, value from memory', [
    'rear long trim bank 2',
    'secondary long trim bank 2',
  ]),
  cells('trim_cells_b1', 'Long-term trims of bank 1 by load cell', ['trim cells', 'fuel trim cells']),
  cells('trim_cells_b2', 'Long-term trims of bank 2 by load cell', ['trim cells bank 2']),
  {
    name: 'trim_additive',
    meaning: 'Learned correction that is added at every load: mass, not share',
    family: 'trims',
    holds: 'quantity',
    forms: [{ unit: '%', physical: '-100 .. 100 %' }],
    alsoCalled: ['additive trim', 'additive adaptation', 'additive fuel trim', 'idle adaptation'],
  },
  {
    name: 'trim_multiplicative',
    meaning: 'Learned correction that multiplies the fuel at part load',
    family: 'trims',
    holds: 'quantity',
    forms: [{ unit: '%', physical: '-100 .. 100 %' }],
    alsoCalled: ['multiplicative trim', 'multiplicative adaptation', 'part load adaptation'],
  },
];

function trim(name: string, meaning: string, pid: string, alsoCalled: readonly string[]): Signal {
  return {
    name,
    meaning,
    family: 'trims',
    holds: 'quantity',
    forms: [
      {
        unit: '%',
        encoding: signedByteOfPercent(pid),
        physical: '-100 .. 100 %',
        usual: steady.map((state) => usually(state, '-10 .. 10 %')),
      },
    ],
    alsoCalled,
  };
}

function loop(name: string, meaning: string, alsoCalled: readonly string[]): Signal {
  return {
    name,
    meaning,
    family: 'trims',
    holds: 'word',
    words: ['closed', 'open', 'open cold', 'open load', 'open fault', 'closed fault'],
    forms: [],
    alsoCalled,
    note: 'Open because cold, because of load or fuel cut, because of a fault; closed with a fault in a sensor (SAE J1979 $03, from memory).',
  };
}

function cells(name: string, meaning: string, alsoCalled: readonly string[]): Signal {
  return {
    name,
    meaning,
    family: 'trims',
    holds: 'quantity',
    by: 'label',
    forms: [{ unit: '%', physical: '-100 .. 100 %' }],
    alsoCalled,
  };
}
