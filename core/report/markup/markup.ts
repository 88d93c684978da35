/**
 * A piece of a page before it is written down: text, or an element with what is in it.
 * The report writes it as HTML, the editor makes nodes of it, and both show the same.
 */
export type Markup = string | Element;

export interface Element {
  readonly tag: string;
  readonly attributes: Attributes;
  readonly children: readonly Markup[];
}

export type Attributes = Readonly<Record<string, string>>;

export function element(tag: string, attributes: Attributes, ...children: readonly Markup[]): Element {
  return { tag, attributes, children };
}

/** With this between them. */
export function joined(parts: readonly (readonly Markup[])[], between: Markup): Markup[] {
  return parts.flatMap((part, at) => (at === 0 ? part : [between, ...part]));
}
