import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { sampleLogs } from '../support/scanLog/sampleLogs.ts';

const folder = join(import.meta.dirname, '..', '..', 'samples', 'captures');

describe('the samples’ scan logs', () => {
  it.each([...sampleLogs])('%s is what its generator writes, and says that it is synthetic', (name, make) => {
    const text = readFileSync(join(folder, name), 'utf8');
    expect(text).toBe(make());
    expect(text.split(/\r?\n/)[0]).toContain('Synthetic');
  });

  it('are all there is of csv files', () => {
    const there = readdirSync(folder).filter((name) => sampleLogs.has(name));
    expect(there.sort()).toEqual([...sampleLogs.keys()].sort());
  });

  // Speed times pressure is the air that an engine takes, but for its volumetric efficiency, which differs little.
  it.each([
    ['van-14-before.csv', 2.4],
    ['van-14-after.csv', 2.4],
    ['pickup-5-climb.csv', 2.7],
  ])('%s holds air flows that an engine of its size can have', (name, litres) => {
    const text = readFileSync(join(folder, name), 'utf8');
    const fillings = text
      .split(/\r?\n/)
      .filter((line) => /^\d/.test(line))
      .map((line) => {
        const [, rpm = 0, map = 0, maf = 0] = (
          line.includes(';') ? line.replaceAll(',', '.').split(';') : line.split(',')
        ).map(Number);
        // Air at 36 °C: p/(R·T) with R = 287.05 J/(kg·K).
        return maf / ((((map * 1000) / (287.05 * 309)) * litres * rpm) / 120);
      });
    expect(fillings.length).toBeGreaterThan(250);
    expect(Math.min(...fillings)).toBeGreaterThan(0.4);
    expect(Math.max(...fillings)).toBeLessThan(1);
  });
});
