import { deepStrictEqual } from 'node:assert';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Plugin } from 'esbuild';
import { allSignals } from '../../core/signals/vocabulary.ts';

/**
 * The vocabulary's rows are plain data: the program has them in a file of their own beside it, a row a line as JSON. Its
 * first line says where each row starts: `,map:1234,…`, counted from the end of that line.
 * Of hundreds a case names a few, and only their lines are parsed. The file is ASCII, which is read fastest.
 */
export const vocabularyApart: Plugin = {
  name: 'vocabulary-apart',
  setup({ onLoad }) {
    onLoad({ filter: /[\\/]signals[\\/]vocabulary\.ts$/ }, () => ({
      contents: `import { readFileSync } from 'node:fs';
        let starts;
        let lines;
        function read() {
          const text = readFileSync(__dirname + '/signals.txt', 'utf8');
          const end = text.indexOf('\\n') + 1;
          starts = text.slice(0, end);
          lines = text.slice(end);
        }
        const rows = new Map();
        export function signalOf(name) {
          let row = rows.get(name);
          if (row === undefined && !rows.has(name)) rows.set(name, (row = find(name)));
          return row;
        }
        function find(name) {
          if (starts === undefined) read();
          const at = starts.indexOf(',' + name + ':');
          if (at < 0) return undefined;
          const start = Number.parseInt(starts.slice(at + name.length + 2), 10);
          const row = JSON.parse(lines.slice(start, lines.indexOf('\\n', start)));
          return row.name === name ? row : undefined;
        }
        let all;
        export function allSignals() {
          if (starts === undefined) read();
          return (all ??= [...starts.matchAll(/,([^:,]+):/g)].map(([, name]) => signalOf(name)));
        }`,
    }));
  },
};

/** Writes the vocabulary for a program with the plugin. */
export function writeVocabulary(outdir: string): void {
  let starts = '';
  let lines = '';
  for (const row of allSignals()) {
    const line = ascii(JSON.stringify(row));
    deepStrictEqual(JSON.parse(line), row, `The signal ${row.name} holds more than plain data.`);
    if (!/^\w+$/.test(row.name)) throw new Error(`The first line cannot tell where ${row.name} ends.`);
    starts += `,${row.name}:${lines.length}`;
    lines += `${line}\n`;
  }
  writeFileSync(join(outdir, 'signals.txt'), `${starts}\n${lines}`);
}

const ascii = (text: string): string =>
  text.replace(/[\u0080-\uFFFF]/g, (unit) => `\\u${unit.charCodeAt(0).toString(16).padStart(4, '0')}`);
