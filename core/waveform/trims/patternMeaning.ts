import type { BankWord } from './banks.ts';
import type { TrimPattern, TrimWord } from './trimPattern.ts';

/** What the engine management measures the air with, in the header's words. */
export type Metering = 'air flow' | 'manifold pressure' | 'both';

type Named = Exclude<TrimWord, 'near zero' | 'no clear pattern'>;
type Meanings = Readonly<Record<Named, Readonly<Record<'lean' | 'rich', string>>>>;

/** Common practice, from what each way of metering counts and what it does not. */
const byMeter: Meanings = {
  'same grams': {
    lean: 'Air comes in behind the meter: hose, gasket, brake booster, crankcase ventilation, injector seals. The hole is the same at every load.',
    rich: 'The same mass of fuel comes in uncounted at every load: purge vapour, a leaking regulator or injector, fuel in the oil.',
  },
  'same percent': {
    lean: 'The same share is missing everywhere: the meter counts too little, the fuel pressure is low throughout, the injectors are restricted, or the front sensor reads lean (exhaust leak before it, shifted sensor).',
    rich: 'The same share is too much everywhere: the meter counts too much, the fuel pressure is high throughout, or the front sensor reads rich.',
  },
  'rises with load': {
    lean: 'The fuel does not keep up, or the meter counts too little at high flow. The volumetric efficiency at full throttle separates them: usual says fuel, low says meter.',
    rich: 'The meter counts too much at high flow, or the fuel pressure climbs with the load.',
  },
};

const byPressure: Meanings = {
  'same grams': {
    lean: 'A hole in the manifold raises the pressure and is counted, so look elsewhere: air into the exhaust before the front sensor, or one cylinder that does not burn; both weigh most at idle.',
    rich: 'Gas that is no air raises the pressure and is counted as air: exhaust gas recirculation that does not close. Or uncounted fuel: purge vapour, a leaking regulator or injector, fuel in the oil.',
  },
  'same percent': {
    lean: 'The same share is missing everywhere: the pressure sensor reads low, the intake air reads too hot, the fuel pressure is low throughout, or the front sensor reads lean.',
    rich: 'The engine fills less than its pressure says (valve timing, a worn lobe), the pressure sensor reads high, the intake air reads too cold, or the fuel pressure is high throughout.',
  },
  'rises with load': {
    lean: 'The fuel does not keep up: pump, filter, its supply. There is no meter to blame.',
    rich: 'The engine fills less and less than its pressure says as the load rises: look for a blocked exhaust. Or the fuel pressure climbs with the load.',
  },
};

const ofOneBank = 'One bank only: what both share (meter, pump, regulator, purge) is not the cause.';

/** What is left of it where only one bank has it, however the air is counted. */
const byBank: Meanings = {
  'same grams': {
    lean: 'Air that this bank alone gets: its intake gasket, injector seals, or a leak in its exhaust before the sensor.',
    rich: 'Fuel that this bank alone gets: an injector of it that drips.',
  },
  'same percent': {
    lean: 'Its injectors are restricted, or its sensor reads lean.',
    rich: 'Its injectors give too much, its sensor reads rich, or it fills less than the other: valve timing, compression.',
  },
  'rises with load': {
    lean: 'Its injectors do not keep up, or the other bank’s exhaust is blocked and this one takes its air: compare the pressure in both.',
    rich: 'It breathes too little: the pressure in its exhaust first, then its valve timing.',
  },
};

/** What a pattern means on an engine that counts its air this way; undefined where there is no pattern to mean anything. */
export function patternMeaning(
  { word, leans }: Pick<TrimPattern, 'word' | 'leans'>,
  bank: BankWord,
  metering: Metering | undefined,
): string | undefined {
  if (word === 'near zero' || word === 'no clear pattern' || leans === undefined) return undefined;
  if (bank === 'bank 1' || bank === 'bank 2') return `${ofOneBank} ${byBank[word][leans]}`;
  const meter = byMeter[word][leans];
  const pressure = byPressure[word][leans];
  return metering === 'air flow'
    ? meter
    : metering === 'manifold pressure'
      ? pressure
      : `Metered by air flow: ${meter} Metered by manifold pressure: ${pressure}`;
}
