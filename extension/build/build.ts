import { join } from 'node:path';
import { bundleCommandLine } from './bundle.ts';
import { leaveCompiled } from './leaveCompiled.ts';
import { writeGrammar } from './writeGrammar.ts';
import { writeLanguagePage } from './writeLanguagePage.ts';
import { writeReference } from './writeReference.ts';
import { writeStrings } from './writeStrings.ts';

/** `npm run build`: everything that is shipped, into dist/, and for a quick start here the compiled code beside it. */
const root = join(import.meta.dirname, '..', '..');
writeGrammar(root);
writeLanguagePage(root);
writeReference(root);
writeStrings(root);
const dist = join(root, 'dist');
const { outputs } = await bundleCommandLine(root, dist);
const bytes = Object.values(outputs).reduce((sum, output) => sum + output.bytes, 0);
console.log(`Built dist/casebook.js: ${Object.keys(outputs).length} files, ${Math.ceil(bytes / 1024)} KiB.`);
console.log(`Its compiled code for Node ${leaveCompiled(root, dist).join(' and ')} stands in dist/compiled.`);
