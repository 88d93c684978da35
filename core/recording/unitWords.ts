import { parseQuantity } from '../quantity/parse.ts';

/** How tools spell units in headings, where the language of cases spells them otherwise. */
const spelt: ReadonlyMap<string, string> = new Map([
  ['rpm', 'rpm'],
  ['tr/min', 'rpm'],
  ['tr/mn', 'rpm'],
  ['giri/min', 'rpm'],
  ['omw/min', 'rpm'],
  ['kpa', 'kPa'],
  ['hpa', 'hPa'],
  ['psi', 'psi'],
  ['bar', 'bar'],
  ['mbar', 'mbar'],
  ['hz', 'Hz'],
  ['khz', 'kHz'],
  ['km/h', 'km/h'],
  ['kph', 'km/h'],
  ['mph', 'mph'],
  ['1/min', 'rpm'],
  ['min-1', 'rpm'],
  ['min^-1', 'rpm'],
  ['u/min', 'rpm'],
  ['r/min', 'rpm'],
  ['rev/min', 'rpm'],
  ['deg c', '°C'],
  ['deg. c', '°C'],
  ['celsius', '°C'],
  ['℃', '°C'],
  ['deg f', '°F'],
  ['deg. f', '°F'],
  ['fahrenheit', '°F'],
  ['℉', '°F'],
  ['sec', 's'],
  ['sec.', 's'],
  ['secs', 's'],
  ['second', 's'],
  ['seconds', 's'],
  ['msec', 'ms'],
  ['milliseconds', 'ms'],
  ['usec', 'µs'],
  ['microseconds', 'µs'],
  ['minutes', 'min'],
  ['volt', 'V'],
  ['volts', 'V'],
  ['amp', 'A'],
  ['amps', 'A'],
  ['ampere', 'A'],
  ['percent', '%'],
  ['pct', '%'],
  ['g/sec', 'g/s'],
  ['gm/s', 'g/s'],
  ['gram/s', 'g/s'],
  ['lb/minute', 'lb/min'],
  ['mi/h', 'mph'],
  ['inhg', 'inHg'],
  ['in. hg', 'inHg'],
  ['in hg', 'inHg'],
  ['deg', '°'],
  ['degrees', '°'],
]);

/** A unit as cases spell it, from how a tool does: bare or in brackets; undefined for anything else. */
export function unitIn(field: string): string | undefined {
  const bare = field.replace(/^[[(]\s*(.*?)\s*[\])]$/, '$1').trim();
  const unit = spelt.get(bare.toLowerCase()) ?? bare;
  if (!/^[^\d\s]/.test(unit)) return undefined;
  return parseQuantity(`1 ${unit}`).value === undefined ? undefined : unit;
}

/**
 * The unit that a heading gives: in brackets at its end, `MAP (kPa)`, `O2 B1S1 [V]`; as quantity over unit, `t / s`
 * (ISO 80000-1, 7.1.3; from memory), or `t in s`; or as the whole of it, `rpm`.
 */
export function unitOfHeading(heading: string): string | undefined {
  const inside = /[([]([^()[\]]+)[)\]]\s*$/.exec(heading)?.[1];
  if (inside !== undefined) return unitIn(inside);
  const behind = unitBehind.exec(heading)?.[1];
  if (behind !== undefined) return unitIn(behind);
  // A single letter is a name: channel A is no ampere.
  return heading.length > 1 ? unitIn(heading) : undefined;
}

const unitBehind = /(?<=\S)\s+(?:\/|in|:)\s+(\S+)\s*$/;

/** A heading without its unit, and without anything in brackets at its end. */
export function withoutUnit(heading: string): string {
  const bare = heading.replace(/\s*[([][^()[\]]*[)\]]\s*$/, '');
  const behind = unitBehind.exec(bare);
  return behind === null || unitIn(behind[1] ?? '') === undefined ? bare : bare.slice(0, behind.index);
}
