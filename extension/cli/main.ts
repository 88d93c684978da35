import { nearest } from '../../core/text/nearest.ts';
import { isMisunderstood, Misunderstood } from './arguments.ts';
import { check } from './check.ts';
import { print, tell } from './print.ts';
import { version } from './version.ts';

/** A command: given the words behind its name, does its work and says how it ended. */
type Command = (words: readonly string[]) => Promise<number>;

/** But for the most frequent one each command is loaded when it is asked for, so that none pays for another's start. */
const commands: ReadonlyMap<string, () => Promise<Command> | Command> = new Map<
  string,
  () => Promise<Command> | Command
>([
  ['check', () => check],
  ['report', async () => (await import('./report.ts')).report],
  ['new', async () => (await import('./new.ts')).newCase],
  ['import', async () => (await import('./importCapture.ts')).importCapture],
  ['decode', async () => (await import('./decodeAnswers.ts')).decodeAnswers],
  ['explain', async () => (await import('./explain.ts')).explain],
]);

// Not awaited at the top: the bundle is CommonJS, which cannot.
// All is written by then, and leaving at once spares Node the tidying up of a memory that goes away as a whole.
void run(process.argv.slice(2)).then((status) => process.exit(status));

/** 0: all well; 1: the cases have errors; 2: the command could not do its work. */
async function run(words: readonly string[]): Promise<number> {
  const [name, ...rest] = words;
  try {
    if (name === undefined || name === '--help' || name === '-h' || name === 'help') {
      const { help } = await import('./help.ts');
      print(help(name === 'help' ? rest[0] : undefined));
      return name === undefined ? 2 : 0;
    }
    if (name === '--version' || name === '-V') {
      print(`${version()}\n`);
      return 0;
    }
    const load = commands.get(name);
    if (load === undefined) throw new Misunderstood(unknownCommand(name));
    if (rest.includes('--help') || rest.includes('-h')) {
      print((await import('./help.ts')).help(name));
      return 0;
    }
    return await (await load())(rest);
  } catch (error) {
    tell(isMisunderstood(error) ? `casebook: ${error.message}\n` : `${fault(error)}\n`);
    return 2;
  }
}

function unknownCommand(name: string): string {
  const close = nearest(name, commands.keys(), 1)[0];
  const known = [...commands.keys()].join(', ');
  return close === undefined
    ? `There is no command \`${name}\`. The commands are: ${known}. \`casebook --help\` tells more.`
    : `There is no command \`${name}\`. Did you mean \`casebook ${close}\`?`;
}

/** What must never happen is said as such: it is no mistake of who wrote the case. */
function fault(error: unknown): string {
  if (error instanceof Error && 'syscall' in error && error.syscall === 'uv_cwd')
    return 'casebook: The folder that you stand in is not there any more. Change to another one.';
  const what = error instanceof Error ? (error.stack ?? error.message) : String(error);
  return `casebook: an error of the program itself, not of your case. Please report it with these lines:\n${what}`;
}
