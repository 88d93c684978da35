import { harmless } from '../harmless.ts';

/** Text for HTML, in an element or in a quoted attribute. */
export function escapeHtml(text: string): string {
  return harmless(text).replace(/[&<>"']/g, (found) => entities[found] ?? '');
}

const entities: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};
