import { type Attributes, type Element, element, type Markup } from '../../core/report/markup/markup.ts';

/**
 * A drawing that Vega wrote, as elements: what is not drawn is left out (names for assistive tools, that the page gives
 * itself, and empty backgrounds), and nothing but shapes and texts comes through. Where the drawing is cut at its frames,
 * `clips` names the cuts; without it nothing is cut.
 */
export function readSvg(text: string, clips?: string): Element {
  const stack: { tag: string; attributes: Attributes; children: Markup[] }[] = [];
  const found = /<(\/?)([a-zA-Z]+)((?:\s+[\w:-]+="[^"]*")*)\s*(\/?)>|([^<]+)/g;
  let root: Element | undefined;
  const known = new Map<string, string>();
  // Vega counts its cuts through all drawings that it ever made.
  const nameOf = (id: string): string | undefined => {
    if (clips === undefined) return undefined;
    const name = known.get(id) ?? `${clips}-${known.size + 1}`;
    known.set(id, name);
    return name;
  };
  for (const [, close, tag, attributes = '', empty, words] of text.matchAll(found)) {
    const parent = stack.at(-1);
    if (words !== undefined) {
      parent?.children.push(plain(words));
      continue;
    }
    if (tag === undefined) continue;
    if (close !== '/') stack.push({ tag, attributes: readAttributes(attributes, nameOf), children: [] });
    if (close !== '/' && empty !== '/') continue;
    const done = stack.pop();
    if (done === undefined) break;
    const made = element(done.tag, done.attributes, ...done.children);
    const around = stack.at(-1);
    if (around === undefined) root = made;
    else around.children.push(...kept(made));
  }
  return root ?? element('svg', {});
}

const shapes: ReadonlySet<string> = new Set([
  'g',
  'path',
  'line',
  'rect',
  'text',
  'tspan',
  'circle',
  'defs',
  'clipPath',
]);

/** A group that only groups stands for what is in it. */
function kept(made: Element): readonly Markup[] {
  if (!shapes.has(made.tag)) return [];
  if (made.tag === 'defs' || made.tag === 'clipPath') {
    const named = made.tag === 'defs' || made.attributes.id !== undefined;
    return named && made.children.length > 0 ? [made] : [];
  }
  const { class: name, display, d } = made.attributes;
  if (display === 'none' || (made.tag === 'path' && (d === undefined || d === '' || name === 'background')))
    return [];
  if (made.tag !== 'g') return [made];
  if (made.children.length === 0) return [];
  const { class: _, ...rest } = made.attributes;
  return Object.keys(rest).length === 0 || rest.transform === 'translate(0,0)'
    ? made.children
    : [element('g', rest, ...made.children)];
}

const drawn =
  /^(transform|d|x1|x2|y1|y2|x|y|dx|dy|cx|cy|r|width|height|viewBox|xmlns|class|display|fill|fill-opacity|stroke|stroke-width|stroke-dasharray|stroke-linejoin|stroke-linecap|stroke-opacity|stroke-miterlimit|opacity|text-anchor|font-size|font-weight|font-style)$/;

function readAttributes(text: string, nameOf: (id: string) => string | undefined): Attributes {
  const read: Record<string, string> = {};
  for (const [, name = '', value = ''] of text.matchAll(/([\w:-]+)="([^"]*)"/g)) {
    const id =
      name === 'id' ? value : name === 'clip-path' ? /^url\(#([\w-]+)\)$/.exec(value)?.[1] : undefined;
    const named = id === undefined ? undefined : nameOf(id);
    if (named !== undefined) read[name] = name === 'id' ? named : `url(#${named})`;
    if (!drawn.test(name) || (name === 'opacity' && value === '1')) continue;
    read[name] = shorter(name, plain(value));
  }
  return read;
}

/** A tenth of a pixel is more than one sees. */
function shorter(name: string, value: string): string {
  if (name !== 'd' && name !== 'transform') return value;
  return value.replace(/-?\d+\.\d{2,}(?:e-?\d+)?/g, (number) => String(Math.round(Number(number) * 10) / 10));
}

function plain(text: string): string {
  return text
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&quot;', '"')
    .replaceAll('&amp;', '&');
}
