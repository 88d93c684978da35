import { decodeObd } from '../../core/engine/obd/decodeObd.ts';
import { writeMessage } from '../../core/engine/obd/encodeAnswers.ts';
import { encodeParameter } from '../../core/engine/obd/encodeParameter.ts';
import { parameterRow } from '../../core/engine/obd/parameterTable.ts';
import { contest, formatSeconds, report } from './harness.ts';

/** Decoding 100,000 recorded frames with ids and filler (synthetic), eight parameters in turn, against finding their bytes by a pattern. */
const frames = 100_000;
const parameters = [0x0c, 0x0b, 0x10, 0x05, 0x06, 0x07, 0x14, 0x42] as const;
const text = Array.from({ length: frames }, (_, i) => {
  const row = parameterRow(parameters[i % parameters.length] ?? 0);
  if (row === undefined) throw new Error('A parameter is missing.');
  const [part] = row.parts;
  const value = part?.holds === 'number' ? part.plus + ((i * 7) % 200) * (part.times / part.over) : 0;
  return writeMessage('7E8', [0x41, row.pid, ...(encodeParameter(row, [value]) ?? [])]).join('\n');
}).join('\n');

const whole = decodeObd(text);
if (whole.answers.length !== frames || whole.diagnostics.length > 0)
  throw new Error(
    `${whole.answers.length} answers of ${frames} frames, ${whole.diagnostics.length} findings`,
  );

/** A tenth of it, for many rounds. */
const tenth = text.slice(0, text.indexOf('\n', text.length / 10));

/** The least that any reader of such a text does: every pair of digits as a number. */
function everyByte(): number {
  let sum = 0;
  for (const [pair] of tenth.matchAll(/\b[0-9A-F]{2}\b/g)) sum += Number.parseInt(pair, 16);
  return sum;
}

const floor = 'every byte by a pattern';

contest({
  title: 'Decode an OBD frame',
  operations: frames / 10,
  sides: [
    { name: 'casebook', run: () => decodeObd(tenth).answers.length },
    { name: floor, run: everyByte },
  ],
  bounds: [{ to: floor, atMost: 3 }],
});

const rounds = Array.from({ length: 7 }, () => {
  const start = performance.now();
  decodeObd(text);
  return (performance.now() - start) / 1000;
});
const second = 'one second';
report(
  'Decode 100,000 OBD frames',
  [
    { name: 'casebook', rounds },
    { name: second, rounds: rounds.map(() => 1) },
  ],
  [{ to: second, atMost: 1 }],
  formatSeconds,
);
