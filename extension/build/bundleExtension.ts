import { join } from 'node:path';
import { type BuildOptions, build, type Metafile, type Plugin } from 'esbuild';
import { bundleRenderer } from './bundleRenderer.ts';

/**
 * The extension as it is shipped, each part a single file: the client for a desktop and for a browser,
 * the language server as a process and as a worker, and the renderer of results.
 * Targets what the oldest editor of the manifest carries. Returns what went into all of them.
 */
export async function bundleExtension(root: string, outdir: string): Promise<Metafile> {
  const metafiles = await Promise.all([
    bundleRenderer(root, join(outdir, 'renderer.js')),
    ...parts.map(async ({ entry, file, options }) => {
      const built = await build({
        absWorkingDir: root,
        entryPoints: [entry],
        outfile: join(outdir, file),
        bundle: true,
        minify: true,
        legalComments: 'none',
        logLevel: 'warning',
        loader: { '.diag': 'text' },
        // The form for browsers is the same code as modules, of which only the needed parts are taken.
        alias: {
          yaml: join(root, 'node_modules/yaml/browser/dist/index.js'),
          // Node's own form looks for a canvas, which is not needed, and waits for it.
          'vega-canvas': join(root, 'node_modules/vega-canvas/build/vega-canvas.browser.js'),
        },
        ...options,
        metafile: true,
      });
      return built.metafile;
    }),
  ]);
  return {
    inputs: Object.assign({}, ...metafiles.map(({ inputs }) => inputs)),
    outputs: Object.assign({}, ...metafiles.map(({ outputs }) => outputs)),
  };
}

interface Part {
  readonly entry: string;
  readonly file: string;
  readonly options: BuildOptions;
}

/** What draws charts is a file of its own beside the server, so that a start does not look through it. */
const chartsApart: Plugin = {
  name: 'charts-apart',
  setup({ onResolve }) {
    onResolve({ filter: /^\.\/charts\.ts$/ }, ({ kind }) =>
      kind === 'dynamic-import' ? { path: './charts.cjs', external: true } : undefined,
    );
  },
};

const inNode: BuildOptions = { platform: 'node', format: 'cjs', target: 'node20', external: ['vscode'] };

const parts: readonly Part[] = [
  { entry: 'extension/client/node.ts', file: 'client.cjs', options: inNode },
  { entry: 'extension/server/node.ts', file: 'server.cjs', options: { ...inNode, plugins: [chartsApart] } },
  { entry: 'extension/server/charts.ts', file: 'charts.cjs', options: inNode },
  {
    entry: 'extension/client/browser.ts',
    file: 'client.browser.js',
    options: { platform: 'browser', format: 'cjs', target: 'es2022', external: ['vscode'] },
  },
  {
    entry: 'extension/server/worker.ts',
    file: 'server.worker.js',
    options: { platform: 'browser', format: 'iife', target: 'es2022' },
  },
];
