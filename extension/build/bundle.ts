import { createHash } from 'node:crypto';
import { chmod, mkdir, readFile, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { type BuildOptions, build, type Metafile, type Plugin } from 'esbuild';

/** Commands that become files of their own: a check, the most frequent one, does not pay for reading them. */
const ownFiles = ['report', 'new', 'explain'];

/**
 * The command line as it is shipped: a launcher, the program with its most frequent command, and the other commands.
 * Targets Node 20, so that users need no particular Node. Returns what went into it.
 *
 * The form is chosen for a cold start. CommonJS, since Node starts it faster than modules; few files,
 * since each costs a search; inside a file, what stands behind `import()` runs only when it is asked for.
 */
export async function bundleCommandLine(root: string, outdir: string): Promise<Metafile> {
  await rm(outdir, { recursive: true, force: true });
  await mkdir(outdir, { recursive: true });
  const common: BuildOptions = {
    absWorkingDir: root,
    bundle: true,
    format: 'cjs',
    platform: 'node',
    target: 'node20',
    // So that `import()` of another file becomes `require`.
    supported: { 'dynamic-import': false },
    minify: true,
    legalComments: 'none',
    logLevel: 'warning',
    // CommonJS has no `import.meta`; who asks it for a place to `require` from may have the file's path instead.
    define: { 'import.meta.url': '__filename' },
  };
  const { metafile } = await build({
    ...common,
    metafile: true,
    entryPoints: ['main', ...ownFiles].map((name) => `extension/cli/${name}.ts`),
    outdir,
    loader: { '.diag': 'text' },
    // The form for browsers is the same code as modules, of which only the needed parts are taken.
    alias: { yaml: join(root, 'node_modules/yaml/browser/dist/index.js') },
    plugins: [commandsApart],
  });
  await writeInAscii(join(outdir, 'main.js'));
  const launcher = join(outdir, 'casebook.js');
  const mainId = createHash('sha256')
    .update(await readFile(join(outdir, 'main.js')))
    .digest('hex');
  await build({
    ...common,
    entryPoints: ['extension/cli/launch.ts'],
    outfile: launcher,
    banner: { js: '#!/usr/bin/env node' },
    define: { mainId: JSON.stringify(mainId) },
  });
  await chmod(launcher, 0o755);
  // The repository's own manifest says that its files are modules.
  await writeFile(join(outdir, 'package.json'), '{ "type": "commonjs" }\n');
  return metafile;
}

/** Regular expressions are the one place where the bundler leaves other letters as they are; escaped they mean the same. */
async function writeInAscii(file: string): Promise<void> {
  const text = await readFile(file, 'utf8');
  const escaped = (unit: string): string => `\\u${unit.charCodeAt(0).toString(16).padStart(4, '0')}`;
  await writeFile(file, text.replace(/[\u0080-\uFFFF]/g, escaped));
}

/** Leaves the program's `import()` of a command that has its own file as it is, pointing at that file. */
const commandsApart: Plugin = {
  name: 'commands-apart',
  setup({ onResolve }) {
    onResolve({ filter: new RegExp(`^\\./(${ownFiles.join('|')})\\.ts$`) }, ({ path, kind }) =>
      kind === 'dynamic-import' ? { path: path.replace(/\.ts$/, '.js'), external: true } : undefined,
    );
  },
};
