import { chmod, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { build, type Metafile } from 'esbuild';

/**
 * The command line as it is shipped: a launcher, the program, and the parts that only some commands load.
 * Targets Node 20, so that users need no particular Node. Returns what went into it.
 */
export async function bundleCommandLine(root: string, outdir: string): Promise<Metafile> {
  await rm(outdir, { recursive: true, force: true });
  const { metafile } = await build({
    absWorkingDir: root,
    entryPoints: { main: 'extension/cli/main.ts' },
    outdir,
    bundle: true,
    // Code that one command needs stands behind `import()` and becomes a file of its own.
    splitting: true,
    chunkNames: 'parts/[name]-[hash]',
    format: 'esm',
    platform: 'node',
    target: 'node20',
    minify: true,
    legalComments: 'none',
    loader: { '.diag': 'text' },
    // A package that is still CommonJS inside asks for Node's own modules by `require`.
    banner: {
      js: "import{createRequire as $require}from'node:module';const require=$require(import.meta.url);",
    },
    metafile: true,
    logLevel: 'warning',
  });
  const launcherFile = join(outdir, 'casebook.js');
  await writeFile(launcherFile, launcher);
  await chmod(launcherFile, 0o755);
  return metafile;
}

/**
 * Where Node keeps compiled code between runs (Node 22.1 and later), it must be told before the program is loaded.
 * Hence a file of its own that imports nothing else.
 */
const launcher = `#!/usr/bin/env node
import * as module from 'node:module';
module.enableCompileCache?.();
await import('./main.js');
`;
