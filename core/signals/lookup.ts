import type { Dimension } from '../quantity/types.ts';
import { unitOf } from '../quantity/unit.ts';
import { nearest } from '../text/nearest.ts';
import type { Form, Signal } from './types.ts';
import { air } from './vocabulary/air.ts';
import { boost } from './vocabulary/boost.ts';
import { cooling } from './vocabulary/cooling.ts';
import { cylinders } from './vocabulary/cylinders.ts';
import { electrical } from './vocabulary/electrical.ts';
import { engine } from './vocabulary/engine.ts';
import { evap } from './vocabulary/evap.ts';
import { exhaustGas } from './vocabulary/exhaustGas.ts';
import { fuel } from './vocabulary/fuel.ts';
import { highPressureFuel } from './vocabulary/highPressureFuel.ts';
import { hybrid } from './vocabulary/hybrid.ts';
import { ignition } from './vocabulary/ignition.ts';
import { mechanical } from './vocabulary/mechanical.ts';
import { network } from './vocabulary/network.ts';
import { oxygen } from './vocabulary/oxygen.ts';
import { particulate } from './vocabulary/particulate.ts';
import { readiness } from './vocabulary/readiness.ts';
import { recirculation } from './vocabulary/recirculation.ts';
import { temperatures } from './vocabulary/temperatures.ts';
import { throttle } from './vocabulary/throttle.ts';
import { trims } from './vocabulary/trims.ts';
import { vehicle } from './vocabulary/vehicle.ts';

/** Every signal of the vocabulary, family by family. */
export function allSignals(): readonly Signal[] {
  all ??= families.flat();
  return all;
}

/** The signal of exactly this name; case counts. */
export function signalOf(name: string): Signal | undefined {
  byName ??= new Map(allSignals().map((each) => [each.name, each]));
  return byName.get(name);
}

/**
 * The signals that a name may have meant, at most three: by another word for it ("engine speed" is rpm), then by spelling.
 * Case, spaces, hyphens and underscores do not count.
 */
export function nearestSignals(name: string): string[] {
  const asked = plainly(name);
  const offers: string[] = [];
  const close = spellings().has(asked) ? [asked] : nearest(asked, spellings().keys(), 6);
  for (const spelling of close) {
    for (const signal of spellings().get(spelling) ?? []) {
      if (signal !== name && !offers.includes(signal)) offers.push(signal);
    }
  }
  return offers.slice(0, 3);
}

/** The signals that are called exactly so, by their name or another word; case, spaces, hyphens and underscores do not count. */
export function signalsCalled(name: string): readonly Signal[] {
  return (spellings().get(plainly(name)) ?? []).flatMap((each) => signalOf(each) ?? []);
}

/** The form of a signal whose unit has this dimension, the usual one first; undefined when it has none. */
export function formFor(signal: Signal, dimension: Dimension): Form | undefined {
  return signal.forms.find((form) => unitOf(form.unit)?.dimension === dimension);
}

const families: readonly (readonly Signal[])[] = [
  engine,
  air,
  throttle,
  trims,
  fuel,
  highPressureFuel,
  oxygen,
  ignition,
  temperatures,
  exhaustGas,
  cylinders,
  mechanical,
  recirculation,
  boost,
  evap,
  particulate,
  electrical,
  network,
  hybrid,
  cooling,
  vehicle,
  readiness,
];

let all: readonly Signal[] | undefined;
let byName: ReadonlyMap<string, Signal> | undefined;
let spelled: ReadonlyMap<string, readonly string[]> | undefined;

/** Names and other words by their plain spelling; two signals may share another word. */
function spellings(): ReadonlyMap<string, readonly string[]> {
  if (spelled !== undefined) return spelled;
  const found = new Map<string, string[]>();
  const add = (spelling: string, name: string) => {
    const names = found.get(plainly(spelling));
    if (names === undefined) found.set(plainly(spelling), [name]);
    else if (!names.includes(name)) names.push(name);
  };
  for (const { name } of allSignals()) add(name, name);
  for (const { name, alsoCalled = [] } of allSignals()) for (const other of alsoCalled) add(other, name);
  spelled = found;
  return found;
}

/** `Engine_Speed` and `engine speed` are one spelling. */
function plainly(name: string): string {
  return name
    .toLowerCase()
    .replace(/[\s_-]+/g, ' ')
    .trim();
}
