import { mkdirSync, readFileSync, renameSync, statSync, writeFileSync } from 'node:fs';
import { homedir } from 'node:os';
import { join } from 'node:path';
import { Script } from 'node:vm';

/**
 * Starts the program from compiled code that an earlier start left in the user's cache folder.
 * Most of a short run is compiling; Node's own cache keeps too little for that: no function that was first called later.
 * The cache is a convenience: whatever is wrong with it, the program runs without.
 * Like Node's own it is not used when NODE_DISABLE_COMPILE_CACHE is set.
 */

/**
 * What each of the program's files holds, as a hash; the build puts it here.
 * V8 itself compares no more of the source than its length.
 */
declare const contentOf: { readonly [file: string]: string };

/** What is left for the next check at the end, when all functions that a check needs are compiled. */
const toKeep: (() => void)[] = [];
process.on('exit', () => {
  for (const keep of toKeep) keep();
});

const folder = process.env.NODE_DISABLE_COMPILE_CACHE ? undefined : cacheFolder();
load('./main.js');

/** Runs a file of the program, or hands over one of Node's own modules. */
function load(name: string): unknown {
  const content = contentOf[name];
  if (content === undefined) return require(name);
  const file = join(__dirname, name);
  const kept = folder && join(folder, `${process.version}-${process.arch}-${name.slice(2, -3)}.bin`);
  const cachedData = kept && readCache(kept, content);
  // The build writes ASCII only: read so, a text takes half the room and no decoding.
  const script = new Script(readFileSync(file, 'latin1'), {
    filename: file,
    ...(cachedData && { cachedData }),
  });
  const module = { exports: {} };
  script.runInThisContext()(module.exports, load, module, file, __dirname);
  const stale = cachedData === undefined || script.cachedDataRejected === true;
  // Other commands leave most of it uncompiled, and nobody waits for them by the hundred.
  if (kept !== undefined && stale && process.argv[2] === 'check')
    toKeep.push(() => writeCache(kept, content, script.createCachedData()));
  return module.exports;
}

/** The user's own folder; undefined where there is none, or where somebody else could write: it holds code. */
function cacheFolder(): string | undefined {
  const { XDG_CACHE_HOME, LOCALAPPDATA } = process.env;
  try {
    const path = join(XDG_CACHE_HOME || LOCALAPPDATA || join(homedir(), '.cache'), 'casebook');
    const known = statSync(path, { throwIfNoEntry: false });
    if (known === undefined) mkdirSync(path, { recursive: true, mode: 0o700 });
    const { uid, mode } = known ?? statSync(path);
    const own = process.getuid === undefined || (uid === process.getuid() && (mode & 0o022) === 0);
    return own ? path : undefined;
  } catch {
    return undefined;
  }
}

function readCache(path: string, content: string): Buffer | undefined {
  try {
    const bytes = readFileSync(path);
    return bytes.toString('latin1', 0, content.length) === content
      ? bytes.subarray(content.length)
      : undefined;
  } catch {
    return undefined;
  }
}

/** Under another name first: two runs may end together, and none may read half a file. */
function writeCache(path: string, content: string, data: Buffer): void {
  try {
    const unfinished = `${path}.${process.pid}`;
    writeFileSync(unfinished, Buffer.concat([Buffer.from(content, 'latin1'), data]), { mode: 0o600 });
    renameSync(unfinished, path);
  } catch {
    // The next run compiles again.
  }
}
