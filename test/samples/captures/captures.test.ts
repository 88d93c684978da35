import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { captureFiles } from './captureFiles.ts';

const folder = join(import.meta.dirname, '..', '..', '..', 'samples', 'captures');

describe('the samples’ recordings of oxygen sensors (npm run captures writes them)', () => {
  it.each(Object.entries(captureFiles))(
    '%s is what its generator makes, is small, and says what it is',
    (name, text) => {
      const written = readFileSync(join(folder, name), 'utf8');
      expect(written === text()).toBe(true);
      expect(written.length).toBeLessThan(300_000);
      expect(written).toMatch(/^# Synthetic: /);
    },
  );
});
