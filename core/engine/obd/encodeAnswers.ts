import { splitIntoFrames } from './isoTp.ts';

/** A message as the lines of a recording on a CAN network with ids: `7E8 04 41 0C 1A F8 00 00 00`. */
export function writeMessage(id: string, message: readonly number[]): readonly string[] {
  return splitIntoFrames(message).map((frame) => `${id} ${spaced(frame)}`);
}

/** The same without ids: one line. */
export function spaced(bytes: readonly number[]): string {
  return bytes.map((byte) => byte.toString(16).toUpperCase().padStart(2, '0')).join(' ');
}
