import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { sampleLogs } from './sampleLogs.ts';

/** Writes the samples' scan logs anew: `node test/support/scanLog/writeSampleLogs.ts`. */
const folder = join(import.meta.dirname, '..', '..', '..', 'samples', 'captures');
mkdirSync(folder, { recursive: true });
for (const [name, make] of sampleLogs) writeFileSync(join(folder, name), make());
