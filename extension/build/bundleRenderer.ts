import { dirname, join } from 'node:path';
import { type BuildOptions, build, type Metafile, type Plugin } from 'esbuild';

/**
 * The renderer of results as it is shipped: one module, and one beside it that draws charts and is read when the first
 * one is shown. Returns what went into both.
 */
export async function bundleRenderer(root: string, outfile: string): Promise<Metafile> {
  const common: BuildOptions = {
    absWorkingDir: root,
    bundle: true,
    format: 'esm',
    platform: 'browser',
    target: 'es2022',
    minify: true,
    legalComments: 'none',
    logLevel: 'warning',
  };
  const [renderer, chart] = await Promise.all([
    build({
      ...common,
      metafile: true,
      entryPoints: ['extension/renderer/renderer.ts'],
      outfile,
      plugins: [chartsApart],
    }),
    build({
      ...common,
      metafile: true,
      entryPoints: ['extension/renderer/chart/showChart.ts'],
      outfile: join(dirname(outfile), 'chart.js'),
    }),
  ]);
  return {
    inputs: { ...renderer.metafile.inputs, ...chart.metafile.inputs },
    outputs: { ...renderer.metafile.outputs, ...chart.metafile.outputs },
  };
}

const chartsApart: Plugin = {
  name: 'charts-apart',
  setup({ onResolve }) {
    onResolve({ filter: /^\.\/chart\/showChart\.ts$/ }, ({ kind }) =>
      kind === 'dynamic-import' ? { path: './chart.js', external: true } : undefined,
    );
  },
};
