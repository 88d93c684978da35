import type { Runs } from '../blocks.ts';
import { escapeHtml } from './escape.ts';

export function writeRuns(runs: Runs): string {
  return runs
    .map((run) => {
      if (typeof run === 'string') return escapeHtml(run);
      if ('code' in run) return `<code>${escapeHtml(run.code)}</code>`;
      return `<strong>${escapeHtml(run.strong)}</strong>`;
    })
    .join('');
}
