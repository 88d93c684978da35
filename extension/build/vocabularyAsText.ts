import { deepStrictEqual } from 'node:assert';
import { pathToFileURL } from 'node:url';
import type { Plugin } from 'esbuild';

/** The vocabulary's rows are plain data; written as JSON they are read several times faster than as program. */
export const vocabularyAsText: Plugin = {
  name: 'vocabulary-as-text',
  setup({ onLoad }) {
    onLoad({ filter: /[\\/]signals[\\/]vocabulary[\\/]\w+\.ts$/ }, async ({ path }) => {
      const families = Object.entries((await import(pathToFileURL(path).href)) as Record<string, unknown>);
      if (!families.every(([, rows]) => Array.isArray(rows))) return undefined;
      const written = families.map(([name, rows]) => {
        const json = JSON.stringify(rows);
        deepStrictEqual(JSON.parse(json), rows, `${path} holds more than plain data`);
        return `export const ${name} = JSON.parse(${JSON.stringify(json)});`;
      });
      return { contents: written.join('\n') };
    });
  },
};
