import { describe, expect, it } from 'vitest';
import { message } from '../../core/diagnostics/words.ts';
import { engineFunctions } from '../../core/engine/engineFunctions.ts';
import type { FunctionRow, Limits, Parameter, Plain } from '../../core/expression/functionRow.ts';
import { parseExpression } from '../../core/expression/parse.ts';
import { sayLimits } from '../../core/expression/sayLimits.ts';
import type { Call, Expression } from '../../core/expression/tree.ts';
import { toSi } from '../../core/quantity/convert.ts';
import { scanQuantity } from '../../core/quantity/scan.ts';
import { checkCase } from '../../core/rules/checkCase.ts';
import { allFunctions, functionRow } from '../../core/study/functions.ts';
import { childrenOf } from '../../core/study/graph/children.ts';

/*
 * What a function’s page says of the ends of its values is what a case is told: each end of every parameter is typed into
 * the row’s own example, a little beyond and a little within.
 */

/** Calls of functions whose examples need a capture of their own, on the one below. */
const onSamples: Readonly<Record<string, string>> = {
  crossings: 'crossings(log.volts)',
  switch_rate: 'switch_rate(log.volts)',
  order_amplitude: 'order_amplitude(log.volts, 600 rpm, 0.5)',
  smooth: 'smooth(log.volts, 0.4 s)',
  baseline: 'baseline(log.volts, 1 s, 50 %)',
  percentile: 'percentile(log.volts, 50 %)',
  lambda_sensor: 'lambda_sensor(log.lambda).deviation',
  pump_current: 'pump_current(log.amps, 8).speed',
  relative_compression: 'relative_compression(log.amps)',
  valve_events: 'valve_events(log.cylinder).evo',
  cranking_speed: 'cranking_speed(log.amps)',
};

/** Readings of nothing in particular: a channel of each sort, one swing a second. */
const samples = Array.from({ length: 60 }, (_, at) => {
  const swing = Math.sin((2 * Math.PI * at) / 10);
  return `  ${(at / 10).toFixed(1)} ${(0.45 + 0.3 * swing).toFixed(3)} ${(1 + 0.01 * swing).toFixed(4)} ${(120 + 20 * swing).toFixed(2)} ${(500 + 400 * swing).toFixed(1)}`;
}).join('\n');

const capture = `---
capture: Samples of nothing in particular
as: log
rows: |
  time volts lambda amps cylinder
${samples}
channels:
  volts: {column: volts, unit: V}
  lambda: {column: lambda}
  amps: {column: amps, unit: A}
  cylinder: {column: cylinder, unit: kPa gauge}
`;

const engine = `engine:
  displacement: 2.0 L
  cylinders: 4
  compression ratio: 10
  firing order: 1-3-4-2
  stroke: 90 mm
  rod length: 150 mm
  cam drive teeth: 40
  injector flow: 240 cc/min
  fuel: E10
site:
  altitude: 30 ft
  sea level pressure: 29.90 inHg
`;

/** What a case is told of one expression: why it has no answer, and the cautions beside it. */
function told({ example }: FunctionRow, expression: string): string[] {
  const given =
    example.given === undefined
      ? ''
      : `---\nreference: What it is given\nas: spec\nsource: made for the test\nvalues:\n  ${example.given}\n`;
  const studied = checkCase(
    `diag: 1\ncase: At its ends\n${engine}${capture}${given}---\ncheck: At its end\nlet:\n  asked: |\n    ${expression}\n`,
  );
  const found = studied.findings
    .filter(({ diagnostic }) => diagnostic.severity !== 'info')
    .map(({ diagnostic }) => diagnostic);
  const wrong = found.filter(({ code }) => code !== 'outside-range').map(message);
  expect(wrong, expression).toEqual([]);
  const value = studied.computed.find(({ name }) => name === 'asked')?.value;
  return [...(value?.kind === 'absent' ? [value.why] : []), ...found.map(message)];
}

/** The example with another value for one parameter. */
function withValue(row: FunctionRow, parameter: Parameter, written: string): string {
  const text = onSamples[row.name] ?? row.example.expression;
  const call =
    callOf(row.name, parseExpression(text).value) ?? expect.fail(`no call of ${row.name} in ${text}`);
  const place = row.parameters.indexOf(parameter);
  const argument =
    call.arguments.find(({ name }) => name === parameter.name) ??
    (call.arguments[place]?.name === undefined ? call.arguments[place] : undefined);
  if (argument !== undefined)
    return text.slice(0, argument.value.span.start) + written + text.slice(argument.value.span.end);
  const end = call.span.end - 1;
  return `${text.slice(0, end)}${call.arguments.length > 0 ? ', ' : ''}${parameter.name} = ${written}${text.slice(end)}`;
}

function callOf(name: string, tree: Expression): Call | undefined {
  if (tree.kind === 'call' && tree.name === name) return tree;
  for (const each of childrenOf(tree)) {
    const found = callOf(name, each);
    if (found !== undefined) return found;
  }
  return undefined;
}

interface End {
  readonly written: string;
  readonly beyond: string;
  readonly within: string;
}

/** A value beyond each end, and one that is still within. */
function endsOf(limits: Limits): readonly End[] {
  const { from, to, above, below } = limits;
  const numberIn = (written: string): number => Number(/^-?[\d.]+/.exec(written)?.[0]);
  const unitIn = (written: string): string => written.replace(/^-?[\d.]+/, '');
  const [low, high] = [from ?? above, to ?? below];
  const span =
    low === undefined || high === undefined
      ? Math.abs(numberIn(low ?? high ?? '0'))
      : numberIn(high) - numberIn(low);
  const little = 0.01 * (span === 0 ? 1 : span);
  const at = (written: string, shift: number): string =>
    `${Number((numberIn(written) + shift).toFixed(9))}${unitIn(written)}`;
  return [
    ...(from === undefined ? [] : [{ written: from, beyond: at(from, -little), within: from }]),
    ...(above === undefined ? [] : [{ written: above, beyond: above, within: at(above, little / 10) }]),
    ...(to === undefined ? [] : [{ written: to, beyond: at(to, little), within: to }]),
    ...(below === undefined ? [] : [{ written: below, beyond: below, within: at(below, -little / 10) }]),
  ];
}

const limited = allFunctions().flatMap((row) =>
  row.parameters.flatMap((parameter) =>
    parameter.within === undefined
      ? []
      : endsOf(parameter.within).map(
          (end) => [`${parameter.name} of ${row.name} at ${end.written}`, row, parameter, end] as const,
        ),
  ),
);

describe('the limits of parameters', () => {
  it.each(limited)('%s', (_, row, parameter, { beyond, within }) => {
    const outside = told(row, withValue(row, parameter, beyond));
    expect(outside, `${parameter.name} = ${beyond}`).not.toEqual([]);
    expect(told(row, withValue(row, parameter, within)), `${parameter.name} = ${within}`).not.toEqual(
      outside,
    );
  });

  it.each(limited)('%s: what is within is not told to be beyond', (_, row, parameter, { beyond, within }) => {
    const shape = (sentences: readonly string[]) =>
      sentences.map((each) => each.replace(/-?[\d.]+(e[-+]?\d+)?/g, '#'));
    const [outside, inside] = [beyond, within].map((each) =>
      shape(told(row, withValue(row, parameter, each))),
    );
    for (const each of inside ?? []) expect(outside).not.toContain(each);
  });

  /** Any number is one, or what it may be depends on the others: that the errors of the row say. */
  const unlimited = new Set([
    'fuel_cut.throttle',
    'fuel_cut.closed',
    'fuel_cut.longest',
    'fuel_cut.front_sensor',
    'injector_pressure.fuel_pressure',
    'steinhart_hart.a',
    'steinhart_hart.b',
    'steinhart_hart.c',
    'sensor_circuit.volts',
    'ratiometric_pressure.volts',
    'nernst_oxygen.volts',
    'thermistor_resistance.temperature',
    'cylinder_volume.angle',
    'piston_position.angle',
    'piston_position.rod_length',
    'relative_compression.cylinder',
    'hump_balance.cylinder',
    'intake_balance.cylinder',
    'companion_of.cylinder',
    'fires_after.cylinder',
    'compression_pattern.best',
    'puff_pattern.best',
    'wet_pattern.best',
    'intake_duration.ivo',
    'intake_duration.ivc',
    'exhaust_duration.evo',
    'exhaust_duration.evc',
    'valve_overlap.ivo',
    'valve_overlap.evc',
    'cam_shift.teeth',
    'teeth_off.shift',
    'wire_drop.current',
    'coil_current.volts',
    'coil_energy.current',
    'internal_resistance.rested',
    'internal_resistance.loaded',
  ]);

  it('are said of every number that a function about the engine takes, but where any will do', () => {
    const without = engineFunctions().flatMap(({ name, parameters }) =>
      parameters
        .filter(({ takes, within }) => takes.what === 'quantity' && within === undefined)
        .map((each) => `${name}.${each.name}`),
    );
    expect(new Set(without)).toEqual(unlimited);
  });

  it('stand in no other words: a range between two numbers is data', () => {
    for (const { name, range } of allFunctions()) expect(range, name).not.toMatch(/\d \.\. -?\d/);
  });

  it('are worded as people write them', () => {
    expect(sayLimits({ from: '350 °C', to: '900 °C' })).toBe('350 .. 900 °C');
    expect(sayLimits({ from: '0.75', to: '1.5' })).toBe('0.75 .. 1.5');
    expect(sayLimits({ above: '0 rpm' })).toBe('above 0 rpm');
    expect(sayLimits({ above: '0', to: '1' })).toBe('above 0, up to 1');
    expect(sayLimits({ above: '-180 °CA', below: '180 °CA' })).toBe('above -180 °CA, below 180 °CA');
    expect(sayLimits({ from: '0 kPa', below: '101.325 kPa' })).toBe('0 kPa up to below 101.325 kPa');
    expect(sayLimits({ to: '100 %' })).toBe('at most 100 %');
    expect(sayLimits({ from: '-100 %' })).toBe('at least -100 %');
  });
});

describe('the limits of results', () => {
  const row = (name: string): FunctionRow => functionRow(name) ?? expect.fail(`no function ${name}`);
  const si = (written: string | undefined, otherwise: number): number => {
    const quantity = written === undefined ? undefined : scanQuantity(written, 0)?.quantity;
    return quantity === undefined ? otherwise : toSi(quantity.value, quantity.unit, quantity.kind);
  };

  it.each([
    [
      'calculated_load',
      'calculated_load(101 g/s, 100 g/s, 29.92 inHg, 25 °C)',
      '101 %',
      'wide open throttle',
    ],
    ['injector_duty', 'injector_duty(21 ms, 6000 rpm)', '105 %', 'no longer follows the command'],
    ['lambda_from_gas', 'lambda_from_gas(8 %, 0.2 %, 9.5 %, 2000 ppm)', '1.55', 'direction'],
    ['lambda_from_gas', 'lambda_from_gas(8 %, 9 %, 0 %, 1200 ppm)', '0.7', 'direction'],
    ['lambda_from_composition', 'lambda_from_composition(8 %, 9 %, 0 %, 1200 ppm)', '0.7', 'direction'],
  ])('%s: %s is told to be beyond', (name, expression, got, meaning) => {
    const [said, ...more] = told(row(name), expression);
    expect(more).toEqual([]);
    expect(said).toContain(`\`${name}\` comes to ${got}`);
    expect(said).toContain(`outside its range (${sayLimits(row(name).answers ?? {})})`);
    expect(said).toContain(meaning);
  });

  it('say nothing of a result within', () => {
    expect(told(row('calculated_load'), 'calculated_load(100 g/s, 100 g/s, 29.92 inHg, 25 °C)')).toEqual([]);
    expect(told(row('lambda_from_gas'), 'lambda_from_gas(14 %, 2 %, 0.5 %, 100 ppm)')).toEqual([]);
  });

  it.each([
    ['injector_pressure(10 kPa, 240 kPa, 101 kPa)', 'run backwards'],
    ['exhaust_air(12.3 %, 3 %, 0 %, 80 ppm, 1.00)', 'richer than'],
    ['exhaust_air(1 %, 0 %, 20 %, 0 ppm, 0.01)', 'More than the whole sample'],
    ['nernst_oxygen(-0.2 V, 626.85 °C)', 'more than one atmosphere'],
    ['compression_exponent(101 kPa, 101 kPa, 10)', 'nothing was compressed'],
    ['compression_exponent(101 kPa, 2600 kPa, 10)', 'air without any loss has 1.4'],
    ['intake_duration(-90 °BTDC, -90 °ABDC)', 'not open at all'],
    ['exhaust_duration(300 °BBDC, 240 °ATDC)', 'not open at all'],
  ])('%s has no answer: %s', (expression, why) => {
    const name = /^\w+/.exec(expression)?.[0] ?? '';
    expect(row(name).answers, name).toBeDefined();
    expect(told(row(name), expression).join()).toContain(why);
  });

  it('are all tried, by these examples or as below', () => {
    const have = allFunctions()
      .filter(({ answers }) => answers !== undefined)
      .map(({ name }) => name);
    expect(have.sort()).toEqual([
      ...[
        'absolute',
        'calculated_load',
        'compression_exponent',
        'cranking_speed',
        'exhaust_air',
        'exhaust_duration',
      ],
      ...[
        'injector_duty',
        'injector_pressure',
        'intake_duration',
        'lambda_from_composition',
        'lambda_from_gas',
      ],
      'nernst_oxygen',
    ]);
    // `absolute` is tried in test/expression/pressureZeros, the pace of cranking in test/waveform.
  });

  it('are kept by every formula of numbers, whatever the numbers', () => {
    for (const of of engineFunctions()) {
      const { answers } = of;
      if (answers === undefined || answers.caution !== undefined || of.form !== 'scalar') continue;
      const low = si(answers.from ?? answers.above, Number.NEGATIVE_INFINITY);
      const high = si(answers.to ?? answers.below, Number.POSITIVE_INFINITY);
      for (let seed = 1; seed < 4000; seed++) {
        const args = of.parameters.map(({ takes, within }, at): Plain => {
          if (takes.what === 'text') return 'E10';
          const share = ((seed * 7919 * (at + 3)) % 9973) / 9973;
          const [least, most] = [si(within?.from ?? within?.above, -1), si(within?.to ?? within?.below, 5)];
          return least + share * (Math.max(most, least + 1) - least);
        });
        const answer = of.compute(args);
        if (typeof answer === 'number')
          expect(answer >= low && answer <= high, `${of.name}(${args})`).toBe(true);
      }
    }
  });
});
