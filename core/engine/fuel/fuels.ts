import type { Composition } from './composition.ts';

export interface Fuel {
  /** As it is printed. */
  readonly name: string;
  readonly alsoCalled: readonly string[];
  readonly composition: Composition;
  /** Where exhaust-gas rules use another composition than the fuel's own. */
  readonly gasComposition?: Composition;
  readonly source: string;
}

const heywood = 'Heywood, Internal Combustion Engine Fundamentals, appendix D (composition from memory)';
const unReference = 'reference fuel of UN Regulation No. 83 (value from memory)';
const formula = 'chemical formula';

/**
 * Fuels by name. Blends E0 to E100 without a row here are computed from gasoline and ethanol.
 * "Gasoline" is the fuel without ethanol; what a pump sells as regular is mostly E10.
 */
export const fuels: readonly Fuel[] = [
  {
    name: 'E0',
    alsoCalled: ['gasoline', 'petrol'],
    composition: perCarbon(1.87, 0),
    // What exhaust-gas testers take for petrol unless told otherwise.
    gasComposition: perCarbon(1.7261, 0.0176),
    source: `${heywood}; for exhaust gas CH1.7261O0.0176 of OIML R 99 (value from memory)`,
  },
  { name: 'E5', alsoCalled: [], composition: perCarbon(1.89, 0.016), source: unReference },
  { name: 'E10', alsoCalled: [], composition: perCarbon(1.93, 0.033), source: unReference },
  { name: 'E75', alsoCalled: [], composition: perCarbon(2.61, 0.329), source: unReference },
  { name: 'E85', alsoCalled: ['flex fuel'], composition: perCarbon(2.74, 0.385), source: unReference },
  {
    name: 'ethanol',
    alsoCalled: ['E100'],
    composition: { carbon: 2, hydrogen: 6, oxygen: 1 },
    source: formula,
  },
  {
    name: 'methanol',
    alsoCalled: ['M100'],
    composition: { carbon: 1, hydrogen: 4, oxygen: 1 },
    source: formula,
  },
  { name: 'isooctane', alsoCalled: [], composition: { carbon: 8, hydrogen: 18, oxygen: 0 }, source: formula },
  { name: 'propane', alsoCalled: [], composition: { carbon: 3, hydrogen: 8, oxygen: 0 }, source: formula },
  { name: 'LPG', alsoCalled: ['autogas'], composition: perCarbon(2.525, 0), source: unReference },
  {
    name: 'methane',
    alsoCalled: ['CNG', 'LNG', 'natural gas'],
    composition: { carbon: 1, hydrogen: 4, oxygen: 0 },
    source: formula,
  },
  { name: 'diesel', alsoCalled: ['B5'], composition: perCarbon(1.86, 0.005), source: unReference },
  {
    name: 'hydrogen',
    alsoCalled: ['H2'],
    composition: { carbon: 0, hydrogen: 2, oxygen: 0 },
    source: formula,
  },
];

function perCarbon(hydrogen: number, oxygen: number): Composition {
  return { carbon: 1, hydrogen, oxygen };
}
