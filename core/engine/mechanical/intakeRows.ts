import type { ComputedType, FunctionRow } from '../../expression/functionRow.ts';
import type { Type } from '../../expression/type.ts';
import { pressure } from '../../quantity/dimension.ts';
import { typeIn } from '../../waveform/arguments.ts';
import { quantity, text } from '../parameters.ts';
import { intakeBalance } from './intakeBalance.ts';

/** What the manifold's pressure tells, one pull for each intake stroke. */
export const intakeRows: readonly FunctionRow[] = [
  {
    form: 'whole',
    name: 'intake_balance',
    family: 'mechanical',
    fourStroke: true,
    summary:
      'How much each cylinder draws from the manifold, against the mean of all, from a fast pressure or vacuum capture.',
    parameters: [
      { name: 'manifold', takes: { what: 'series' }, meaning: 'manifold pressure or vacuum over time' },
      {
        name: 'sync',
        takes: { what: 'series' },
        meaning:
          'a channel that marks one cylinder’s compression once in two turns; without it pulls are not given to cylinders',
        optional: true,
      },
      text('firing_order', 'firing order', { header: 'engine.firing_order' }),
      quantity('cylinder', '1', 'the cylinder that the sync channel marks; the first of the order', {
        optional: true,
      }),
    ],
    result: {
      kind: 'computed',
      says: 'a percentage a cylinder; a hump where there is no sync',
      typeOf: pulls,
    },
    formula:
      'vacuum = Σ D·S(θ) behind the lag with which the manifold fills, D by least squares\nresult = D/mean of all D',
    where: [
      ['vacuum', 'vacuum in the manifold over the crank angle', ''],
      ['D', 'what each cylinder draws', ''],
      ['S', 'one intake stroke at a crank angle', ''],
      ['θ', 'crank angle', '°CA'],
      ['result', 'share of the mean', '%'],
    ],
    range:
      '± from cycle to cycle (95 %); steady speed of 90 to 1500 rpm; the sync marks the compression of its cylinder',
    errors: [
      'Nothing that repeats is found, or not two whole engine cycles.',
      'The firing order does not name every cylinder once.',
      'The sync channel marks every turn, now one hump and now another, or none.',
    ],
    source:
      'common practice; filling and emptying of a manifold after Heywood, Internal Combustion Engine Fundamentals, chapter 7; JCGM 100:2008, 4.2',
    example: { expression: 'lowest(intake_balance(idle.map, idle.sync))', result: '3' },
    evaluate: intakeBalance,
  },
];

function pulls([x, marks]: readonly (Type | undefined)[]): ComputedType {
  if (x?.kind !== 'series' || x.quantity.dimension !== pressure)
    return { wrong: 0, takes: 'samples of manifold pressure or vacuum' };
  if (marks !== undefined && (marks.kind !== 'series' || marks.capture !== x.capture))
    return { wrong: 1, takes: 'samples of the same capture' };
  return {
    type: { kind: 'members', by: marks === undefined ? 'label' : 'cylinder', quantity: typeIn('%') },
  };
}
