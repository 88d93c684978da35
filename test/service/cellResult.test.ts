import { describe, expect, it } from 'vitest';
import { blockAsMarkdown } from '../../core/report/markdown/blocks.ts';
import { writeMarkdown } from '../../core/report/markdown/report.ts';
import { checkCase } from '../../core/rules/checkCase.ts';
import { cellResult } from '../../core/service/cellResult.ts';
import { samples } from '../support/samples.ts';
import { caseOf } from './cursor.ts';
import { loads } from './loads.ts';

const loadsCase = caseOf(loads);

const plenum = samples.get('plenum-leak.diag') ?? '';
/** A reading, a limit, a title and a remark. */
const edits: readonly (readonly [string, string])[] = [
  ['map: 29.8', 'map: 28.2'],
  ['within 0.5 inHg of station', 'within 3 inHg of station'],
  ['Vacuum gauge at idle', 'The gauge at idle'],
  ['ltft_b1   +17', 'ltft_b1   +3'],
];

describe('a cell’s result', () => {
  it('shows readings in both units', () => {
    const { blocks, kind, title } = cellResult(caseOf('readings: Gauge\nvalues:\n  ect: 80 °C\n'), 1);
    expect({ kind, title }).toEqual({ kind: 'readings', title: 'Gauge' });
    expect(blocks).toMatchObject([
      {
        kind: 'table',
        rows: [
          {
            key: 'ect',
            unit: '°C',
            figures: [{ number: '80' }],
            other: { unit: '°F', figures: [{ number: '176' }] },
          },
        ],
      },
    ]);
  });

  it('leaves the other unit out for a reader who prefers the one that is written', () => {
    const study = caseOf('readings: Gauge\nvalues:\n  ect: 80 °C\n  map: 13 inHg\n');
    const others = (units: 'metric' | 'US'): unknown =>
      cellResult(study, 1, units).blocks.flatMap((each) =>
        each.kind === 'table' ? each.rows.map((row) => row.other?.unit) : [],
      );
    expect(others('metric')).toEqual([undefined, 'kPa']);
    expect(others('US')).toEqual(['°F', undefined]);
  });

  it('shows computed names, verdicts and the status in a line', () => {
    const { blocks, status } = cellResult(loadsCase, 4);
    expect(blocks.map((each) => each.kind)).toEqual(['table', 'verdict', 'verdict']);
    expect(status).toMatchObject({ text: 'both hold', sign: '✓', severity: undefined, first: undefined });
  });

  it('says the failures, the announced ones as such, and where the first is', () => {
    const failing = 'check: A\nlet:\n  a: 3\nexpect:\n  - a > 1\n  - a > 5\n  - a > 6\n';
    const { status } = cellResult(caseOf(failing), 1);
    expect(status).toMatchObject({ text: '1 of 3 hold, 2 fail', sign: '✗' });
    expect(failing.slice(status?.first?.start, status?.first?.end)).toBe('a > 5');
    expect(status?.says).toContain('a > 5: 3, 2 below the limit of 5: fails.');
    expect(cellResult(caseOf('check: A\nshows: fault\nexpect:\n  - 1 > 5\n'), 1).status?.text).toBe(
      'fails as announced',
    );
  });

  it('counts errors, and goes to the first', () => {
    const text = 'readings: A\nvalues:\n  ecct: 80 °C\n  map: 101 inHg\n';
    const { status, blocks } = cellResult(caseOf(text), 1);
    expect(status).toMatchObject({ sign: '✗', severity: 'error' });
    expect(status?.text).toMatch(/^\d errors?/);
    expect(text.slice(status?.first?.start, status?.first?.end)).toBe('ecct');
    const findings = blocks.flatMap((each) =>
      each.kind === 'finding' ? [`${each.line}:${each.column} ${each.code}`] : [],
    );
    expect(findings).toContain('3:3 unknown-signal');
  });

  it('puts errors and warnings before the results, and notes behind them, counted', () => {
    const text =
      'check: A\nshows: fault\nlet:\n  much: 30 psi\n  map: 3\nexpect:\n  - before.idle.ltft_b1 < 30 %\n  - 1 > 5\n';
    const study = checkCase(
      `diag: 1\ncase: Idle\n---\nreadings: Loads\nas: before\nstates:\n  idle: warm idle\n  drive: cruise\ntable: |\n  reading  idle  drive  unit\n  rpm      780   2240   rpm\n  iac      3     20     %\n  stft_b1  +8    +1     %\n  ltft_b1  +17   +3     %\n  mpa      13    17     inHg\n---\n${text}`,
    );
    const { blocks, status } = cellResult(study, 1);
    const kinds = blocks.map((each) => (each.kind === 'finding' ? each.severity : each.kind));
    expect(kinds).toEqual(['caution', 'caution', 'error', 'table', 'info', 'info']);
    expect(status?.text).toBe('1 error, 2 notes');
    const check = cellResult(study, 2);
    expect(check.status?.text).toBe('1 error, 1 of 2 hold, 1 fails as announced');
    expect(text.slice(check.status?.first?.start, check.status?.first?.end)).toBe('map');
  });

  it('shows suspects with what speaks for and against them, and what to measure next', () => {
    const { blocks, status } = cellResult(loadsCase, 5);
    expect(blocks.map((each) => each.kind)).toEqual(['suspect']);
    expect(status?.text).toBe('0 of 1 still possible');
  });

  it('draws what is unusual beside the reading, and does not say it twice', () => {
    const { blocks, status } = cellResult(
      caseOf('readings: A\nstate: warm idle\nvalues:\n  vacuum: 12 inHg\n'),
      1,
    );
    expect(blocks.flatMap((each) => (each.kind === 'finding' ? [each.code] : []))).toEqual([]);
    expect(
      blocks.flatMap((each) => (each.kind === 'table' ? each.rows.flatMap((row) => row.strips) : [])),
    ).toHaveLength(1);
    expect(status).toBeUndefined();
  });

  it('is empty for notes, and for a header in order', () => {
    const study = caseOf('note: |\n  Words.\n');
    for (const cell of [0, 1]) {
      expect(cellResult(study, cell)).toMatchObject({ blocks: [], markdown: '', status: undefined });
    }
  });

  it('shows why a cell could not be read', () => {
    const { kind, blocks, status } = cellResult(caseOf('readings: A\nvalues:\n  map: 13 inHg\n  re\n'), 1);
    expect(kind).toBe('unread');
    expect(blocks.map((each) => each.kind)).toEqual(['finding']);
    expect(status).toMatchObject({ text: '1 error', sign: '✗' });
  });

  it('gives each caution in full once, and at a further cell that brings it points back', () => {
    const study = caseOf(
      'readings: A\nvalues:\n  fuel_pressure: 45 psi\n---\nreadings: B\nvalues:\n  fuel_pressure: 44 psi\n',
    );
    const cautions = (cell: number) =>
      cellResult(study, cell).blocks.flatMap((each) =>
        each.kind === 'caution' ? [each.title] : each.kind === 'paragraph' ? [blockAsMarkdown(each, 2)] : [],
      );
    expect(cautions(1)).toEqual(['Fuel under pressure']);
    expect(cautions(2)).toEqual(['*Caution, as before:* **Fuel under pressure** (see “A”).']);
  });

  it('that points back follows the title that it points to', () => {
    const text =
      'diag: 1\n---\nreadings: A\nvalues:\n  fuel_pressure: 45 psi\n---\nreadings: B\nvalues:\n  fuel_pressure: 44 psi\n';
    const study = checkCase(text);
    expect(cellResult(study, 2).markdown).toContain('“A”');
    const renamed = checkCase(text.replace('readings: A', 'readings: At idle'), study);
    expect(cellResult(renamed, 2).markdown).toContain('“At idle”');
  });

  it('says what the report says, in every sample', () => {
    for (const [name, text] of samples) {
      const study = checkCase(text);
      const report = writeMarkdown({ study, file: name, pictures: () => undefined });
      study.file.cells.forEach((_, index) => {
        for (const block of cellResult(study, index).blocks) {
          if (
            block.kind === 'table' ||
            block.kind === 'verdict' ||
            block.kind === 'suspect' ||
            block.kind === 'caution' ||
            (block.kind === 'paragraph' && block.lead === 'Caution, as before')
          ) {
            expect(report, name).toContain(blockAsMarkdown(block, 2));
          }
        }
      });
    }
  });

  it('is the same object while nothing that it shows has changed, and what a fresh study gives when it has', () => {
    let study = checkCase(plenum);
    let last = study.file.cells.map((_, index) => cellResult(study, index));
    for (const [from, to] of edits) {
      study = checkCase(study.text.replace(from, to), study);
      const fresh = checkCase(study.text);
      const now = study.file.cells.map((_, index) => cellResult(study, index));
      expect(now).toEqual(fresh.file.cells.map((_, index) => cellResult(fresh, index)));
      const same = now.filter((each, index) => each === last[index]).length;
      expect(same).toBeGreaterThan(now.length / 2);
      expect(same).toBeLessThan(now.length);
      last = now;
    }
  });

  it('is plain JSON', () => {
    for (const text of samples.values()) {
      const study = checkCase(text);
      study.file.cells.forEach((_, index) => {
        const result = cellResult(study, index);
        expect(JSON.parse(JSON.stringify(result))).toEqual(result);
      });
    }
  });
});
