import { type Diagnostic, diagnose } from '../../diagnostics/diagnostic.ts';
import { absoluteLoad, airPerStroke } from '../../engine/air/airFlow.ts';
import { gasolineDensity } from '../../engine/fuel/ethanolBlend.ts';
import { stoichiometricRatio } from '../../engine/fuel/stoichiometry.ts';
import { formatNumber, formatQuantity } from '../../quantity/format.ts';
import type { Car } from '../car.ts';
import { inForm, type Measured, writtenAs } from '../measured.ts';
import { lambdaOfGas } from '../mixture/gasOf.ts';
import { fullNameOf, type Moment, stateName } from '../moments.ts';
import type { CellRule } from '../rule.ts';
import { steadyStates } from '../steadyStates.ts';
import type { RuledSignal } from '../values.ts';

type Compares = (moment: Moment, car: Car) => Diagnostic | undefined;

/** What is compared where the first of both was read. */
const pairs: readonly { readonly of: RuledSignal; readonly compare: Compares }[] = [
  { of: 'load_abs', compare: loadAndFlow },
  { of: 'afr_b1', compare: ({ values }, car) => lambdaAndRatio(values.lambda_b1, values.afr_b1, car) },
  { of: 'afr_b2', compare: ({ values }, car) => lambdaAndRatio(values.lambda_b2, values.afr_b2, car) },
  {
    of: 'charging_voltage',
    compare: ({ values }) => oneThing(values.battery, values.charging_voltage, volts),
  },
  {
    of: 'cranking_voltage',
    compare: ({ values }) => oneThing(values.battery, values.cranking_voltage, volts),
  },
  { of: 'analyser_lambda', compare: analyserAndGas },
  { of: 'fuel_rate', compare: fuelAndAir },
  { of: 'boost', compare: boostAndManifold },
  { of: 'air_charge', compare: chargeAndFlow },
  { of: 'gear_ratio', compare: ratioAndSpeeds },
  { of: 'tcc_slip', compare: slipAndSpeeds },
];

/** Two readings of one thing at one moment that differ by more than their accuracy. */
export const readingsDiffer: CellRule = {
  code: 'readings-differ',
  of: pairs.map(({ of }) => of),
  checkCell: ({ car, moments }) => {
    const found: Diagnostic[] = [];
    for (const { of, compare } of pairs) {
      const differs = firstOf(moments, of, compare, car);
      if (differs !== undefined) found.push(differs);
    }
    return found;
  },
};

/** A row is told once. */
function firstOf(
  moments: readonly Moment[],
  of: RuledSignal,
  compare: Compares,
  car: Car,
): Diagnostic | undefined {
  for (const moment of moments) {
    const differs = moment.values[of] === undefined ? undefined : compare(moment, car);
    if (differs !== undefined) return differs;
  }
  return undefined;
}

/** V: two meters on one battery, a few seconds apart. */
const volts = 0.6;
/** Shares: programs round and delay their load; a lambda and a ratio of one sensor are one number. */
const ofLoad = { relative: 0.2, absolute: 0.03 };
const ofRatio = 0.04;

/** Lambda: instruments count with constants of their own, which part where it is lean. */
const ofLambda = { absolute: 0.04, lean: 0.1 };

/** An analyser works its lambda out of the gases that it shows. */
function analyserAndGas(moment: Moment, car: Car): Diagnostic | undefined {
  const shown = inForm(moment.values.analyser_lambda, '1');
  const lambda = shown === undefined ? undefined : lambdaOfGas(moment, car);
  if (shown === undefined || lambda === undefined) return undefined;
  const width = ofLambda.absolute + ofLambda.lean * Math.max(0, lambda - 1) + shown.halfWidth;
  if (Math.abs(shown.si - lambda) <= width) return undefined;
  return differ(shown, `the gases beside it make ${formatNumber(Number(lambda.toFixed(2)))}`);
}

/** The air that a fuel rate burns: within this factor of what a meter shows in a steady state of a petrol engine. */
const ofFuel = 2;
/** kg/s: half a litre an hour, ten steps of a generic reading. */
const leastFuel = 1e-4;

function fuelAndAir(moment: Moment, { fuel, hasThrottle }: Car): Diagnostic | undefined {
  const { fuel_rate: rate } = moment.values;
  const maf = inForm(moment.values.maf, 'g/s');
  if (rate === undefined || maf === undefined || fuel === undefined || !hasThrottle) return undefined;
  if (!steadyStates.includes(stateName(moment) ?? '')) return undefined;
  const ratio = stoichiometricRatio(fuel);
  const mass = rate.unit === 'g/s' ? rate.si : rate.si * gasolineDensity * 1000;
  if (typeof ratio !== 'number' || mass < leastFuel) return undefined;
  const air = mass * ratio;
  if (maf.si <= ofFuel * air && air <= ofFuel * maf.si) return undefined;
  return differ(
    rate,
    `\`${fullNameOf(maf)}\` is ${writtenAs(maf)}, where that fuel burns ${formatQuantity(Number(air.toPrecision(2)), maf.type)} of air`,
  );
}

/** The air of one stroke is the flow for speed and cylinders. */
function chargeAndFlow(moment: Moment, { header: { cylinders }, isTwoStroke }: Car): Diagnostic | undefined {
  const charge = inForm(moment.values.air_charge, 'mg/stroke');
  const maf = inForm(moment.values.maf, 'g/s');
  const rpm = inForm(moment.values.rpm, 'rpm');
  if (
    charge === undefined ||
    maf === undefined ||
    rpm === undefined ||
    cylinders === undefined ||
    isTwoStroke
  )
    return undefined;
  const stroke = airPerStroke(maf.si, rpm.si, cylinders);
  if (typeof stroke !== 'number' || isNear(charge.si, stroke, ofLoad.relative, leastCharge)) return undefined;
  const same = formatQuantity(Number(stroke.toPrecision(3)), charge.type);
  return differ(charge, `\`${fullNameOf(maf)}\` at this speed means ${same}`);
}

/** kg: a sixth of what an idling cylinder draws in. */
const leastCharge = 2e-5;

/** Into the transmission over out of it; standing, there is none. */
function ratioAndSpeeds(moment: Moment): Diagnostic | undefined {
  const ratio = inForm(moment.values.gear_ratio, '1');
  const [into, out] = [inForm(moment.values.tss, 'rpm'), inForm(moment.values.oss, 'rpm')];
  if (ratio === undefined || into === undefined || out === undefined || out.si < turning) return undefined;
  const is = into.si / out.si;
  // In reverse programs show the ratio with its sign or without.
  if (isNear(Math.abs(ratio.si), is, ofRatio, 0.05)) return undefined;
  return differ(
    ratio,
    `\`${fullNameOf(into)}\` over \`${fullNameOf(out)}\` makes ${formatNumber(Number(is.toFixed(2)))}`,
  );
}

/** Engine speed less turbine speed, in states that hold still. */
function slipAndSpeeds(moment: Moment): Diagnostic | undefined {
  const slip = inForm(moment.values.tcc_slip, 'rpm');
  const [rpm, into] = [inForm(moment.values.rpm, 'rpm'), inForm(moment.values.tss, 'rpm')];
  if (slip === undefined || rpm === undefined || into === undefined) return undefined;
  if (!steadyStates.includes(stateName(moment) ?? '')) return undefined;
  const is = rpm.si - into.si;
  if (isNear(slip.si, is, 0.2, wandering)) return undefined;
  return differ(
    slip,
    `\`${fullNameOf(rpm)}\` less \`${fullNameOf(into)}\` makes ${formatQuantity(Number(is.toPrecision(6)), slip.type)}`,
  );
}

/** Turns a second: an output that turns, and what two speeds wander between two looks. */
const turning = 100 / 60;
const wandering = 100 / 60;

const isNear = (a: number, b: number, relative: number, absolute: number): boolean =>
  Math.abs(a - b) <= relative * Math.max(Math.abs(a), Math.abs(b)) + absolute;

/** Pa: what a barometer can be on a road, from 5000 m up to the highest weather at the Dead Sea, with two gauges' errors. */
const barometers = { low: 48_000, high: 115_000 };

/** Pa: two gauges on one pressure. */
const alike = 5000;

/** Manifold pressure less boost is a barometer. */
function boostAndManifold(moment: Moment): Diagnostic | undefined {
  const boost = inForm(moment.values.boost, 'psi');
  const map = inForm(moment.values.map, 'kPa');
  if (boost === undefined || map === undefined) return undefined;
  const baro = map.si - boost.si;
  if (baro >= barometers.low && baro <= barometers.high) return undefined;
  const means = formatQuantity(Number(baro.toPrecision(3)), map.type);
  const looks =
    Math.abs(baro) <= alike
      ? `: \`${fullNameOf(map)}\` looks like the same gauge pressure, counted from the barometer and not from nothing`
      : '';
  return differ(
    boost,
    `\`${fullNameOf(map)}\` is ${writtenAs(map)}, which leaves ${means} for the barometer${looks}`,
  );
}

/** Absolute load is the air flow in another form (SAE J1979), of four strokes. */
function loadAndFlow(moment: Moment, { displacement, isTwoStroke }: Car): Diagnostic | undefined {
  const load = inForm(moment.values.load_abs, '%');
  const maf = inForm(moment.values.maf, 'g/s');
  const rpm = inForm(moment.values.rpm, 'rpm');
  if (load === undefined || maf === undefined || rpm === undefined) return undefined;
  if (displacement === undefined || isTwoStroke) return undefined;
  const share = absoluteLoad(maf.si, rpm.si, displacement);
  if (typeof share !== 'number') return undefined;
  if (Math.abs(load.si - share) <= ofLoad.relative * Math.max(load.si, share) + ofLoad.absolute)
    return undefined;
  const same = formatQuantity(Number(share.toPrecision(3)), load.type);
  return differ(load, `\`${fullNameOf(maf)}\` at this speed and displacement means ${same}`);
}

function lambdaAndRatio(
  lambda: Measured | undefined,
  ratio: Measured | undefined,
  { fuel }: Car,
): Diagnostic | undefined {
  if (lambda?.unit !== '1' || ratio?.unit !== '1' || fuel === undefined) return undefined;
  const stoichiometric = stoichiometricRatio(fuel);
  if (typeof stoichiometric !== 'number') return undefined;
  const expected = lambda.si * stoichiometric;
  // Many instruments show the ratio of plain gasoline whatever is in the tank.
  const gasoline = lambda.si * 14.7;
  const isNear = (value: number): boolean => Math.abs(ratio.si - value) <= ofRatio * value;
  if (isNear(expected) || isNear(gasoline)) return undefined;
  return differ(
    ratio,
    `\`${fullNameOf(lambda)}\` means ${formatNumber(Number(expected.toFixed(1)))} with ${fuel}`,
  );
}

function oneThing(
  one: Measured | undefined,
  other: Measured | undefined,
  width: number,
): Diagnostic | undefined {
  if (one === undefined || other === undefined || one.type.dimension !== other.type.dimension)
    return undefined;
  const slack = Math.max(width, one.halfWidth + other.halfWidth);
  if (Math.abs(one.si - other.si) <= slack) return undefined;
  return differ(other, `\`${fullNameOf(one)}\` of the same moment is ${writtenAs(one)}`);
}

function differ(one: Measured, says: string): Diagnostic {
  return diagnose('readings-differ', one.reading.valueSpan, {
    name: fullNameOf(one),
    written: writtenAs(one),
    says,
  });
}
