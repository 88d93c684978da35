import { describe, expect, it } from 'vitest';
import { checkCase } from '../../core/rules/checkCase.ts';
import { fixes } from '../../core/service/fixes.ts';
import { tokens } from '../../core/service/tokens.ts';
import type { CodeFix } from '../../core/service/types.ts';
import { caseResult } from '../../core/study/results.ts';
import type { Study } from '../../core/study/types.ts';
import { applyEdits } from '../../core/text/edits.ts';
import { samples } from '../support/samples.ts';
import { atCursor } from './cursor.ts';

interface Offered {
  readonly text: string;
  readonly offers: readonly CodeFix[];
  readonly after: (offer: CodeFix) => string;
}

/** The file after an offer is taken. */
function inFile(study: Study, { edits }: CodeFix): string {
  const moved = edits.flatMap(({ cell, edits: inCell }) => {
    const start = study.file.stream.starts[cell] ?? 0;
    return inCell.map((each) => ({
      ...each,
      span: { start: each.span.start + start, end: each.span.end + start },
    }));
  });
  return applyEdits(study.text, moved);
}

function offersAt(source: string): Offered {
  const { study, cell, offset, text } = atCursor(source);
  const after = (offer: CodeFix): string => inFile(study, offer);
  return { text, offers: fixes(study, cell, { start: offset, end: offset }), after };
}

/** Taking the offer at `$0` turns the case into `after`, without a new error. */
function checkFix(source: string, title: string, after: string): void {
  const { text, offers, after: taken } = offersAt(source);
  const offer = offers.find((each) => each.title === title);
  expect(offers.map((each) => each.title)).toContain(title);
  if (offer === undefined) return;
  const result = taken(offer);
  expect(result.slice(result.indexOf('---\n') + 4)).toBe(after.replace(/^\n/, ''));
  expect(errorsIn(result)).toBeLessThanOrEqual(errorsIn(text));
}

function checkNone(source: string, kind: CodeFix['kind']): void {
  expect(offersAt(source).offers.filter((each) => each.kind === kind)).toEqual([]);
}

const errorsIn = (text: string): number =>
  checkCase(text).findings.filter(({ diagnostic }) => diagnostic.severity === 'error').length;

describe('fixes of what is wrong', () => {
  it('changes the unit that slipped', () => {
    checkFix(
      'readings: A\nvalues:\n  map: 101$0 inHg\n',
      'Write `kPa`',
      'readings: A\nvalues:\n  map: 101 kPa\n',
    );
  });

  it('writes the nearest name, key, word, tool and state', () => {
    checkFix(
      'readings: A\nvalues:\n  $0ecct: 80 °C\n',
      'Write `ect`',
      'readings: A\nvalues:\n  ect: 80 °C\n',
    );
    checkFix(
      'readings: A\nwhen: befo$0r\nvalues:\n  rpm: 700 rpm\n',
      'Write `before`',
      'readings: A\nwhen: before\nvalues:\n  rpm: 700 rpm\n',
    );
    checkFix(
      'readings: A\ntool: guage$0\nvalues:\n  rpm: 700 rpm\n',
      'Write `gauge`',
      'readings: A\ntool: gauge\nvalues:\n  rpm: 700 rpm\n',
    );
    checkFix(
      'check: A\nlet:\n  total: 1\nexpect:\n  - tota$0 > 0\n',
      'Write `total`',
      'check: A\nlet:\n  total: 1\nexpect:\n  - total > 0\n',
    );
    checkFix(
      'readings: A\nvaules$0:\n  rpm: 700 rpm\n',
      'Write `values`',
      'readings: A\nvalues:\n  rpm: 700 rpm\n',
    );
  });

  it('writes a decimal comma as a point', () => {
    const { offers, after } = offersAt('readings: A\nvalues:\n  map: 13,1$0 inHg\n');
    const [offer] = offers;
    expect(offer?.kind).toBe('fix');
    expect(offer === undefined ? '' : after(offer)).toContain('map: 13.1 inHg\n');
  });

  it('offers the only fix as the preferred one, with its diagnostic', () => {
    const [offer] = offersAt('readings: A\nvalues:\n  map: 101$0 inHg\n').offers;
    expect(offer?.preferred).toBe(true);
    expect(offer?.diagnostics.map((each) => each.code)).toEqual(['unit-slip']);
  });
});

describe('convert a value to another unit', () => {
  // 1 psi is 6.894757 kPa, 1 inHg is 3.386389 kPa (NIST SP 811, B.8); °F = °C × 1.8 + 32.
  it('writes a reading in the other unit, with its ± and its qualifier', () => {
    checkFix(
      'readings: A\nvalues:\n  map: 13$0.1 ± 0.2 inHg # seen\n',
      'Write it as 44.36 ± 0.68 kPa',
      'readings: A\nvalues:\n  map: 44.36 ± 0.68 kPa # seen\n',
    );
    checkFix(
      'readings: A\nvalues:\n  fuel_pressure: 4$05 psi gauge\n',
      'Write it as 310.3 kPa gauge',
      'readings: A\nvalues:\n  fuel_pressure: 310.3 kPa gauge\n',
    );
    checkFix(
      'readings: A\nvalues:\n  ect: 8$00 °C\n',
      'Write it as 176 °F',
      'readings: A\nvalues:\n  ect: 176 °F\n',
    );
  });

  it('writes ranges, limits, members of maps and header values', () => {
    checkFix(
      'reference: A\nvalues:\n  vacuum: 17 .$0. 21 inHg\n',
      'Write it as 57.57 .. 71.11 kPa',
      'reference: A\nvalues:\n  vacuum: 57.57 .. 71.11 kPa\n',
    );
    checkFix(
      'reference: A\nvalues:\n  back_pressure: at most 1.$05 psi\n',
      'Write it as at most 10.34 kPa',
      'reference: A\nvalues:\n  back_pressure: at most 10.34 kPa\n',
    );
    checkFix(
      'readings: A\nvalues:\n  compression: {1: 181 psi, 2: 17$08 psi}\n',
      'Write it as 1227 kPa',
      'readings: A\nvalues:\n  compression: {1: 181 psi, 2: 1227 kPa}\n',
    );
  });

  it('writes a number of an expression', () => {
    checkFix(
      'check: A\nexpect:\n  - map > 2$00 inHg\n',
      'Write it as 67.73 kPa',
      'check: A\nexpect:\n  - map > 67.73 kPa\n',
    );
  });

  it('tells a difference from a point by its place', () => {
    const within = (tolerance: string): string =>
      `check: A\nexpect:\n  - 80 °C within ${tolerance} of 82 °C\n`;
    checkFix(within('$05 °C'), 'Write it as 9 °F', within('9 °F'));
    const above = (degrees: string): string =>
      `readings: R\nas: r\nvalues:\n  ect: 82 °C\n  iat: 80 °C\n---\ncheck: A\nexpect:\n  - r.ect - r.iat > ${degrees}\n`;
    checkFix(above('1$0 °C'), 'Write it as 1.8 °F', above('1.8 °F'));
    const tool = (accuracy: string): string =>
      `diag: 1\ncase: A\ntools:\n  t:\n    accuracy: ${accuracy}\n---\n`;
    const { offers, after } = offersAt(tool('1$0 °C'));
    expect(offers.map(after)).toEqual([tool('1.8 °F')]);
  });

  it('leaves numbers without another unit, and words, alone', () => {
    checkNone('readings: A\nas: a\nvalues:\n  rpm: 7$000 rpm\n', 'rewrite');
    checkNone('readings: A\nas: a\nvalues:\n  loop: cl$0osed\n', 'rewrite');
  });
});

describe('count a pressure from another zero', () => {
  const gauged =
    'readings: G\nas: g\nvalues:\n  vacuum: 16 inHg\n  map: 13 inHg\n  baro: 29 inHg\n  ect: 80 °C\n---\n';

  it('wraps a name', () => {
    checkFix(
      `${gauged}check: A\nexpect:\n  - g.vac$0uum > 10 inHg\n`,
      'Count it as absolute: `absolute(g.vacuum)`',
      `${gauged}check: A\nexpect:\n  - absolute(g.vacuum) > 10 inHg\n`,
    );
  });

  it('is not offered where it is done already, nor for anything but a pressure', () => {
    const wraps = (source: string): readonly string[] =>
      offersAt(source).offers.flatMap(({ title }) => (title.startsWith('Count') ? [title] : []));
    expect(wraps(`${gauged}check: A\nexpect:\n  - absolute(g.vac$0uum) > 10 inHg\n`)).toEqual([]);
    expect(wraps(`${gauged}check: A\nexpect:\n  - g.ec$0t > 10 °C\n`)).toEqual([]);
    expect(wraps(`${gauged}check: A\nexpect:\n  - g.ma$0p > 10 inHg\n`)).toHaveLength(2);
    // Nor where the expression would no longer hold together.
    expect(wraps(`${gauged}check: A\nexpect:\n  - g.map + g.vacuum < g.ba$0ro\n`)).toEqual([]);
    expect(wraps(`${gauged}check: A\nexpect:\n  - altitude_of(g.ba$0ro) > 10 m\n`)).toEqual([]);
  });
});

describe('add the missing reading', () => {
  it('adds it to the cell that was asked', () => {
    checkFix(
      `readings: G
as: g
values:
  vacuum: 16 inHg # seen
---
check: A
expect:
  - g.m$0ap > 10 inHg
`,
      'Add `map` to cell 2, as not taken yet',
      `readings: G
as: g
values:
  vacuum: 16 inHg # seen
  map: not taken
---
check: A
expect:
  - g.map > 10 inHg
`,
    );
  });

  it('adds a row to a table', () => {
    checkFix(
      `readings: G
as: g
states:
  a: warm idle
  b: cruise
table: |
  reading   a    b    unit
  map       13   17   inHg
---
check: A
expect:
  - g.a.rp$0m > 20 rpm
`,
      'Add `rpm` to cell 2, as not taken yet',
      `readings: G
as: g
states:
  a: warm idle
  b: cruise
table: |
  reading   a    b    unit
  map       13   17   inHg
  rpm       -    -    -
---
check: A
expect:
  - g.a.rpm > 20 rpm
`,
    );
  });

  it('adds a bare name to the readings above', () => {
    checkFix(
      'readings: G\nvalues:\n  vacuum: 16 inHg\n---\ncheck: A\nexpect:\n  - ec$0t > 10 °C\n',
      'Add `ect` to cell 2, as not taken yet',
      'readings: G\nvalues:\n  vacuum: 16 inHg\n  ect: not taken\n---\ncheck: A\nexpect:\n  - ect > 10 °C\n',
    );
  });

  it('adds nothing where it is measured, or where no readings are', () => {
    const adds = (source: string): readonly string[] =>
      offersAt(source).offers.flatMap(({ title }) => (title.startsWith('Add') ? [title] : []));
    expect(adds('readings: G\nvalues:\n  ect: 80 °C\n---\ncheck: A\nexpect:\n  - ec$0t > 10 °C\n')).toEqual(
      [],
    );
    expect(adds('check: A\nexpect:\n  - ec$0t > 10 °C\n')).toEqual([]);
  });
});

describe('give an expression a name', () => {
  it('adds a `let` before the expectations', () => {
    checkFix(
      'check: A\nexpect:\n  - total_t$0rim(1 %, 2 %) > 1 %\n',
      'Give `total_trim(1 %, 2 %)` a name of its own',
      'check: A\nlet:\n  total_trim: total_trim(1 %, 2 %)\nexpect:\n  - total_trim > 1 %\n',
    );
  });

  it('adds it to the names that are there, under a free one', () => {
    checkFix(
      'check: A\nlet:\n  sum: 1 + 2\n  more: (3 +$0 4) * 2\nexpect:\n  - more > 1\n',
      'Give `3 + 4` a name of its own',
      'check: A\nlet:\n  sum_2: 3 + 4\n  sum: 1 + 2\n  more: (sum_2) * 2\nexpect:\n  - more > 1\n',
    );
  });

  it('is not offered for a name or a number alone, nor for all of a computed name, nor outside of checks', () => {
    checkNone('check: A\nlet:\n  a: 1\nexpect:\n  - $0a > 1\n', 'extract');
    checkNone('check: A\nlet:\n  a: 1 +$0 2\n', 'extract');
    checkNone('repair: A\nverify:\n  - 1 +$0 2 > 1\n', 'extract');
  });
});

describe('name a cell', () => {
  it('takes a word of the title that is free', () => {
    checkFix(
      '$0readings: Gauge at idle\nvalues:\n  map: 13 inHg\n',
      'Name the cell: `as: gauge`',
      'readings: Gauge at idle\nas: gauge\nvalues:\n  map: 13 inHg\n',
    );
    checkFix(
      'test: One\nas: smoke\nresult: yes\n---\n$0test: Smoke, the second time\nresult: no\n',
      'Name the cell: `as: second`',
      'test: One\nas: smoke\nresult: yes\n---\ntest: Smoke, the second time\nas: second\nresult: no\n',
    );
  });

  it('never takes a signal or a word of the language', () => {
    checkFix(
      '$0readings: Map within\nvalues:\n  rpm: 700 rpm\n',
      'Name the cell: `as: map_2`',
      'readings: Map within\nas: map_2\nvalues:\n  rpm: 700 rpm\n',
    );
  });

  it('is not offered for a cell that has a name or cannot have one, nor further down', () => {
    checkNone('$0readings: A\nas: a\nvalues:\n  rpm: 700 rpm\n', 'rewrite');
    checkNone('$0suspects: A\nconsider:\n  - name: x\n', 'rewrite');
    checkNone('readings: A\nvalues:\n  rpm$0: 700 rpm\n', 'rewrite');
  });
});

describe('rewrites', () => {
  it('change no verdict and make no error, in every sample', () => {
    let taken = 0;
    for (const [name, text] of samples) {
      const study = checkCase(text);
      const says = (of: Study): unknown => [
        caseResult(of, name).expectations.map((each) => each.verdict),
        of.findings.filter(({ diagnostic }) => diagnostic.severity === 'error').length,
      ];
      const before = says(study);
      study.file.cells.forEach((_, cell) => {
        const seen = new Set<string>();
        for (const { span } of tokens(study, cell)) {
          for (const offer of fixes(study, cell, { start: span.start, end: span.start })) {
            // Counting from another zero changes what is said: that is what it is for.
            if (offer.kind === 'fix' || offer.title.startsWith('Count')) continue;
            const after = inFile(study, offer);
            if (seen.has(after)) continue;
            seen.add(after);
            taken++;
            expect([name, offer.title, says(checkCase(after, study))]).toEqual([name, offer.title, before]);
          }
        }
      });
    }
    expect(taken).toBeGreaterThan(200);
  });
});
