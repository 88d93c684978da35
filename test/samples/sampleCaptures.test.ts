import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { sampleCaptures } from './sampleCaptures.ts';

const folder = join(import.meta.dirname, '..', '..', 'samples', 'captures');

describe('the captures beside the samples', () => {
  it.each(sampleCaptures)('$file is what the generator writes, and small', ({ file, text }) => {
    const written = readFileSync(join(folder, file), 'utf8');
    expect(written === text()).toBe(true);
    expect(written.length).toBeLessThan(300_000);
  });
});
