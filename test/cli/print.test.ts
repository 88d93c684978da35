import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { describe, expect, it } from 'vitest';

const printFile = join(import.meta.dirname, '..', '..', 'extension', 'cli', 'print.ts');

/** A program that prints a million numbered lines with what the command line prints with. */
const long = `import { print } from ${JSON.stringify(printFile)};
let text = '';
for (let i = 0; i < 200_000; i++) text += i + ' °C\\n';
print(text);
process.exitCode = 1;`;

function start(): ReturnType<typeof spawn> {
  return spawn(process.execPath, ['--input-type=module', '--eval', long], {
    stdio: ['ignore', 'pipe', 'pipe'],
  });
}

describe('long output', () => {
  it('arrives whole at a reader that is slow', async () => {
    const program = start();
    const chunks: Buffer[] = [];
    await setTimeout(300);
    program.stdout?.on('data', (chunk: Buffer) => chunks.push(chunk));
    const [status] = await once(program, 'close');
    const lines = Buffer.concat(chunks).toString('utf8').split('\n');
    expect(status).toBe(1);
    expect(lines).toHaveLength(200_001);
    expect(lines[199_999]).toBe('199999 °C');
  });

  it('ends quietly when its reader has read enough', async () => {
    const program = start();
    let complaint = '';
    program.stderr?.on('data', (chunk: Buffer) => {
      complaint += chunk.toString();
    });
    program.stdout?.once('data', () => program.stdout?.destroy());
    await once(program, 'exit');
    expect(complaint).toBe('');
  });
});
