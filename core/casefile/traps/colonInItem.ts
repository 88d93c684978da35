import { type Diagnostic, diagnose } from '../../diagnostics/diagnostic.ts';
import { nearest } from '../../text/nearest.ts';
import type { Holds } from '../kinds/key.ts';
import { shortened } from '../shortened.ts';
import type { MapNode } from '../tree.ts';
import { quoteFix } from './quoted.ts';

/**
 * `- Know this: that`, `- P0171: lean`: an item of a list that is a text, or may be one, with a colon in it. One whose
 * key is nearly a known one was meant as that.
 */
export function colonInItem(item: MapNode, holds: Holds | undefined, text: string): Diagnostic | undefined {
  const [only, more] = item.entries;
  if (item.flow || only === undefined || more !== undefined) return undefined;
  const { key, value } = only;
  if (key.style !== 'plain' || value.kind !== 'text') return undefined;
  const known = knownKeys(holds);
  if (known === undefined || known.includes(key.text) || nearest(key.text, known).length > 0)
    return undefined;
  const span = { start: key.span.start, end: Math.max(key.span.end, value.span.end) };
  const colon = text.indexOf(':', key.span.end);
  if (colon < 0 || colon > span.end || /[\r\n]/.test(text.slice(span.start, span.end))) return undefined;
  // With nothing behind it, the colon still belongs to the words.
  const whole = { start: span.start, end: Math.max(span.end, colon + 1) };
  const facts = { key: '-', before: shortened(key.text) };
  return diagnose('colon-in-text', { start: colon, end: colon + 1 }, facts, [quoteFix(text, whole)]);
}

/** The keys that an item may have beside standing as a text alone; nothing where it may not be a text. */
function knownKeys(holds: Holds | undefined): readonly string[] | undefined {
  if (isWords(holds)) return [];
  if (typeof holds !== 'object' || !('keys' in holds) || holds.short === undefined) return undefined;
  return isWords(holds.keys[holds.short]?.holds) ? Object.keys(holds.keys) : undefined;
}

function isWords(holds: Holds | undefined): boolean {
  return holds === 'sentence' || holds === 'markdown' || holds === 'text';
}
