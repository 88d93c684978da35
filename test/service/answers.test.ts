import { describe, expect, it } from 'vitest';
import { hover } from '../../core/service/hover.ts';
import { inlayHints } from '../../core/service/inlayHints.ts';
import { symbols } from '../../core/service/symbols.ts';
import { tokens } from '../../core/service/tokens.ts';
import { atCursor, caseOf, words } from './cursor.ts';

const answers = `readings: Idle
as: idle
state: warm idle
obd: |
  7E8 04 41 0C 0B B8
  7E8 05 41 0B 2C 05 7B
  7E8 06 41 01 81 07 65 04
  7E8 04 43 01 01 71
`;

/** What the hover at `$0` is about, and what it says. */
function hoverAt(source: string): { readonly about: string; readonly says: string } | undefined {
  const { study, cell, offset } = atCursor(source);
  const found = hover(study, cell, offset);
  return found === undefined ? undefined : { about: words(study, cell, found.span), says: found.markdown };
}

describe('recorded answers in the editor', () => {
  it('show what a value’s bytes say, as a typed reading does', () => {
    const found = hoverAt(answers.replace('0B B8', '0B$0 B8'));
    expect(found?.about).toBe('0B B8');
    expect(found?.says).toContain('**`idle.rpm`** Engine speed');
    expect(found?.says).toContain('750.00 ± 0.13 rpm at warm idle');
    expect(found?.says).toContain('*Decoded from* `0B B8`');
    expect(found?.says).toContain('*Usual at warm idle:*');
    expect(hoverAt(answers.replace('05 7B', '05 7$0B'))?.says).toContain('Engine coolant temperature');
  });

  it('show all of a line where its header stands, and where bytes hold several things', () => {
    const line = hoverAt(answers.replace('7E8 05 41 0B', '7E$08 05 41 0B'));
    expect(line?.about).toBe('  7E8 05 41 0B 2C 05 7B');
    expect(line?.says.split('\n')).toEqual([
      expect.stringContaining('`map` Intake manifold pressure: 44.0 ± 0.5 kPa absolute'),
      expect.stringContaining('`ect`'),
    ]);
    const lamp = hoverAt(answers.replace('01 81', '01 8$01'))?.says;
    expect(lamp).toContain('`mil`');
    expect(lamp).toContain('`dtc_count`');
  });

  it('explain a code’s structure, in the bytes and in the header', () => {
    for (const source of [
      answers.replace('01 71', '01 7$01'),
      'diag: 1\ncase: A case\ncodes:\n  - P01$071\n',
      'diag: 1\ncase: A case\ncodes:\n  - {code: P01$071, status: pending}\n',
    ]) {
      const says = hoverAt(source)?.says;
      expect(says).toContain('`P0171, a trouble code`');
      expect(says).toContain('fuel and air metering');
    }
    expect(hoverAt('diag: 1\ncase: A case\ncodes:\n  - P0$0G71\n')?.says).not.toContain('a trouble code`');
  });

  it('lead from a name to its bytes, and stand in the outline one by one', () => {
    const outline = symbols(caseOf(answers), 1)[0]?.children ?? symbols(caseOf(answers), 1);
    const names = outline.map(({ name }) => name);
    expect(names).toContain('rpm');
    expect(names).toContain('mil');
    expect(names).toContain('dtc_count');
    expect(new Set(names).size).toBe(names.length);
  });

  it('say behind each line what it holds', () => {
    const study = caseOf(answers);
    const text = study.file.cells[1]?.raw.text ?? '';
    const lineOf = (offset: number): string => text.slice(0, offset).split('\n').at(-1)?.trim() ?? '';
    expect(inlayHints(study, 1).map(({ offset, text: says }) => [lineOf(offset), says])).toEqual([
      ['7E8 04 41 0C 0B B8', 'rpm 750.00 ± 0.13 rpm'],
      ['7E8 05 41 0B 2C 05 7B', 'map 44.0 ± 0.5 kPa absolute, ect 83.0 ± 0.5 °C'],
      ['7E8 06 41 01 81 07 65 04', 'mil on, dtc_count 1, misfire_monitor complete …'],
    ]);
    const first = text.indexOf('7E8 04');
    expect(inlayHints(study, 1, { start: first, end: first + 20 })).toHaveLength(1);
  });

  it('are coloured as text, a piece a line', () => {
    const study = caseOf(answers);
    const lines = tokens(study, 1).filter(({ type }) => type === 'text');
    expect(lines.map(({ span }) => words(study, 1, span))).toContain('7E8 04 41 0C 0B B8');
  });
});
