import type { Burning, Form } from '../types.ts';

type Usual = NonNullable<Form['usual']>[number];

/** Who says what is usual, and of which engines. */
export interface Said {
  readonly source: string;
  readonly of?: Burning;
}

/** What is usual at a state: a rule of the trade unless a source is named. */
export function usually(state: string, range: string, said: string | Said = practice): Usual {
  return { state, range, ...(typeof said === 'string' ? { source: said } : said) };
}

/** Rules of the trade that no standard holds, and what they are true of. */
export const practice = 'common practice';
export const portInjected = 'common practice, port injection';
export const warmCatalyst = 'common practice, behind a warm catalyst';

export const petrolEngine = practiceOf('petrol engine', 'spark');
export const throttled = practiceOf('petrol engine with a throttle', 'spark');
export const seaLevel = practiceOf('petrol engine near sea level', 'spark');
export const closedLoop = practiceOf('petrol engine in closed loop', 'spark');
export const dieselEngine = practiceOf('diesel engine', 'diesel');

/** Common practice for these engines. */
export function practiceOf(engine: string, of: Burning): Said {
  return { source: `common practice, ${engine}`, of };
}

/** Ends and steps of one byte that carries 0 to 100 %, or −100 to 99.2 % (SAE J1979). */
export const byteOfPercent = (pid: string) =>
  ({ range: '0 .. 100 %', step: '0.39215686274509803 %', source: `SAE J1979 ${pid}` }) as const;
export const signedByteOfPercent = (pid: string) =>
  ({ range: '-100 .. 99.21875 %', step: '0.78125 %', source: `SAE J1979 ${pid}` }) as const;
