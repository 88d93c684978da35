import { readFileSync } from 'node:fs';
import { basename, join, relative, sep } from 'node:path';
import { build, type Plugin, type PluginBuild } from 'esbuild';

/**
 * Modules of the command line that become files of their own, read when one of their functions is first called.
 * The program has a stand-in for each, with the same functions. What such a file shares with the program it takes from
 * there, so that nothing is read twice and there is one of everything.
 */
export interface LaterFiles {
  readonly root: string;
  /** Paths from the root, with `/`. */
  readonly later: readonly string[];
}

/** Modules by their path from the root, each with the names of what it exports; in a fixed order. */
export type Exports = ReadonlyMap<string, readonly string[]>;

/** The file in which a module comes: `core/casefile/readYaml.ts` in `readYaml.js`. */
export const laterFile = (module: string): string => `${basename(module, '.ts')}.js`;

/** Around a later file: it is given the function that hands over the program's own modules. */
export const wrapped = {
  banner: { js: 'module.exports=shared=>{const module={exports:{}},exports=module.exports;' },
  footer: { js: 'return module.exports};' },
};

/** What starts the program: first what the later files will ask for, then the `entry` itself. */
export const programFrom = (entry: string): string => `import 'given:'; import './${entry}';`;

/** In the program: stand-ins for the later files, and `given` to them what they share with it. */
export function standIns({ root, later }: LaterFiles, given: Exports): Plugin {
  return {
    name: 'stand-ins',
    setup(build) {
      resolveModules(build, root, (module) => (later.includes(module) ? 'stand-in' : undefined));
      answerStandIns(build, root);
      build.onLoad({ filter: /.*/, namespace: 'shared' }, () => ({
        contents: `let all;
          export const give = (given) => { all = given; };
          export const shared = (name) => all(name);`,
      }));
      build.onLoad({ filter: /.*/, namespace: 'given' }, () => ({
        contents: handingOver(given),
        resolveDir: root,
      }));
    },
  };
}

/**
 * Hands over modules by their path. Their names are written out, so that the bundler can lay all modules side by side:
 * as objects it would wrap each into a function of its own, and a start would call hundreds.
 */
function handingOver(given: Exports): string {
  const modules = [...given].map(([module, names], at) => ({ module, names, own: `m${at}_` }));
  const imported = modules.map(({ module, names, own }) => {
    const list = names.map((name) => `${name} as ${own}${name}`);
    return `import { ${list.join(', ')} } from './${module}';`;
  });
  const cases = modules.map(({ module, names, own }) => {
    const list = names.map((name) => `${name}: ${own}${name}`);
    return `case '${module}': return { ${list.join(', ')} };`;
  });
  return `import { give } from 'shared:';
    ${imported.join('\n')}
    give((name) => { switch (name) { ${cases.join('\n')} } });`;
}

/** In the later files: what is `inMain` is asked for there, and noted in `asked`. */
export function sharing({ root, later }: LaterFiles, inMain: Exports, asked: Set<string>): Plugin {
  return {
    name: 'sharing',
    setup(build) {
      resolveModules(build, root, (each) => {
        if (later.includes(each)) return 'stand-in';
        return inMain.has(each) ? 'main' : undefined;
      });
      answerStandIns(build, root);
      build.onLoad({ filter: /.*/, namespace: 'main' }, ({ path }) => {
        asked.add(path);
        const names = inMain.get(path) ?? [];
        return { contents: `export const { ${names.join(', ')} } = shared(${JSON.stringify(path)});` };
      });
      build.onLoad({ filter: /.*/, namespace: 'shared' }, () => ({
        contents: 'const given = shared; export { given as shared };',
      }));
    },
  };
}

/** The modules among these inputs of a build that are our own and export something, with what they export. */
export async function exportsOf(root: string, inputs: readonly string[]): Promise<Exports> {
  const modules = inputs.filter((each) => /^(core|extension)\/.*\.ts$/.test(each)).sort();
  const { metafile } = await build({
    absWorkingDir: root,
    entryPoints: modules,
    outdir: '.',
    outbase: '.',
    format: 'esm',
    write: false,
    metafile: true,
  });
  const found = new Map<string, readonly string[]>();
  for (const { entryPoint, exports } of Object.values(metafile.outputs))
    if (entryPoint !== undefined && exports.length > 0) found.set(entryPoint, exports);
  return new Map([...found].sort(([a], [b]) => (a < b ? -1 : 1)));
}

/** Sends a module to a namespace by its path from the root. */
function resolveModules(
  build: PluginBuild,
  root: string,
  place: (module: string) => 'stand-in' | 'main' | undefined,
): void {
  build.onResolve({ filter: /.*/ }, async ({ path, kind, importer, resolveDir, pluginData, namespace }) => {
    if (kind === 'entry-point' || pluginData === resolving) return undefined;
    if (path === 'shared:' || path === 'given:') return { path, namespace: path.slice(0, -1) };
    if (namespace === 'stand-in' && kind === 'require-call') return { path, external: true };
    const found = await build.resolve(path, { kind, importer, resolveDir, pluginData: resolving });
    if (found.errors.length > 0 || found.external) return found;
    const module = relative(root, found.path).split(sep).join('/');
    const to = place(module);
    return to === undefined ? found : { path: module, namespace: to };
  });
}

/** Marks a search of our own, which the plugin must leave alone. */
const resolving = Symbol('resolving');

function answerStandIns(build: PluginBuild, root: string): void {
  build.onLoad({ filter: /.*/, namespace: 'stand-in' }, ({ path }) => ({
    contents: `import { shared } from 'shared:';
      let file;
      const load = () => (file ??= require('./${laterFile(path)}')(shared));
      ${functionsOf(join(root, path))
        .map((name) => `export function ${name}(...given) { return load().${name}(...given); }`)
        .join('\n')}`,
    resolveDir: root,
  }));
}

/** The functions that a module exports. Nothing else can have a stand-in. */
function functionsOf(file: string): readonly string[] {
  const source = readFileSync(file, 'utf8');
  const functions = [...source.matchAll(/^export (?:async )?function (\w+)/gm)].map(
    (match) => match[1] ?? '',
  );
  const other = /^export (?!(?:async )?function |type |interface )/m.exec(source);
  if (functions.length === 0 || other !== null)
    throw new Error(`${file} must export functions, and nothing else, to be read later.`);
  return functions;
}
