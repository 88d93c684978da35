import {
  appendFileSync,
  existsSync,
  mkdirSync,
  readFileSync,
  renameSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { Script } from 'node:vm';

/**
 * Starts the program from compiled code that was left earlier: by the build beside the program, or by one of the user's
 * own checks in the user's cache folder.
 * Most of a short run is compiling; Node's own cache keeps too little for that: no function that was first called later.
 * Compiled code is a convenience: whatever is wrong with it, the program runs without.
 * Like Node's own it is not used when NODE_DISABLE_COMPILE_CACHE is set.
 */

/** The build's mark, a hash of all its files; the build puts it here. V8 itself compares no more than a text's length. */
declare const thisBuild: string;

/** What is left for the next check at the end, when all functions that a check needs are compiled. */
const toKeep: { readonly path: string; readonly script: Script }[] = [];
process.on('exit', () => {
  for (const { path, script } of toKeep) write(path, script.createCachedData());
});

const unwanted = Boolean(process.env.NODE_DISABLE_COMPILE_CACHE);
let ownFolder: string | undefined;
load('./main.js');

/** Runs a file of the program, or hands over one of Node's own modules. */
function load(name: string): unknown {
  if (!name.startsWith('./')) return require(name);
  const filename = __dirname + name.slice(1);
  const script = compiled(filename, `${process.version}-${process.arch}-${name.slice(2, -3)}.bin`);
  const module = { exports: {} };
  script.runInThisContext()(module.exports, load, module, filename, __dirname);
  return module.exports;
}

/** A file of the program, ready to run; `kept` is how its compiled code is called. */
function compiled(filename: string, kept: string): Script {
  // The build writes ASCII only, which takes half the room; Node has the shortest way for this encoding.
  const source = readFileSync(filename, 'utf8');
  if (unwanted) return new Script(source, { filename });
  const ofBuild = from(`${__dirname}/compiled/${kept}`, source, filename);
  if (ofBuild?.cachedDataRejected === false) return ofBuild;
  ownFolder ??= usersFolder();
  const path = ownFolder && `${ownFolder}/${kept}`;
  const script = from(path, source, filename) ?? ofBuild ?? new Script(source, { filename });
  // Other commands leave most of it uncompiled, and nobody waits for them by the hundred.
  if (path !== '' && script.cachedDataRejected !== false && process.argv[2] === 'check')
    toKeep.push({ path, script });
  return script;
}

/** From the compiled code in a file; undefined when there is none of this build. V8 may reject it: another's flags. */
function from(path: string, source: string, filename: string): Script | undefined {
  try {
    if (!existsSync(path)) return undefined;
    const bytes = readFileSync(path);
    if (bytes.toString('latin1', 0, thisBuild.length) !== thisBuild) return undefined;
    return new Script(source, { filename, cachedData: bytes.subarray(thisBuild.length) });
  } catch {
    return undefined;
  }
}

/** The user's own cache folder; empty where there is none, or where somebody else could write: it holds code. */
function usersFolder(): string {
  const { XDG_CACHE_HOME, LOCALAPPDATA, HOME } = process.env;
  const caches = XDG_CACHE_HOME || LOCALAPPDATA || (HOME && `${HOME}/.cache`);
  if (!caches) return '';
  try {
    const path = `${caches}/casebook`;
    const known = statSync(path, { throwIfNoEntry: false });
    if (known === undefined) {
      // Not with all that leads there: nobody's home is made here, and in some places Node would try without end.
      if (statSync(caches, { throwIfNoEntry: false }) === undefined) mkdirSync(caches, { mode: 0o700 });
      mkdirSync(path, { mode: 0o700 });
    }
    const { uid, mode } = known ?? statSync(path);
    const own = process.getuid === undefined || (uid === process.getuid() && (mode & 0o022) === 0);
    return own ? path : '';
  } catch {
    return '';
  }
}

/** Under another name first: two runs may end together, and none may read half a file. */
function write(path: string, data: Buffer): void {
  try {
    const unfinished = `${path}.${process.pid}`;
    writeFileSync(unfinished, thisBuild, { mode: 0o600 });
    appendFileSync(unfinished, data);
    renameSync(unfinished, path);
  } catch {
    // The next run compiles again.
  }
}
