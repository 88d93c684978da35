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
      const codes: { [severity: string]: string } = {};
      for (const [code, { severity }] of Object.entries(catalogue))
        codes[severity] = `${codes[severity] ?? ' '}${code} `;
      return {
        contents: `
          const table = ${JSON.stringify(codes)};
          export function severityOf(code) {
            for (const severity in table) if (table[severity].includes(' ' + code + ' ')) return severity;
          }`,
      };
    });
  },
};
