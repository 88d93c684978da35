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

/** Names the content of main.js; the build puts it here. V8 itself compares no more of the source than its length. */
declare const mainId: string;

const file = join(__dirname, 'main.js');
const cache = process.env.NODE_DISABLE_COMPILE_CACHE ? undefined : cacheFolder();
const cacheFile = cache && join(cache, `${process.version}-${process.arch}.bin`);
const cachedData = cacheFile && readCache(cacheFile);

// The build writes ASCII only: read so, a text takes half the room and no decoding.
const source = readFileSync(file, 'latin1');
const script = new Script(`(function(exports,require,module,__filename,__dirname){${source}\n})`, {
  filename: file,
  ...(cachedData && { cachedData }),
});
const module = { exports: {} };
script.runInThisContext()(module.exports, require, module, file, __dirname);

const stale = cachedData === undefined || script.cachedDataRejected === true;
// Other commands leave most of it uncompiled, and nobody waits for them by the hundred.
if (cacheFile !== undefined && stale && process.argv[2] === 'check') {
  // At the end, when all functions that a check needs are compiled.
  process.on('exit', () => writeCache(cacheFile, script.createCachedData()));
}

/** The user's own folder; undefined where there is none, or where somebody else could write: it holds code. */
function cacheFolder(): string | undefined {
  const { XDG_CACHE_HOME, LOCALAPPDATA } = process.env;
  try {
    const folder = join(XDG_CACHE_HOME || LOCALAPPDATA || join(homedir(), '.cache'), 'casebook');
    const known = statSync(folder, { throwIfNoEntry: false });
    if (known === undefined) mkdirSync(folder, { recursive: true, mode: 0o700 });
    const { uid, mode } = known ?? statSync(folder);
    const own = process.getuid === undefined || (uid === process.getuid() && (mode & 0o022) === 0);
    return own ? folder : undefined;
  } catch {
    return undefined;
  }
}

function readCache(path: string): Buffer | undefined {
  try {
    const bytes = readFileSync(path);
    return bytes.toString('latin1', 0, mainId.length) === mainId ? bytes.subarray(mainId.length) : undefined;
  } catch {
    return undefined;
  }
}

/** Under another name first: two runs may end together, and none may read half a file. */
function writeCache(path: string, data: Buffer): void {
  try {
    const unfinished = `${path}.${process.pid}`;
    writeFileSync(unfinished, Buffer.concat([Buffer.from(mainId, 'latin1'), data]), { mode: 0o600 });
    renameSync(unfinished, path);
  } catch {
    // The next run compiles again.
  }
}
