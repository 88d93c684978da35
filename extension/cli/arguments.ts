import { type ParseArgsConfig, parseArgs } from 'node:util';
import { nearest } from '../../core/text/nearest.ts';

type Options = NonNullable<ParseArgsConfig['options']>;

/** What stands on a command line behind the command's name. */
export interface Given {
  readonly paths: readonly string[];
  readonly options: Readonly<Record<string, string | boolean | undefined>>;
}

/** The command line could not be understood; the sentence says what to write instead. */
export class Misunderstood extends Error {
  override readonly name = 'Misunderstood';
}

/** By its name: in the bundle, each command's file has a class of its own. */
export function isMisunderstood(error: unknown): error is Misunderstood {
  return error instanceof Error && error.name === 'Misunderstood';
}

/** Reads the words behind a command. Throws `Misunderstood` on an option that it does not have. */
export function readArguments(words: readonly string[], options: Options): Given {
  // Paths alone need no parser, and Node reads its own only when it is called.
  if (!words.some((word) => word.startsWith('-'))) return { paths: words, options: {} };
  const known: Options = { ...options, help: { type: 'boolean', short: 'h' } };
  const { values, positionals, tokens } = parseArgs({
    args: [...words],
    options: known,
    allowPositionals: true,
    strict: false,
    tokens: true,
  });
  const seen = new Set<string>();
  for (const token of tokens) {
    if (token.kind !== 'option') continue;
    const option = Object.hasOwn(known, token.name) ? known[token.name] : undefined;
    if (option === undefined) throw new Misunderstood(unknownOption(token.rawName, Object.keys(known)));
    if (option.type === 'string' && (token.value === undefined || token.value === '')) {
      throw new Misunderstood(`\`${token.rawName}\` needs something behind it.`);
    }
    if (option.type === 'boolean' && token.value !== undefined) {
      throw new Misunderstood(`\`${token.rawName}\` takes nothing behind it.`);
    }
    // Only one of two values could be meant, and nobody would see which.
    if (option.type === 'string' && seen.has(token.name)) {
      throw new Misunderstood(`\`${token.rawName}\` stands twice. Leave one of them out.`);
    }
    seen.add(token.name);
  }
  return { paths: positionals, options: values as Given['options'] };
}

function unknownOption(written: string, known: readonly string[]): string {
  const close = nearest(written.replace(/^-+/, ''), known, 1)[0];
  return `There is no option \`${written}\`.${close === undefined ? '' : ` Did you mean \`--${close}\`?`}`;
}
