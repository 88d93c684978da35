import type { Type } from '../expression/type.ts';
import type { Absent, Series, Value } from '../expression/value.ts';
import type { Amount, QuantityType, Spread } from '../quantity/types.ts';
import type { Span } from '../text/span.ts';
import type { Reading, TakenAt } from './types.ts';

/**
 * Readings of a cell that was read again, with the very values of before where they are the same,
 * so that what is computed from them is known to be unchanged. One of which nothing changed is the very same as before;
 * `writtenTheSame` tells whether the text says the same at its place.
 */
export function keepValues(
  readings: readonly Reading[],
  before: (fullName: string, index: number) => Reading | undefined,
  writtenTheSame: (place: Span) => boolean = () => false,
): readonly Reading[] {
  return readings.map((reading, index) => {
    const known = before(reading.fullName, index);
    if (known === undefined || !sameValue(known.value, reading.value)) return reading;
    if (sameBeside(known, reading) && writtenTheSame(reading.valueSpan)) return known;
    return { ...reading, value: known.value };
  });
}

/** Whether two readings of the same value are the same in all else. */
function sameBeside(a: Reading, b: Reading): boolean {
  return (
    a.fullName === b.fullName &&
    a.key === b.key &&
    a.from === b.from &&
    a.cell === b.cell &&
    a.when === b.when &&
    a.column === b.column &&
    a.signal === b.signal &&
    a.form === b.form &&
    a.tool === b.tool &&
    a.at === b.at &&
    a.saw === b.saw &&
    a.bytes === b.bytes &&
    sameSpan(a.keySpan, b.keySpan) &&
    sameSpan(a.valueSpan, b.valueSpan) &&
    sameState(a.state, b.state) &&
    sameOne(a.type, b.type)
  );
}

const sameSpan = (a: Span, b: Span): boolean => a.start === b.start && a.end === b.end;

export function sameState(a: TakenAt | undefined, b: TakenAt | undefined): boolean {
  if (a === undefined || b === undefined) return a === b;
  if (a.name !== b.name || a.known !== b.known || a.more.size !== b.more.size) return false;
  for (const [key, word] of a.more) if (b.more.get(key) !== word) return false;
  return true;
}

/** Types of single quantities; of all others it is not asked. */
function sameOne(a: Type, b: Type): boolean {
  return a === b || (a.kind === 'one' && b.kind === 'one' && sameType(a.quantity, b.quantity));
}

function sameValue(a: Value, b: Value): boolean {
  if (a.kind === 'one' && b.kind === 'one') return sameType(a.type, b.type) && sameAmount(a.amount, b.amount);
  if (a.kind === 'words' && b.kind === 'words') return a.text === b.text;
  if (a.kind === 'absent' && b.kind === 'absent') return sameAbsent(a, b);
  if (a.kind === 'series' && b.kind === 'series') return sameSeries(a, b);
  if (a.kind !== 'members' || b.kind !== 'members') return false;
  if (a.by !== b.by || !sameType(a.type, b.type) || a.members.size !== b.members.size) return false;
  const others = [...b.members];
  return [...a.members].every(([name, member], i) => {
    const [otherName, other] = others[i] ?? [];
    return name === otherName && other !== undefined && sameMember(member, other);
  });
}

/** A file that was read before gives the very same arrays; samples that stand in the case are not compared. */
function sameSeries(a: Series, b: Series): boolean {
  return (
    a.samples === b.samples &&
    a.time === b.time &&
    a.capture === b.capture &&
    sameType(a.type, b.type) &&
    a.spread.length === b.spread.length &&
    a.spread.every(({ source, by }, i) => source === b.spread[i]?.source && by === b.spread[i]?.by)
  );
}

function sameMember(a: Amount | Absent, b: Amount | Absent): boolean {
  if ('si' in a) return 'si' in b && sameAmount(a, b);
  return !('si' in b) && sameAbsent(a, b);
}

const sameAbsent = (a: Absent, b: Absent): boolean => a.status === b.status && a.why === b.why;

const sameType = (a: QuantityType, b: QuantityType): boolean => a.unit === b.unit && a.kind === b.kind;

/** The same number from the same sources. */
export function sameAmount(a: Amount, b: Amount): boolean {
  return Object.is(a.si, b.si) && sameSpread(a.spread, b.spread);
}

function sameSpread(a: Spread, b: Spread): boolean {
  return a.length === b.length && a.every((each, i) => each.source === b[i]?.source && each.by === b[i]?.by);
}
