import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { sampleLogs } from '../../support/scanLog/sampleLogs.ts';
import { sampleCaptures } from '../sampleCaptures.ts';
import { captureFiles } from './captureFiles.ts';

/** `npm run captures` writes all recordings of the samples anew, after a change of a generator that is meant. */
const folder = join(import.meta.dirname, '..', '..', '..', 'samples', 'captures');
mkdirSync(folder, { recursive: true });
const writers: readonly (readonly [string, () => string])[] = [
  ...Object.entries(captureFiles),
  ...sampleCaptures.map(({ file, text }) => [file, text] as const),
  ...sampleLogs,
];
for (const [name, text] of writers) writeFileSync(join(folder, name), text());
console.log(`Wrote ${writers.length} recordings.`);
