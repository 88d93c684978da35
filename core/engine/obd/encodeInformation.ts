import { inUseCounters } from './inUseCounters.ts';
import { informationTexts } from './vehicleInformation.ts';

/*
 * Numbers and names of a vehicle the other way round, for tests and demonstrations: service 09 as a CAN network carries
 * it, and as several messages before CAN.
 */

/**
 * `49 kind count`, then each text filled up with zeros: a vehicle identification number (02), calibrations (04), the name
 * of a controller (0A). Undefined for another kind, a text too long, or one that is not printable ASCII.
 */
export function encodeTexts(kind: number, texts: readonly string[]): readonly number[] | undefined {
  const row = informationTexts[kind];
  if (row === undefined || texts.length > 0xff) return undefined;
  if (texts.some((text) => text.length > row.length || !/^[ -~]*$/.test(text))) return undefined;
  const filled = texts.flatMap((text) => [
    ...Array.from(text, (each) => each.charCodeAt(0)),
    ...new Array<number>(row.length - text.length).fill(0),
  ]);
  return [0x49, kind, texts.length, ...filled];
}

/** `49 06 count`, then four bytes a checksum, each given as eight hexadecimal digits. Undefined for anything else. */
export function encodeChecksums(checksums: readonly string[]): readonly number[] | undefined {
  if (checksums.length > 0xff || checksums.some((each) => !/^[0-9A-F]{8}$/i.test(each))) return undefined;
  const bytes = checksums.flatMap((each) => each.match(/../g)?.map((two) => Number.parseInt(two, 16)) ?? []);
  return [0x49, 0x06, checksums.length, ...bytes];
}

/**
 * `49 08 count` or `49 0B count`, then two bytes a counter in the standard's order. Undefined for another kind, for more
 * counters than it has, or one that two bytes do not carry.
 */
export function encodeInUseCounters(
  kind: number,
  counters: readonly number[],
): readonly number[] | undefined {
  const names = inUseCounters.get(kind);
  if (names === undefined || counters.length > names.length) return undefined;
  if (counters.some((each) => !Number.isInteger(each) || each < 0 || each > 0xffff)) return undefined;
  return [0x49, kind, counters.length, ...counters.flatMap((each) => [each >> 8, each & 0xff])];
}

/** The same as networks before CAN carry it: messages of four bytes, numbered from 1, filled up with zeros in front. */
export function splitBeforeCan([
  service = 0,
  kind = 0,
  ,
  ...data
]: readonly number[]): readonly (readonly number[])[] {
  const lacking = (4 - (data.length % 4)) % 4;
  const filled = [...new Array<number>(lacking).fill(0), ...data];
  const messages: (readonly number[])[] = [];
  for (let at = 0; at < filled.length; at += 4)
    messages.push([service, kind, at / 4 + 1, ...filled.slice(at, at + 4)]);
  return messages;
}
