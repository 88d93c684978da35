import { describe, expect, it } from 'vitest';
import { message } from '../../core/diagnostics/words.ts';
import type { FunctionRow } from '../../core/expression/functionRow.ts';
import { sayType } from '../../core/expression/sayType.ts';
import { applyEdits } from '../../core/text/edits.ts';
import { frames, result, type Setting } from '../support/expressionResult.ts';
import { byMember, curve, notTaken, range, reading, samples, words } from '../support/expressionScope.ts';

/** Air an engine takes in one stroke of one cylinder: maf / (rpm / 2) / cylinders, as a row with a header value. */
const airPerStroke: FunctionRow = {
  form: 'scalar',
  name: 'air_per_stroke',
  family: 'air',
  summary: 'Air per stroke.',
  parameters: [
    { name: 'maf', takes: { what: 'quantity', unit: 'g/s' }, meaning: 'air mass flow' },
    { name: 'rpm', takes: { what: 'quantity', unit: 'rpm' }, meaning: 'engine speed' },
    {
      name: 'cylinders',
      takes: { what: 'quantity', unit: '1' },
      meaning: 'cylinders',
      header: 'engine.cylinders',
    },
  ],
  result: { kind: 'fixed', unit: 'g' },
  formula: '2·maf / (rpm·cylinders)',
  range: '',
  errors: [],
  source: 'arithmetic',
  example: { expression: 'air_per_stroke(4 g/s, 800 rpm)', result: '0.15 g' },
  compute: ([maf, rpm, cylinders]) => (2 * Number(maf)) / (Number(rpm) * Number(cylinders)),
};

const names: Setting['names'] = {
  map: reading('13.1 inHg absolute', 'map', 'manifold'),
  'koeo.map': reading('29.6 inHg absolute', 'koeo', 'barometer'),
  vacuum: reading('16.4 inHg vacuum'),
  fuel_pressure: reading('45 psi gauge'),
  other_gauge: reading('40 psi gauge'),
  ect: reading('195 °F'),
  iat: reading('68 °F'),
  trim: reading('8 %'),
  lambda: reading('1.02'),
  rpm: reading('780 rpm'),
  maf: reading('4 g/s'),
  battery: reading('12.6 V'),
  compression: byMember('cylinder', { 1: '181 psi gauge', 2: '178 psi gauge' }),
  drops: byMember('label', { 'post to stud': '0.35 V' }),
  'before.map': byMember('state', { idle: '13.1 inHg absolute', fast: '9.8 inHg absolute' }),
  'log.o2': samples('log', 'V', [0, 1], [0.1, 0.8]),
  'log.rpm': samples('log', 'rpm', [0, 1], [800, 2400]),
  'scope.o2': samples('scope', 'V', [0, 1], [0.1, 0.8]),
  'spec.vacuum': range('17 inHg vacuum', '21 inHg vacuum'),
  'spec.maf': curve([
    ['0.4 V', '2 g/s'],
    ['1.1 V', '9 g/s'],
  ]),
  open: reading('5 psi'),
  loop: words('closed'),
};

const setting: Setting = { names, header: { 'engine.cylinders': reading('4') }, functions: [airPerStroke] };
const typed = (text: string): string => {
  const { type, diagnostics } = result(text, setting);
  expect(diagnostics.map(message)).toEqual([]);
  return 'quantity' in type ? `${sayType(type)} in ${type.quantity.unit.symbol}` : sayType(type);
};

describe('the type of an expression is known before it runs', () => {
  it.each([
    ['koeo.map - map', 'pressure difference in inHg'],
    ['map + vacuum', 'absolute pressure in inHg'],
    ['koeo.map + fuel_pressure', 'absolute pressure in inHg'],
    ['koeo.map - vacuum', 'absolute pressure in inHg'],
    ['fuel_pressure - other_gauge', 'pressure difference in psi'],
    ['fuel_pressure + 5 psi', 'gauge pressure in psi'],
    ['ect - iat', 'temperature difference in °F'],
    ['ect - 10 °F', 'temperature in °F'],
    ['2 * fuel_pressure', 'gauge pressure in psi'],
    ['fuel_pressure / other_gauge', 'a plain number in 1'],
    ['kelvin(ect) / kelvin(iat)', 'a plain number in 1'],
    ['maf / rpm', 'kg·turn^-1 in g/s/rpm'],
    ['trim + 2 %', 'a percentage in %'],
    ['1 + trim', 'a percentage in %'],
    ['(battery / 2) ^ 2', 'm^4·kg^2·s^-6·A^-2 in V²'],
    ['compression[2]', 'gauge pressure in psi'],
    ['compression[lowest(compression)]', 'gauge pressure in psi'],
    ['compression / max(compression)', 'a plain number by cylinder in 1'],
    ['before.map.idle', 'absolute pressure in inHg'],
    ['before.map["fast"]', 'absolute pressure in inHg'],
    ['drops["post to stud"]', 'voltage in V'],
    ['lowest(drops)', 'a word or text'],
    ['log.o2 from 0 s to 1 s', 'samples of voltage in V'],
    ['log.o2 where (log.rpm > 2000 rpm)', 'samples of voltage in V'],
    ['rate(log.o2)', 'samples of m^2·kg·s^-4·A^-1 in V/s'],
    ['at(log.o2, 1 s)', 'voltage in V'],
    ['mean(ect, iat)', 'temperature in °F'],
    ['spread(ect, iat)', 'temperature difference in °F'],
    ['min(fuel_pressure, 50 psi)', 'gauge pressure in psi'],
    ['absolute(fuel_pressure)', 'absolute pressure in psi'],
    ['vacuum(before.map)', 'vacuum by state in inHg'],
    ['air_per_stroke(maf, rpm)', 'mass in g'],
    ['air_per_stroke(rpm = rpm, maf = maf)', 'mass in g'],
    ['if trim > 5 % then fuel_pressure else 40 psi', 'gauge pressure in psi'],
    ['vacuum in spec.vacuum', 'a statement that holds or fails'],
    ['loop is "closed" and not trim > 10 %', 'a statement that holds or fails'],
    ['sqrt(9 m^2)', 'length in m'],
  ])('%s: %s', (text, expected) => {
    expect(typed(text)).toBe(expected);
  });
});

describe('a literal without a qualifier takes the kind of its place', () => {
  it.each([
    'map < 14 inHg',
    'fuel_pressure between 40 psi and 50 psi',
    'fuel_pressure in 40 .. 50 psi',
    'ect - iat < 10 °F',
    '10 °F > ect - iat',
    'ect within 5 °F of 195 °F',
    'map within 0.5 inHg of 13 inHg',
    'map + vacuum within 0.5 inHg of koeo.map',
    'fuel_pressure within 2 % of 45 psi',
    'trim within 2 % of 8 %',
    'max(45 psi, fuel_pressure) > 40 psi',
    'open < fuel_pressure',
    'map + open < 20 inHg',
    'trim > 0 and lambda < 1.05',
  ])('%s', (text) => {
    const { diagnostics, type } = result(text, setting);
    expect(frames(text, diagnostics)).toEqual([]);
    expect(type.kind).toBe('truth');
  });
});

describe('what does not go together is told at its place', () => {
  const only = (text: string): { readonly frame: string; readonly repaired: readonly string[] } => {
    const { diagnostics, type } = result(text, setting);
    expect(diagnostics).toHaveLength(1);
    if (diagnostics[0]?.severity === 'error') expect(type.kind).toBe('unknown');
    const repaired = (diagnostics[0]?.fixes ?? []).map((fix) => applyEdits(text, fix.edits));
    for (const each of repaired) {
      expect(result(each, { ...setting, barometer: reading('29.9 inHg absolute') }).diagnostics).toEqual([]);
    }
    return { frame: frames(text, diagnostics)[0]?.split('\n')[1] ?? '', repaired };
  };

  it.each([
    ['map + battery', '^^^^^^^^^^^^^ dimensions-differ', []],
    ['map + koeo.map', '^^^^^^^^^^^^^^ kinds-in-sum', []],
    ['map < vacuum', '^^^^^^^^^^^^ kinds-compared', ['map < absolute(vacuum)', 'vacuum(map) < vacuum']],
    ['map < battery', '^^^^^^^^^^^^^ dimensions-differ', []],
    [
      'min(map, vacuum)',
      '    ^^^^^^^^^^^ kinds-compared',
      ['min(map, absolute(vacuum))', 'min(vacuum(map), vacuum)'],
    ],
    [
      'fuel_pressure / map',
      '^^^^^^^^^^^^^^^^^^^ kinds-in-quotient',
      ['fuel_pressure / gauge(map)', 'absolute(fuel_pressure) / map'],
    ],
    ['ect * 2', '^^^^^^^ temperature-point-product', ['kelvin(ect) * 2']],
    ['trim < 10', '^^^^^^^^^ percent-beside-number', ['trim < 10 %']],
    ['trim + 10', '^^^^^^^^^ percent-beside-number', ['trim + 10 %']],
    ['trim within 2 of 8 %', '            ^^^^^^^^ percent-beside-number', ['trim within 2 % of 8 %']],
    ['battery ^ trim', '          ^^^^ wrong-exponent', []],
    ['battery ^ 2 ± 0.1', '          ^^^^^^^ wrong-exponent', []],
    ['not battery', '    ^^^^^^^ wrong-operand', []],
    ['battery and true', '^^^^^^^ wrong-operand', []],
    ['loop + 1', '^^^^ wrong-operand', []],
    ['loop is closed', '        ^^^^^^ quote-word', ['loop is "closed"']],
    ['lowest(compression) is 2', '                       ^ wrong-operand', ['lowest(compression) is "2"']],
    ['battery is 12.6 V', '^^^^^^^ wrong-operand', []],
    ['compression / drops', '^^^^^^^^^^^^^^^^^^^ unlike-shapes', []],
    ['log.o2 - scope.o2', '^^^^^^^^^^^^^^^^^ unlike-captures', []],
    ['log.o2 where (scope.o2 > 0.4 V)', '^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ unlike-captures', []],
    ['battery from 0 s to 1 s', '^^^^^^^ wrong-operand', []],
    ['log.o2 from 0 V to 1 s', '            ^^^ wrong-operand', []],
    ['battery[1]', '^^^^^^^ wrong-operand', []],
    ['compression["one"].x', '                   ^ unknown-member', []],
    ['battery in 3 V', '           ^^^ wrong-operand', []],
    ['absolute(5 psi)', '         ^^^^^ wrong-argument', []],
    ['absolute(battery)', '         ^^^^^^^ wrong-argument', []],
    ['lowest(battery)', '       ^^^^^^^ wrong-argument', []],
    ['sqrt(battery)', '     ^^^^^^^ wrong-argument', []],
    ['abs(ect)', '    ^^^ wrong-argument', []],
    ['avg(compression)', '^^^ unknown-function', []],
    ['mni(compression)', '^^^ unknown-function', ['min(compression)']],
    ['air_per_stroke(rpm, maf)', '               ^^^ wrong-argument', []],
    ['air_per_stroke(maf)', '^^^^^^^^^^^^^^ missing-argument', []],
    ['air_per_stroke(maf, rpm, 4, 5)', '                            ^ too-many-arguments', []],
    [
      'air_per_stroke(maf, rmp = rpm)',
      '                    ^^^ unknown-parameter',
      ['air_per_stroke(maf, rpm = rpm)'],
    ],
    ['air_per_stroke(maf, rpm, maf = maf)', '                         ^^^ argument-twice', []],
    ['air_per_stroke(maf = maf, rpm)', '                          ^^^ argument-order', []],
    ['if trim > 5 % then battery else rpm', '                   ^^^^^^^^^^^^^^^^ dimensions-differ', []],
    ['if trim > 5 % then battery else "low"', '                                ^^^^^ wrong-operand', []],
    ['fuel_pressure + map', '^^^^^^^^^^^^^^^^^^^ kinds-in-sum-unusual', []],
    ['bttery > 12 V', '^^^^^^ unknown-name', []],
  ] as const)('%s', (text, frame, fixes) => {
    const found = only(text);
    expect(found.frame.slice(0, frame.length + 1).replace(/:$/, '')).toBe(frame);
    expect(found.repaired).toEqual(fixes);
  });

  it('a wrong argument names the parameter, what it takes and what it got', () => {
    expect(only('air_per_stroke(rpm, maf)').frame).toBe(
      '               ^^^ wrong-argument: `air_per_stroke` takes mass flow (such as `g/s`) as `maf` (air mass flow), and got `rpm` (rotational speed).',
    );
    expect(only('kelvin(battery)').frame).toBe(
      '       ^^^^^^^ wrong-argument: `kelvin` takes temperature (such as `°C`) as `t` (a temperature on a scale), and got `battery` (voltage).',
    );
  });

  it('a header value that is missing is a warning, and the value says what it lacks', () => {
    const { diagnostics, type, value } = result('air_per_stroke(maf, rpm)', { ...setting, header: {} });
    expect(diagnostics.map((each) => `${each.severity} ${message(each)}`)).toEqual([
      'warning `air_per_stroke` needs `engine.cylinders`, and the case header does not give it. Write it there, or give it here: `cylinders = …`.',
    ]);
    expect(type.kind).toBe('one');
    expect(value).toMatchObject({ kind: 'absent', why: 'the header has no `engine.cylinders`' });
  });

  it('an error makes no noise behind it', () => {
    const { diagnostics } = result('(bttery + 1 V) * rpm < battery and min(bttery) in 3 V .. 4 V', setting);
    expect(diagnostics.map((each) => each.code)).toEqual(['unknown-name', 'unknown-name']);
  });

  it('a value that was not measured has its type', () => {
    const { diagnostics } = result('oil > 3 V', { names: { oil: notTaken('50 psi gauge') } });
    expect(diagnostics.map((each) => each.code)).toEqual(['dimensions-differ']);
  });
});
