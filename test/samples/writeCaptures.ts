import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { sampleCaptures } from './sampleCaptures.ts';

/** Writes the samples' captures anew: `node test/samples/writeCaptures.ts`, after a change of a generator that is meant. */
const folder = join(import.meta.dirname, '..', '..', 'samples', 'captures');
mkdirSync(folder, { recursive: true });
for (const { file, text } of sampleCaptures) writeFileSync(join(folder, file), text());
