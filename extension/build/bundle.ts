import { createHash } from 'node:crypto';
import { chmod, mkdir, readFile, rm, writeFile } from 'node:fs/promises';
import { basename, join } from 'node:path';
import { type BuildOptions, build, type Metafile } from 'esbuild';
import { catalogueInParts } from './catalogueInParts.ts';
import {
  type Exports,
  exportsOf,
  type LaterFiles,
  laterFile,
  programFrom,
  sharing,
  standIns,
  wrapped,
} from './laterFiles.ts';
import { severitiesAsTable } from './severitiesAsTable.ts';
import { vocabularyApart, writeVocabulary } from './vocabularyApart.ts';

/** What a plain check of a sound case does without. Each is a file of its own: reading them costs a cold start most. */
const later = [
  'extension/cli/report.ts',
  'extension/cli/new.ts',
  'extension/cli/importCapture.ts',
  'extension/cli/explain.ts',
  'extension/cli/decodeAnswers.ts',
  'extension/cli/help.ts',
  'extension/cli/recorded.ts',
  'extension/cli/casesByPattern.ts',
  'core/casefile/readYaml.ts',
  'core/casefile/schema.ts',
  'core/engine/air/airFunctions.ts',
  'core/engine/fuel/fuelFunctions.ts',
  'core/engine/sensors/sensorFunctions.ts',
  'core/engine/mechanical/mechanicalFunctions.ts',
  'core/engine/electrical/electricalFunctions.ts',
  'core/waveform/waveformFunctions.ts',
  'core/waveform/likeness.ts',
  'core/study/cells/capture.ts',
  'extension/disk/fileBeside.ts',
  'core/study/cells/obd.ts',
  'core/casefile/traps/trapsInText.ts',
  'core/casefile/decode.ts',
  'extension/cli/writeOutput.ts',
  'core/expression/foreignMarks.ts',
  'core/chart/chartFaults.ts',
  'extension/charts/drawChart.ts',
  'core/diagnostics/otherWords.ts',
  'core/diagnostics/pages.ts',
  'core/study/results.ts',
];

/**
 * The command line as it is shipped: a launcher, the program with its most frequent command, and what that needs later.
 * Targets Node 20, so that users need no particular Node. Returns what went into it.
 *
 * The form is chosen for a cold start. CommonJS, since Node starts it faster than modules; what most checks need in one
 * file, since each costs a search, and nothing else in it, since V8 looks through every letter of it.
 */
export async function bundleCommandLine(root: string, outdir: string): Promise<Metafile> {
  await rm(outdir, { recursive: true, force: true });
  await mkdir(outdir, { recursive: true });
  const common = optionsFor(root);
  if (new Set(later.map(laterFile)).size < later.length) throw new Error('Two later files have one name.');
  const files: LaterFiles = { root, later };
  const parts = catalogueInParts(root);
  const program = (given: Exports, write: boolean) =>
    build({
      ...common,
      write,
      metafile: true,
      stdin: { contents: programFrom('extension/cli/main.ts'), resolveDir: root },
      outfile: join(outdir, 'main.js'),
      plugins: [parts, standIns(files, given), severitiesAsTable, vocabularyApart],
    });
  const alone = await program(new Map(), false);
  const inMain = await exportsOf(root, Object.keys(alone.metafile.inputs));
  const shared = new Set<string>();
  const apart = await build({
    ...common,
    ...wrapped,
    metafile: true,
    entryPoints: later.map((module) => ({ in: module, out: basename(module, '.ts') })),
    outdir,
    plugins: [parts, sharing(files, inMain, shared), severitiesAsTable, vocabularyApart],
  });
  const main = await program(new Map([...inMain].filter(([module]) => shared.has(module))), true);
  writeVocabulary(outdir);
  const thisBuild = createHash('sha256');
  for (const file of ['main.js', ...later.map(laterFile)])
    thisBuild.update(await writeForLauncher(join(outdir, file)));
  const launcher = join(outdir, 'casebook.js');
  await build({
    ...common,
    entryPoints: ['extension/cli/launch.ts'],
    outfile: launcher,
    banner: { js: '#!/usr/bin/env node' },
    define: { thisBuild: JSON.stringify(thisBuild.digest('hex')) },
  });
  await chmod(launcher, 0o755);
  // The repository's own manifest says that its files are modules.
  await writeFile(join(outdir, 'package.json'), '{ "type": "commonjs" }\n');
  return {
    inputs: { ...apart.metafile.inputs, ...main.metafile.inputs },
    outputs: { ...apart.metafile.outputs, ...main.metafile.outputs },
  };
}

const optionsFor = (root: string): BuildOptions => ({
  absWorkingDir: root,
  bundle: true,
  format: 'cjs',
  platform: 'node',
  target: 'node20',
  // So that `import()` of another module becomes `require`, and runs it when it is asked for.
  supported: { 'dynamic-import': false },
  minify: true,
  legalComments: 'none',
  logLevel: 'warning',
  loader: { '.diag': 'text' },
  // CommonJS has no `import.meta`; who asks it for a place to `require` from may have the file's path instead.
  define: { 'import.meta.url': '__filename' },
  // The form for browsers is the same code as modules, of which only the needed parts are taken.
  alias: {
    yaml: join(root, 'node_modules/yaml/browser/dist/index.js'),
    // Node's own form looks for a canvas, which is not needed, and waits for it.
    'vega-canvas': join(root, 'node_modules/vega-canvas/build/vega-canvas.browser.js'),
  },
});

/**
 * Writes a file anew as the launcher reads it, and returns its text: a function as Node makes of a CommonJS module, in
 * ASCII. Regular expressions are the one place where the bundler leaves other letters as they are; escaped they mean the
 * same.
 */
async function writeForLauncher(file: string): Promise<string> {
  const text = `(function(exports,require,module,__filename,__dirname){${await readFile(file, 'utf8')}\n})`;
  const escaped = (unit: string): string => `\\u${unit.charCodeAt(0).toString(16).padStart(4, '0')}`;
  const ascii = text.replace(/[\u0080-\uFFFF]/g, escaped);
  await writeFile(file, ascii);
  return ascii;
}
