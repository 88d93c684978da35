import { build, type Metafile } from 'esbuild';

/** The renderer of results as it is shipped: one module with nothing beside it. Returns what went into it. */
export async function bundleRenderer(root: string, outfile: string): Promise<Metafile> {
  const { metafile } = await build({
    absWorkingDir: root,
    entryPoints: ['extension/renderer/renderer.ts'],
    outfile,
    bundle: true,
    format: 'esm',
    platform: 'browser',
    target: 'es2022',
    minify: true,
    legalComments: 'none',
    metafile: true,
    logLevel: 'warning',
  });
  return metafile;
}
