import type { ComputedType, FunctionRow } from '../../expression/functionRow.ts';
import type { Type } from '../../expression/type.ts';
import { isCrankMark } from '../../quantity/operand.ts';
import { unitOf } from '../../quantity/unit.ts';
import { ofNumbers } from '../answer.ts';
import { quantity } from '../parameters.ts';
import { camShift, cycleAngle, openFor, teethOff, valveOverlap } from './valveTiming.ts';

const ivo = quantity('ivo', '°CA', 'where the intake valve opens', { kind: 'btdc' });
const ivc = quantity('ivc', '°CA', 'where the intake valve closes', { kind: 'abdc' });
const evo = quantity('evo', '°CA', 'where the exhaust valve opens', { kind: 'bbdc' });
const evc = quantity('evc', '°CA', 'where the exhaust valve closes', { kind: 'atdc' });
const camTeeth = quantity('cam_teeth', '1', 'teeth on the camshaft’s wheel', {
  header: 'engine.cam_drive_teeth',
  within: { from: '8', to: '200' },
});
const heywood =
  'event conventions after Heywood, Internal Combustion Engine Fundamentals, chapter 6 (from memory)';
const closed = 'The valve would not be open at all.';
const noWheel = 'The number of teeth is none that a wheel has.';

/** Valve events as handbooks print them, and the teeth of the cam drive. */
export const valveRows: readonly FunctionRow[] = [
  {
    form: 'scalar',
    name: 'intake_duration',
    family: 'mechanical',
    summary: 'How long the intake valve is open, in crank angle.',
    parameters: [ivo, ivc],
    result: { kind: 'fixed', unit: '°CA', quantityKind: 'difference' },
    formula: 'd = ivo + 180° + ivc',
    where: [['d', 'how long the valve is open', '°CA']],
    answers: { above: '0 °CA', below: '720 °CA' },
    range: 'opening usually 10 to 25 °BTDC, closing 40 to 60 °ABDC',
    errors: [closed],
    source: heywood,
    example: { expression: 'intake_duration(20 °BTDC, 60 °ABDC)', result: '260 °CA' },
    compute: ofNumbers(openFor),
  },
  {
    form: 'scalar',
    name: 'exhaust_duration',
    family: 'mechanical',
    summary: 'How long the exhaust valve is open, in crank angle.',
    parameters: [evo, evc],
    result: { kind: 'fixed', unit: '°CA', quantityKind: 'difference' },
    formula: 'd = evo + 180° + evc',
    where: [['d', 'how long the valve is open', '°CA']],
    answers: { above: '0 °CA', below: '720 °CA' },
    range: 'opening usually 50 to 60 °BBDC, closing 8 to 20 °ATDC',
    errors: [closed],
    source: heywood,
    example: { expression: 'exhaust_duration(60 °BBDC, 20 °ATDC)', result: '260 °CA' },
    compute: ofNumbers(openFor),
  },
  {
    form: 'scalar',
    name: 'valve_overlap',
    family: 'mechanical',
    summary: 'How long intake and exhaust valve are open together, in crank angle. Below 0 neither is.',
    parameters: [ivo, evc],
    result: { kind: 'fixed', unit: '°CA', quantityKind: 'difference' },
    formula: 'overlap = ivo + evc',
    where: [['overlap', 'how long both valves are open', '°CA']],
    range: '',
    errors: ['The result is beyond any number.'],
    source: heywood,
    example: { expression: 'valve_overlap(20 °BTDC, 20 °ATDC)', result: '40 °CA' },
    compute: ofNumbers(valveOverlap),
  },
  {
    form: 'whole',
    name: 'cycle_angle',
    family: 'mechanical',
    fourStroke: true,
    summary:
      'A valve event’s place in the cycle, 0 to 720 degrees from the top dead centre where the cylinder fires.',
    parameters: [
      { name: 'event', takes: { what: 'any' }, meaning: 'a valve event in °BBDC, °BTDC, °ATDC or °ABDC' },
    ],
    result: { kind: 'computed', says: 'a crank angle in °CA', typeOf: ofEvent },
    formula:
      'exhaust opens: 180° − °BBDC\nintake opens: 360° − °BTDC\nexhaust closes: 360° + °ATDC\nintake closes: 540° + °ABDC',
    range: 'valve events; a spark before top dead centre is another thing',
    errors: ['The angle does not say what it is counted from.'],
    source: heywood,
    example: { expression: 'cycle_angle(60 °ABDC)', result: '600 °CA' },
    evaluate: ([event]) => cycleAngle(event),
  },
  {
    form: 'scalar',
    name: 'cam_shift',
    family: 'mechanical',
    fourStroke: true,
    summary: 'What teeth on the camshaft’s wheel are worth in crank angle.',
    parameters: [quantity('teeth', '1', 'teeth that the belt or chain is off'), camTeeth],
    result: { kind: 'fixed', unit: '°CA', quantityKind: 'difference' },
    formula: 'shift = 720° · teeth/cam_teeth',
    where: [['shift', 'how far the events are off, in crank angle', '°CA']],
    range: '',
    errors: [noWheel],
    source: 'arithmetic: the camshaft turns once in two turns of the crank',
    example: { expression: 'cam_shift(1, 40)', result: '18 °CA' },
    compute: ofNumbers(camShift),
  },
  {
    form: 'scalar',
    name: 'teeth_off',
    family: 'mechanical',
    fourStroke: true,
    summary:
      'How many teeth of the camshaft’s wheel a shift of crank angle is worth. A whole number points to a slipped belt.',
    parameters: [
      quantity('shift', '°CA', 'how far the events are off, in crank angle', { kind: 'difference' }),
      camTeeth,
    ],
    result: { kind: 'fixed', unit: '1' },
    formula: 'teeth = shift · cam_teeth/720°',
    where: [['teeth', 'teeth that the belt or chain is off', '']],
    range: '',
    errors: [noWheel],
    source: 'arithmetic: the camshaft turns once in two turns of the crank',
    example: { expression: 'teeth_off(34 °CA, 42)', result: '1.983' },
    compute: ofNumbers(teethOff),
  },
];

/** One event that says what it is counted from. */
function ofEvent([event]: readonly (Type | undefined)[]): ComputedType {
  const unit = unitOf('°CA');
  const takes = 'one valve event that says what it is counted from (`20 °BTDC`, `60 °ABDC`)';
  if (unit === undefined || event?.kind !== 'one' || !isCrankMark(event.quantity.kind))
    return { wrong: 0, takes };
  return { type: { kind: 'one', quantity: { dimension: unit.dimension, kind: 'difference', unit } } };
}
