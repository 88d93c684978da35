import type { Form } from '../types.ts';

type Usual = NonNullable<Form['usual']>[number];

/** What is usual at a state: a rule of the trade unless a source is named. */
export function usually(state: string, range: string, source: string = practice): Usual {
  return { state, range, source };
}

/** Rules of the trade that no standard holds, and what they are true of. */
export const practice = 'common practice';
export const throttled = 'common practice, petrol engine with a throttle';
export const seaLevel = 'common practice, petrol engine near sea level';
export const portInjected = 'common practice, port injection';
export const petrolEngine = 'common practice, petrol engine';
export const dieselEngine = 'common practice, diesel engine';
export const warmCatalyst = 'common practice, behind a warm catalyst';

/** Ends and steps of one byte that carries 0 to 100 %, or −100 to 99.2 % (SAE J1979). */
export const byteOfPercent = (pid: string) =>
  ({ range: '0 .. 100 %', step: '0.39215686274509803 %', source: `SAE J1979 ${pid}` }) as const;
export const signedByteOfPercent = (pid: string) =>
  ({ range: '-100 .. 99.21875 %', step: '0.78125 %', source: `SAE J1979 ${pid}` }) as const;
