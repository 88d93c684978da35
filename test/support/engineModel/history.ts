import type { Chance } from './chance.ts';
import type { OneFault } from './faults.ts';

/** What a car's odometer shows at two visits, and what its controllers have counted since codes were cleared. */
export interface History {
  readonly unit: 'km' | 'mi';
  /** In whole ones of the unit: as it was written down at the first visit, and as it was read after the repair. */
  readonly odometer: { readonly noted: number; readonly exact: number; readonly after: number };
  readonly sinceClear: Counted;
  readonly withLamp: Pick<Counted, 'distance' | 'time'>;
}

/** km and minutes. */
interface Counted {
  readonly distance: number;
  readonly time: number;
  readonly warmUps: number;
}

const kilometres = { km: 1, mi: 1.609344 } as const;

/** The ends of two bytes and of one (SAE J1979 $21, $30, $31, $4D and $4E). */
const mostOfTwo = 65535;
const mostOfOne = 255;

export function drawHistory(fault: OneFault | undefined, chance: Chance): History {
  const size = fault?.size ?? 0;
  const isShort = fault?.name === 'odometer below the distance since the codes were cleared';
  const uncounted = fault?.name === 'no warm-up counted';
  const isTimed = fault?.name === 'time with the lamp on above that since the codes were cleared';
  const ordinary = isTimed || chance.happens(0.85) ? chance.between(0, 4000) : chance.between(4000, 60000);
  const distance = Math.round(uncounted ? size : isShort ? size + chance.between(1000, 40000) : ordinary);
  const time = Math.round((60 * distance) / chance.between(18, 75));
  const [share, shareOfTime] = [chance.between(0, 1), chance.between(0, 1)];
  const most = (value: number): number => Math.min(mostOfTwo, value);
  return {
    ...drawOdometer(
      distance + chance.between(3000, 250000),
      isShort ? distance - size : undefined,
      fault,
      chance,
    ),
    sinceClear: {
      distance,
      time: most(time),
      warmUps: uncounted ? 0 : Math.min(mostOfOne, Math.ceil(distance / chance.between(8, 60))),
    },
    withLamp: {
      distance: most(
        fault?.name === 'distance with the lamp on above that since the codes were cleared'
          ? distance + size
          : Math.round(distance * share),
      ),
      time: most(isTimed ? time + size : Math.round(time * shareOfTime)),
    },
  };
}

/** Many write the odometer down in round figures; `short` is one that was misread, km. */
function drawOdometer(
  driven: number,
  short: number | undefined,
  fault: OneFault | undefined,
  chance: Chance,
): Pick<History, 'unit' | 'odometer'> {
  const unit = chance.oneOf<'km' | 'mi'>(['km', 'km', 'mi']);
  const between = Math.round(chance.between(0, 60) / kilometres[unit]);
  const place = fault?.name === 'two digits of the odometer swapped after the repair' ? fault.size : 0;
  const [tens, ones] = [Math.ceil(chance.between(0.01, 9)), chance.between(0, 1)];
  const round = chance.oneOf([1, 1, 100, 1000]);
  const plain = Math.round((short ?? driven) / kilometres[unit]);
  // The upper of the two digits is the greater one: a swap that adds to the odometer looks like a long way home.
  const lower = Math.floor(ones * tens);
  const after = place === 0 ? plain + between : withDigits(plain + between, tens, lower, place);
  const exact = after - between;
  return {
    unit,
    odometer: {
      noted: round * Math.round(exact / round),
      exact,
      after: place === 0 ? after : withDigits(after, lower, tens, place),
    },
  };
}

/** The number with these two digits at a place and the one above it. */
function withDigits(number: number, upper: number, lower: number, place: number): number {
  const above = 100 * place * Math.floor(number / (100 * place));
  return above + place * (10 * upper + lower) + (number % place);
}
