import type { Signal } from '../types.ts';
import { dieselEngine, practiceOf, usually, warmCatalyst } from './usual.ts';

const behindCatalyst = 'petrol engine behind a warm catalyst';

/** What a gas analyser shows at the tailpipe, dry and by volume. */
export const exhaustGas: readonly Signal[] = [
  {
    name: 'co',
    meaning: 'Carbon monoxide',
    family: 'exhaustGas',
    holds: 'quantity',
    forms: [
      {
        unit: '%',
        physical: '-0.1 .. 20 %',
        usual: [
          usually('warm idle', '0 .. 0.5 %', warmCatalyst),
          usually('2500 rpm no load', '0 .. 0.3 %', warmCatalyst),
        ],
      },
    ],
    alsoCalled: ['carbon monoxide'],
    note: 'Exhaust gas kills indoors: extract it, and air the place.',
  },
  {
    name: 'co2',
    meaning: 'Carbon dioxide',
    family: 'exhaustGas',
    holds: 'quantity',
    forms: [
      {
        unit: '%',
        physical: '-0.1 .. 22 %',
        usual: [
          usually('warm idle', '13 .. 16.5 %', practiceOf(behindCatalyst, 'petrol')),
          usually('2500 rpm no load', '13 .. 16.5 %', practiceOf(behindCatalyst, 'petrol')),
        ],
      },
    ],
    alsoCalled: ['carbon dioxide'],
  },
  {
    name: 'o2_gas',
    meaning: 'Oxygen in the exhaust gas',
    family: 'exhaustGas',
    holds: 'quantity',
    forms: [
      {
        unit: '%',
        physical: '-0.5 .. 26 %',
        usual: [
          usually('warm idle', '0 .. 1.5 %', practiceOf(behindCatalyst, 'spark')),
          usually('2500 rpm no load', '0 .. 1 %', practiceOf(behindCatalyst, 'spark')),
        ],
      },
    ],
    alsoCalled: ['oxygen', 'o2', 'exhaust oxygen', 'o2 percent', 'tailpipe oxygen'],
    note: 'Air holds 20.9 %: an analyser that shows less in clean air has a tired cell.',
  },
  {
    name: 'hc',
    meaning: 'Unburned hydrocarbons, as hexane',
    family: 'exhaustGas',
    holds: 'quantity',
    forms: [
      {
        unit: 'ppm',
        physical: '-50 .. 100000 ppm',
        usual: [
          usually('warm idle', '0 .. 150 ppm', warmCatalyst),
          usually('2500 rpm no load', '0 .. 100 ppm', warmCatalyst),
        ],
      },
    ],
    alsoCalled: ['hydrocarbons', 'unburned fuel', 'unburned hydrocarbons'],
  },
  {
    name: 'nox',
    meaning: 'Oxides of nitrogen',
    family: 'exhaustGas',
    holds: 'quantity',
    forms: [{ unit: 'ppm', physical: '-200 .. 10000 ppm', usual: [usually('warm idle', '0 .. 400 ppm')] }],
    alsoCalled: ['no', 'nitrogen oxides', 'oxides of nitrogen', 'nitric oxide'],
  },
  {
    name: 'analyser_lambda',
    meaning: 'Lambda as the gas analyser shows it',
    family: 'exhaustGas',
    holds: 'quantity',
    forms: [{ unit: '1', physical: '0.4 .. 100' }],
    alsoCalled: ['gas lambda', 'tailpipe lambda', 'exhaust lambda', 'lambda from gas'],
  },
  {
    name: 'opacity',
    meaning: 'Diesel smoke: light that it stops, or its absorption',
    family: 'exhaustGas',
    holds: 'quantity',
    forms: [
      {
        unit: '%',
        physical: '-1 .. 100 %',
        usual: [usually('snap throttle', '0 .. 40 %', dieselEngine)],
      },
      { unit: 'm⁻¹', physical: '-0.1 .. 30 m⁻¹' },
    ],
    alsoCalled: ['smoke', 'smoke opacity', 'diesel smoke', 'k value', 'absorption'],
  },
];
