import { deepStrictEqual } from 'node:assert';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Plugin } from 'esbuild';
import { allSignals } from '../../core/signals/vocabulary.ts';

/**
 * The vocabulary's rows are plain data: the program has them in a file of their own beside it, a row a line as JSON, and
 * in the first line their names. Of hundreds a case names a few, and only their lines are parsed.
 * The file is ASCII, to be read without decoding.
 */
export const vocabularyApart: Plugin = {
  name: 'vocabulary-apart',
  setup({ onLoad }) {
    onLoad({ filter: /[\\/]signals[\\/]vocabulary\.ts$/ }, () => ({
      contents: `import { readFileSync } from 'node:fs';
        let lines;
        let rows;
        function read() {
          lines = readFileSync(__dirname + '/signals.jsonl', 'latin1').split('\\n');
          rows = new Map();
          for (const name of JSON.parse(lines[0])) rows.set(name, rows.size + 1);
        }
        export function signalOf(name) {
          if (rows === undefined) read();
          let row = rows.get(name);
          if (typeof row === 'number') rows.set(name, (row = JSON.parse(lines[row])));
          return row;
        }
        let all;
        export function allSignals() {
          if (rows === undefined) read();
          return (all ??= [...rows.keys()].map(signalOf));
        }`,
    }));
  },
};

/** Writes the vocabulary for a program with the plugin. */
export function writeVocabulary(outdir: string): void {
  const names = JSON.stringify(allSignals().map(({ name }) => name));
  const lines = allSignals().map((row) => {
    const line = JSON.stringify(row);
    deepStrictEqual(JSON.parse(line), row, `The signal ${row.name} holds more than plain data.`);
    return line;
  });
  writeFileSync(join(outdir, 'signals.jsonl'), ascii([names, ...lines].join('\n')));
}

const ascii = (text: string): string =>
  text.replace(/[\u0080-\uFFFF]/g, (unit) => `\\u${unit.charCodeAt(0).toString(16).padStart(4, '0')}`);
