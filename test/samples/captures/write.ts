import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { captureFiles } from './captureFiles.ts';

/** `npm run captures` writes the samples' recordings anew. */
const folder = join(import.meta.dirname, '..', '..', '..', 'samples', 'captures');
mkdirSync(folder, { recursive: true });
for (const [name, text] of Object.entries(captureFiles)) writeFileSync(join(folder, name), text());
