import { appendFileSync, statSync } from 'node:fs';
import { basename, dirname, isAbsolute, relative, resolve, sep } from 'node:path';
import type { Format } from '../../core/recording/layout.ts';
import { captureFromFile } from '../../core/service/captureFromFile.ts';
import { readFileBeside } from '../disk/fileBeside.ts';
import { Misunderstood, readArguments } from './arguments.ts';
import { print, tell } from './print.ts';
import { readText } from './readText.ts';
import { reasonNotWritten } from './reasonOf.ts';

/** `casebook import FILE [CASE]`: cells for a recorder's file, printed or put at the end of a case. */
export async function importCapture(words: readonly string[]): Promise<number> {
  const { paths, options } = readArguments(words, {
    at: { type: 'string' },
    delimiter: { type: 'string' },
    decimal: { type: 'string' },
    'heading-rows': { type: 'string' },
    skip: { type: 'string' },
  });
  const [file, into, more] = paths;
  if (file === undefined || more !== undefined)
    throw new Misunderstood(
      'One file, and perhaps the case that it belongs to: `casebook import captures/log.csv van14.diag`.',
    );
  if (file.endsWith('.diag'))
    throw new Misunderstood(
      `\`${file}\` is a case. The recorder’s file stands first: \`casebook import captures/log.csv ${file}\`.`,
    );
  const text = into === undefined ? '' : caseText(into);
  const home = into === undefined ? process.cwd() : dirname(resolve(into));
  const name = relative(home, resolve(file)).split(sep).join('/');
  if (name.startsWith('../') || isAbsolute(name))
    throw new Misunderstood(
      `\`${file}\` is outside the case’s folder, and a case reads only what lies beside it or below. Copy it there first, such as to \`captures/${basename(file)}\`.`,
    );
  const content = readFileBeside(home, name);
  if (content.kind === 'none')
    throw new Misunderstood(`\`${file}\` cannot be read: ${reasonFor(content.why.is)}.`);
  const made = captureFromFile({
    file: name,
    content,
    format: formatFrom(options),
    taken: new Set([...text.matchAll(/^as:\s*([A-Za-z_]\w*)/gm)].map((each) => each[1] ?? '')),
    at: numberFrom(options.at, '--at', 'a moment in seconds'),
  });
  if ('why' in made) {
    const how = made.asks === undefined ? '' : ` ${made.asks.options}.`;
    throw new Misunderstood(`\`${file}\` cannot be read: ${made.why}.${how}`);
  }
  const cells = made.cells.map((each) => `---\n${each}\n`).join('');
  if (into === undefined) print(cells);
  else append(into, text, cells);
  tell(`Read so: ${made.readAs}.\n`);
  if (into !== undefined) {
    const count = made.channels === 1 ? 'one channel' : `${made.channels} channels`;
    tell(`Put a capture of ${count} at the end of ${into}. Look it over, then: casebook check ${into}\n`);
  }
  return 0;
}

function caseText(path: string): string {
  if (!path.endsWith('.diag'))
    throw new Misunderstood(`\`${path}\` is no case: its name does not end in .diag.`);
  if (statSync(path, { throwIfNoEntry: false }) === undefined)
    throw new Misunderstood(`\`${path}\` is not there. \`casebook new empty-case ${path}\` starts it.`);
  return readText(path);
}

/** With the case's own line ends; nothing that stands in it is touched. */
function append(path: string, text: string, cells: string): void {
  const end = text.includes('\r\n') ? '\r\n' : '\n';
  const before = text === '' || text.endsWith('\n') ? '' : end;
  try {
    appendFileSync(path, before + cells.replaceAll('\n', end));
  } catch (error) {
    throw new Misunderstood(`\`${path}\` cannot be written: ${reasonNotWritten(error)}.`);
  }
}

const delimiters = ['comma', 'semicolon', 'tab', 'space', 'pipe'] as const;
const decimals = ['point', 'comma'] as const;

type Given = string | boolean | undefined;

function formatFrom(options: Readonly<Record<string, Given>>): Format {
  return {
    delimiter: oneOf(options.delimiter, delimiters, '--delimiter'),
    decimal: oneOf(options.decimal, decimals, '--decimal'),
    headingRows: countFrom(options['heading-rows'], '--heading-rows', 'a number of rows'),
    skip: countFrom(options.skip, '--skip', 'a number of lines'),
  };
}

function oneOf<W extends string>(given: Given, words: readonly W[], option: string): W | undefined {
  if (given === undefined) return undefined;
  const found = words.find((each) => each === given);
  if (found === undefined)
    throw new Misunderstood(`\`${option}\` is one of ${words.join(', ')}, not \`${given}\`.`);
  return found;
}

function numberFrom(given: Given, option: string, what: string): number | undefined {
  if (given === undefined) return undefined;
  const number = Number(given);
  if (typeof given === 'string' && /^\d/.test(given) && Number.isFinite(number)) return number;
  throw new Misunderstood(`\`${option}\` takes ${what}, not \`${given}\`.`);
}

function countFrom(given: Given, option: string, what: string): number | undefined {
  if (given === undefined || (typeof given === 'string' && /^\d{1,6}$/.test(given)))
    return numberFrom(given, option, what);
  throw new Misunderstood(`\`${option}\` takes ${what}, not \`${given}\`.`);
}

function reasonFor(why: string): string {
  switch (why) {
    case 'not there':
      return 'it is not there';
    case 'a folder':
      return 'it is a folder';
    case 'outside':
      return 'it is a link that leads out of the case’s folder';
    case 'too large':
    case 'too large inside':
      return 'it is larger than a capture may be (256 MiB). Cut it first';
    case 'packing damaged':
      return 'its packing is damaged or ends too early';
    default:
      return 'the machine says no';
  }
}
