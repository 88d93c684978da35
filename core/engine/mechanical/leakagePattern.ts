import type { Saying } from '../../expression/functionRow.ts';
import { nearest } from '../../text/nearest.ts';
import { noAnswer } from '../answer.ts';
import type { Wording } from '../inWords.ts';
import { sayPercent } from '../sayValue.ts';

/** Leakage up to this share is taken as sound; it depends on the tester's orifice and line pressure (common practice). */
const sound = 0.2;

export const leakageSayings: readonly Saying[] = [
  {
    words: 'within the usual',
    meaning:
      'up to 20 %, past rings or valves: what many sound engines show. A valve that is clearly heard may still be at its beginning.',
  },
  {
    words: 'exhaust valve',
    meaning:
      'air at the tailpipe: an exhaust valve that does not seat, or the piston is not at top dead centre of compression.',
  },
  {
    words: 'intake valve',
    meaning:
      'air at the throttle or intake: an intake valve that does not seat, or the piston is not at top dead centre of compression.',
  },
  { words: 'rings or piston', meaning: 'air at the oil filler or dipstick: rings, bore or piston.' },
  {
    words: 'head gasket or crack',
    meaning:
      'bubbles in the coolant, however few: head gasket, head or bore. Let the engine cool before the cap comes off.',
  },
  {
    words: 'gasket between cylinders',
    meaning: 'air at the neighbour’s plug hole, however little: the gasket between the two.',
  },
];

/** Where a sound engine lets nothing out at all, whatever the tester shows (common practice). */
const never: ReadonlySet<string> = new Set(['head gasket or crack', 'gasket between cylinders']);

/** Where the air may come out, as a technician writes it; the words of `leakdown_from` are among them. */
const places: readonly (readonly [string, readonly string[]])[] = [
  ['exhaust valve', ['tailpipe', 'exhaust']],
  ['intake valve', ['throttle', 'intake', 'air filter', 'carburettor']],
  ['rings or piston', ['oil filler', 'dipstick', 'crankcase', 'breather']],
  ['head gasket or crack', ['radiator', 'coolant', 'cooling system', 'expansion tank']],
  ['gasket between cylinders', ['neighbour', 'neighbouring cylinder', 'next cylinder', 'plug hole']],
];

/**
 * What leaks, by where the air of a leak-down test comes out (common practice), in one of the words of `leakageSayings`.
 * Leakage as a share (0.35 is 35 %), the piston at top dead centre of its compression.
 */
export function leakagePattern(leakage: number, place: string): Wording {
  if (!(leakage >= 0 && leakage <= 1))
    return noAnswer(`A leakage of ${sayPercent(leakage)} does not exist; it runs from 0 to 100 %.`);
  const heard = place.trim().toLowerCase();
  const found = places.find(([, names]) => names.includes(heard));
  if (found === undefined) {
    const known = places.flatMap(([, names]) => names);
    const near = nearest(heard, known);
    const offer = near.length === 0 ? '' : ` Did you mean ${near.join(' or ')}?`;
    return noAnswer(`The place "${place}" is not known.${offer} Known are ${known.join(', ')}.`);
  }
  const [leaks] = found;
  return leakage <= sound && !never.has(leaks) ? 'within the usual' : leaks;
}
