import { mentions } from '../../core/report/mentions.ts';
import { nearestPages, type Page, pagesOf } from '../../core/report/pages.ts';
import { Misunderstood, readArguments } from './arguments.ts';
import { print } from './print.ts';

/** `casebook explain NAME`: the page of a finding, function, signal, unit, state, kind of cell, key or word; of each, when it is several. */
export async function explain(words: readonly string[]): Promise<number> {
  const { paths } = readArguments(words, {});
  // A state's name has spaces, and nobody should have to quote it.
  const name = paths.join(' ').trim();
  if (name === '') throw new Misunderstood('Explain what? Such as: `casebook explain unit-slip`.');
  if (name === 'results') {
    const { default: schema } = await import('./results.schema.json', { with: { type: 'json' } });
    print(`${JSON.stringify(schema, undefined, 2)}\n`);
    return 0;
  }
  const pages = pagesOf(name);
  if (pages.length === 0) throw new Misunderstood(unknown(name));
  print(`${pages.map(pageText).join('\n')}`);
  return 0;
}

function unknown(name: string): string {
  const close = nearestPages(name);
  const offer = close.length === 0 ? '' : ` Near it: ${close.join(', ')}.`;
  const spoken = mentions(name).map((each) => `\n  ${each.name}: ${each.about}`);
  const list = spoken.length === 0 ? '' : `\nThese speak of it:${spoken.join('')}`;
  return `\`${name}\` is no finding, function, signal, unit, state, kind of cell, key or word of expressions.${offer}${list}`;
}

/** A heading, then each row's name at the left and its lines beside it. */
function pageText({ title, rows }: Page): string {
  const longest = Math.max(0, ...rows.map((row) => row.name.length));
  const text = rows.map(({ name, lines }) =>
    lines.map((line, at) => `  ${(at === 0 ? name : '').padEnd(longest)}  ${line}`.trimEnd()).join('\n'),
  );
  return `${title}\n\n${text.join('\n')}\n`;
}
