import { spawnSync } from 'node:child_process';
import { basename, join } from 'node:path';
import { globSync } from 'tinyglobby';

/**
 * `npm run bench`, or `npm run bench -- quantity` for one: each benchmark in a process of its own,
 * so that none warms up or clutters another. Ends with a status other than 0 when a bound is exceeded.
 */
const wanted = process.argv.slice(2);
const files = globSync('*.bench.ts', { cwd: import.meta.dirname })
  .filter((file) => wanted.length === 0 || wanted.includes(basename(file, '.bench.ts')))
  .sort();
const over = files.filter((file) => {
  const { status } = spawnSync(process.execPath, ['--expose-gc', join(import.meta.dirname, file)], {
    stdio: 'inherit',
  });
  return status !== 0;
});
if (files.length === 0) console.error(`There is no benchmark named ${wanted.join(' or ')}.`);
else console.log(over.length === 0 ? '\nAll bounds are kept.' : `\nOver a bound: ${over.join(', ')}`);
process.exitCode = files.length > 0 && over.length === 0 ? 0 : 1;
