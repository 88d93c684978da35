import { join } from 'node:path';
import { bundleCommandLine } from './bundle.ts';
import { writeGrammar } from './writeGrammar.ts';
import { writeLanguagePage } from './writeLanguagePage.ts';
import { writeReference } from './writeReference.ts';
import { writeStrings } from './writeStrings.ts';

/** `npm run build`: everything that is shipped, into dist/. */
const root = join(import.meta.dirname, '..', '..');
writeGrammar(root);
writeLanguagePage(root);
writeReference(root);
writeStrings(root);
const { outputs } = await bundleCommandLine(root, join(root, 'dist'));
const bytes = Object.values(outputs).reduce((sum, output) => sum + output.bytes, 0);
console.log(`Built dist/casebook.js: ${Object.keys(outputs).length} files, ${Math.ceil(bytes / 1024)} KiB.`);
