import { chmod, mkdir, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { build, type Metafile, type Plugin } from 'esbuild';

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
  const { metafile } = await build({
    absWorkingDir: root,
    entryPoints: ['main', ...ownFiles].map((name) => `extension/cli/${name}.ts`),
    outdir,
    bundle: true,
    format: 'cjs',
    platform: 'node',
    target: 'node20',
    // So that `import()` of another file becomes `require`.
    supported: { 'dynamic-import': false },
    minify: true,
    legalComments: 'none',
    loader: { '.diag': 'text' },
    // The form for browsers is the same code as modules, of which only the needed parts are taken.
    alias: { yaml: join(root, 'node_modules/yaml/browser/dist/index.js') },
    plugins: [commandsApart],
    metafile: true,
    logLevel: 'warning',
  });
  // The repository's own manifest says that its files are modules.
  await writeFile(join(outdir, 'package.json'), '{ "type": "commonjs" }\n');
  const launcherFile = join(outdir, 'casebook.js');
  await writeFile(launcherFile, launcher);
  await chmod(launcherFile, 0o755);
  return metafile;
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

/** Node keeps compiled code between runs (Node 22.1 and later), but only of what is loaded after it was asked to. */
const launcher = `#!/usr/bin/env node
require('node:module').enableCompileCache?.();
require('./main.js');
`;
