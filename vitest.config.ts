import { join } from 'node:path';
import { defineConfig, type Plugin } from 'vitest/config';

/** Templates are imported as text, as in the bundle. */
const diagAsText: Plugin = {
  name: 'diag-as-text',
  enforce: 'pre',
  transform: (text, id) => (id.endsWith('.diag') ? `export default ${JSON.stringify(text)}` : undefined),
};

export default defineConfig({
  plugins: [diagAsText],
  test: {
    include: ['test/**/*.test.ts'],
    testTimeout: 30_000,
    // Some suites bundle the program first, which takes long where everything else runs at once.
    hookTimeout: 120_000,
    // What the command line keeps for its next start stays inside the repository.
    env: { XDG_CACHE_HOME: join(import.meta.dirname, 'out', 'cache') },
  },
});
