import { describe, expect, it } from 'vitest';
import { allParameters } from '../../core/engine/obd/parameterTable.ts';
import { parametersReference } from '../../core/report/markdown/reference/parametersReference.ts';

const page = parametersReference();

describe('the page of parameters', () => {
  it('has a row for every part of every parameter', () => {
    const rows = page.split('\n').filter((line) => line.startsWith('| $'));
    expect(rows).toHaveLength(allParameters().reduce((sum, { parts }) => sum + parts.length, 0));
  });

  /* As public copies of the standard's table write them. */
  it.each([
    '| $05 | 1 | Coolant temperature | A − 40 | -40 .. 215 | °C | `ect` | found |',
    '| $0C | 2 | Engine speed | (256 A + B) / 4 | 0 .. 16383.75 | rpm | `rpm` | found |',
    '| $06 | 1 | Short-term fuel trim, bank 1 | A × 100 / 128 − 100 | -100 .. 99.21875 | % | `stft_b1` | found |',
    '| $0A | 1 | Fuel pressure | A × 3 | 0 .. 765 | kPa gauge | `fuel_pressure` | found |',
    '| $12 | 1 | Secondary air | 01 upstream, 02 downstream, 04 off, 08 test |  |  | `air_status` | from memory |',
  ])('writes %s', (row) => {
    expect(page).toContain(`\n${row}\n`);
  });

  it('recomputes each formula to the ends of its range', () => {
    for (const line of page.split('\n').filter((each) => each.startsWith('| $') && / \.\. /.test(each))) {
      const [, , , formula = '', range = ''] = line.split(' | ').map((each) => each.trim());
      // The fuel rate's raw number is limited below what fits.
      if (formula.includes('complement') || line.startsWith('| $5E')) continue;
      const [low, high] = range.split(' .. ').map(Number);
      expect(computed(formula, 0), line).toBeCloseTo(low ?? Number.NaN, 2);
      expect(computed(formula, 255) / (high ?? Number.NaN), line).toBeCloseTo(1, 5);
    }
  });
});

/** A formula as it stands on the page, with the same number in every byte. */
function computed(formula: string, byte: number): number {
  const [, raw = '', times = '1', over = '1', sign = '+', plus = '0'] =
    /^(\([^)]*\)|[A-Z])(?: × (\d+))?(?: \/ (\d+))?(?: ([−+]) ([\d.]+))?$/.exec(formula) ??
    expect.fail(formula);
  const sum = raw
    .replace(/[()]/g, '')
    .split(' + ')
    .reduce((total, term) => total + Number(/^(\d+) /.exec(term)?.[1] ?? 1) * byte, 0);
  return (sum * Number(times)) / Number(over) + (sign === '−' ? -1 : 1) * Number(plus);
}
