import type { CodeStatus, GivenCode } from './answer.ts';
import type { Message } from './isoTp.ts';
import { type Problems, tell } from './problems.ts';
import { spanOnTape, type Tape } from './tape.ts';
import { codeOfBytes } from './troubleCode.ts';

/** What the codes of a service are: stored (03), pending (07), permanent (0A). */
export function statusOf(service: number): CodeStatus | undefined {
  return service === 3 ? 'stored' : service === 7 ? 'pending' : service === 10 ? 'permanent' : undefined;
}

/**
 * The codes of an answer. On CAN networks a number stands before them and the message has an even length; before CAN
 * there are always three codes of two bytes, 00 00 for none.
 */
export function codeAnswer(
  tape: Tape,
  { id, from, to }: Message,
  status: CodeStatus,
  problems: Problems,
): readonly GivenCode[] {
  const counted = (to - from) % 2 === 0;
  const start = counted ? from + 2 : from + 1;
  const codes: GivenCode[] = [];
  for (let at = start; at + 1 < to; at += 2) {
    const [high = 0, low = 0] = tape.bytes.subarray(at, at + 2);
    if (high === 0 && low === 0) continue;
    codes.push({ id, code: codeOfBytes(high, low), status, from: at, to: at + 2 });
  }
  const says = tape.bytes[from + 1] ?? 0;
  if (counted && says !== codes.length)
    tell(problems, 'obd-code-count', spanOnTape(tape, from + 1, from + 2), { says, has: codes.length });
  return codes;
}

/** An answer of service 03, 07 or 0A as a CAN network carries it: the other direction, of codes as pairs of bytes. */
export function encodeCodes(
  status: CodeStatus,
  codes: readonly (readonly [number, number])[],
): readonly number[] {
  const service = status === 'stored' ? 0x43 : status === 'pending' ? 0x47 : 0x4a;
  return [service, codes.length, ...codes.flat()];
}
