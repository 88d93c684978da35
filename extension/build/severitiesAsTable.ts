import type { Plugin } from 'esbuild';
import { catalogue } from '../../core/diagnostics/rows.ts';

/**
 * A check needs to know of each finding whether it is an error; how it is worded only of those that it prints.
 * So the words can be a file of their own.
 */
export const severitiesAsTable: Plugin = {
  name: 'severities-as-table',
  setup({ onLoad }) {
    onLoad({ filter: /[\\/]diagnostics[\\/]severities\.ts$/ }, () => {
      const codes = new Map<string, string[]>();
      for (const [code, { severity }] of Object.entries(catalogue)) {
        const list = codes.get(severity);
        if (list === undefined) codes.set(severity, [code]);
        else list.push(code);
      }
      const written = [...codes].map(([severity, list]) => [severity, list.join(' ')]);
      return {
        contents: `
          let severities;
          function read() {
            const all = new Map();
            for (const [severity, codes] of ${JSON.stringify(written)})
              for (const code of codes.split(' ')) all.set(code, severity);
            return all;
          }
          export function severityOf(code) { return (severities ??= read()).get(code); }`,
      };
    });
  },
};
