import type { TextNode } from '../../casefile/tree.ts';
import { type Diagnostic, diagnose } from '../../diagnostics/diagnostic.ts';
import { keywords } from '../../expression/scan.ts';
import type { Header } from '../header.ts';
import { isSignal } from './values.ts';

const sections: ReadonlySet<string> = new Set(['vehicle', 'engine', 'site']);

/** A cell's `as` must be free: no signal, no word of the language, no section of the header. */
export function checkPrefix(as: TextNode | undefined, header: Header): readonly Diagnostic[] {
  if (as === undefined) return [];
  const what = takenAs(as.text, header);
  return what === undefined ? [] : [diagnose('shadowed-name', as.span, { name: as.text, what })];
}

/** What already has a name that an author gives; undefined when it is free. */
export function takenAs(name: string, header: Header): string | undefined {
  return takenByLanguage(name) ?? (isSignal(name, header) === undefined ? undefined : 'a signal');
}

/** Names that mean something in every case. */
export function takenByLanguage(name: string): string | undefined {
  if (sections.has(name)) return 'a section of the header';
  return keywords.has(name) ? 'a word of the expression language' : undefined;
}

/** A state's own name stands between the cell's name and the signal's, so it must not be a signal. */
export function checkStateName(name: TextNode, header: Header): readonly Diagnostic[] {
  if (isSignal(name.text, header) === undefined) return [];
  return [diagnose('shadowed-name', name.span, { name: name.text, what: 'a signal' })];
}
