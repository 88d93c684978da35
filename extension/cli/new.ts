import { existsSync, writeFileSync } from 'node:fs';
import { nearest } from '../../core/text/nearest.ts';
import { Misunderstood, readArguments } from './arguments.ts';
import { print, tell } from './print.ts';
import { reasonNotWritten } from './reasonOf.ts';
import { type Template, templates } from './templates.ts';

/** `casebook new [TEMPLATE] [FILE]`: a case to begin with, printed or written to a file that is not there yet. */
export async function newCase(words: readonly string[]): Promise<number> {
  const [name, file, more] = readArguments(words, {}).paths;
  if (more !== undefined)
    throw new Misunderstood('One template and one file: `casebook new empty-case van14.diag`.');
  if (name === undefined) {
    print(list());
    return 0;
  }
  const template = templateOf(name);
  if (file?.trim() === '') throw new Misunderstood('The file to write has no name.');
  if (file === undefined) {
    print(template.text);
    return 0;
  }
  write(file, template);
  return 0;
}

function list(): string {
  const rows = templates.map(({ name, meaning }) => `  ${name.padEnd(24)}${meaning}\n`).join('');
  return `Templates:\n\n${rows}\nSuch as: casebook new compression-test van14.diag\n`;
}

/** By its name, or by the start of its name where that is only one's. */
function templateOf(name: string): Template {
  const wanted = name.toLowerCase().replaceAll(' ', '-');
  const found = templates.filter((each) => each.name.startsWith(wanted));
  const only = found.find((each) => each.name === wanted) ?? (found.length === 1 ? found[0] : undefined);
  if (only !== undefined) return only;
  if (name.endsWith('.diag')) {
    throw new Misunderstood(
      `Which template for \`${name}\`? Such as: \`casebook new empty-case ${quoted(name)}\`.`,
    );
  }
  const names = templates.map((each) => each.name);
  const close = nearest(wanted, names, 1)[0];
  throw new Misunderstood(
    `There is no template \`${name}\`. ${close === undefined ? `There are: ${names.join(', ')}.` : `Did you mean \`${close}\`?`}`,
  );
}

/** As a shell takes it for one word: PowerShell, cmd and POSIX shells read such quotes alike. */
function quoted(path: string): string {
  return /^[\w./\\:-]+$/.test(path) ? path : `"${path}"`;
}

/** Never over a file that is there: it may be someone's case. */
function write(file: string, template: Template): void {
  const path = /\.[^./\\]+$/.test(file) ? file : `${file}.diag`;
  if (existsSync(path)) throw new Misunderstood(`\`${path}\` is there already and was left alone.`);
  try {
    writeFileSync(path, template.text, { flag: 'wx' });
  } catch (error) {
    throw new Misunderstood(`\`${path}\` cannot be written: ${reasonNotWritten(error)}.`);
  }
  tell(`Wrote ${path}. Fill it in, then: casebook check ${quoted(path)}\n`);
}
