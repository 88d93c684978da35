import { deepStrictEqual } from 'node:assert';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Plugin } from 'esbuild';

/**
 * The vocabulary's rows are plain data: the program reads them from a file of their own beside it, as JSON, which takes
 * a fraction of the time that they take inside a program's text. The file is ASCII, to be read without decoding.
 */
export function vocabularyApart(outdir: string): Plugin {
  return {
    name: 'vocabulary-apart',
    setup({ onLoad, onResolve, onEnd }) {
      const families: Record<string, unknown> = {};
      onResolve({ filter: /^vocabulary:$/ }, ({ path }) => ({ path, namespace: 'vocabulary' }));
      onLoad({ filter: /.*/, namespace: 'vocabulary' }, () => ({
        contents: `import { readFileSync } from 'node:fs';
          import { join } from 'node:path';
          export const families = JSON.parse(readFileSync(join(__dirname, 'signals.json'), 'latin1'));`,
      }));
      onLoad({ filter: /[\\/]signals[\\/]vocabulary[\\/]\w+\.ts$/ }, async ({ path }) => {
        const exported = Object.entries((await import(pathToFileURL(path).href)) as Record<string, unknown>);
        if (!exported.every(([, rows]) => Array.isArray(rows))) return undefined;
        for (const [name, rows] of exported) {
          deepStrictEqual(JSON.parse(JSON.stringify(rows)), rows, `${path} holds more than plain data`);
          families[name] = rows;
        }
        const names = exported.map(([name]) => `export const ${name} = families.${name};`);
        return { contents: `import { families } from 'vocabulary:';\n${names.join('\n')}` };
      });
      onEnd(() => {
        if (Object.keys(families).length === 0) return;
        const inOrder = Object.fromEntries(Object.entries(families).sort(([a], [b]) => (a < b ? -1 : 1)));
        const escaped = (unit: string): string => `\\u${unit.charCodeAt(0).toString(16).padStart(4, '0')}`;
        const json = JSON.stringify(inOrder).replace(/[\u0080-\uFFFF]/g, escaped);
        writeFileSync(join(outdir, 'signals.json'), json);
      });
    },
  };
}
