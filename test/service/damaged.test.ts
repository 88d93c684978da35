import { describe, expect, it } from 'vitest';
import { checkCase } from '../../core/rules/checkCase.ts';
import { service } from '../../core/service/service.ts';
import type { CellEdits } from '../../core/service/types.ts';
import { caseResult } from '../../core/study/results.ts';
import type { Study } from '../../core/study/types.ts';
import { applyEdits } from '../../core/text/edits.ts';
import { damagedCases } from '../support/damagedCases.ts';
import { randomFrom } from '../support/expressionSentence.ts';
import { expectSound } from '../support/soundCase.ts';

/** The file after edits of its cells. */
function edited({ text, file }: Study, edits: readonly CellEdits[]): string {
  const moved = edits.flatMap(({ cell, edits: inCell }) => {
    const start = file.stream.starts[cell] ?? 0;
    return inCell.map(({ span, newText }) => ({
      span: { start: span.start + start, end: span.end + start },
      newText,
    }));
  });
  return applyEdits(text, moved);
}

const formatting = (study: Study): readonly CellEdits[] =>
  study.file.cells.map((_, cell) => ({ cell, edits: service.format(study, cell) }));

/** All that a case says, but for the columns in which it stands. */
function meaning(text: string): unknown {
  const { diagnostics, expectations, ...rest } = caseResult(checkCase(text), 'case.diag');
  return {
    ...rest,
    expectations: expectations.map(({ column: _, ...each }) => each),
    diagnostics: diagnostics.map(({ code, message, line }) => ({ code, message, line })),
  };
}

const errorsIn = (study: Study): number =>
  study.findings.filter(({ diagnostic }) => diagnostic.severity === 'error').length;

describe('what an editor does to a damaged case', () => {
  it('formatting changes no meaning and has nothing to do a second time', { timeout: 60_000 }, () => {
    let changed = 0;
    for (const text of damagedCases(31, 30)) {
      const after = edited(checkCase(text), formatting(checkCase(text)));
      if (after === text) continue;
      changed++;
      expect(meaning(after), text).toEqual(meaning(text));
      const again = checkCase(after);
      expect(edited(again, formatting(again)), text).toBe(after);
    }
    expect(changed).toBeGreaterThan(10);
  });

  it('every offer is taken without a fault, and a rewrite adds no error', { timeout: 120_000 }, () => {
    const pick = randomFrom(5);
    let taken = 0;
    for (const text of damagedCases(32, 60)) {
      const study = checkCase(text);
      for (let times = 0; times < 8; times++) {
        const cell = pick(study.file.cells.length);
        const at = pick((study.file.cells[cell]?.raw.text.length ?? 0) + 1);
        const { items } = service.completions(study, cell, at);
        const item = items[pick(Math.max(1, items.length))];
        if (item !== undefined) {
          const edit = { span: item.span, newText: item.newText };
          expectSound(edited(study, [{ cell, edits: [edit] }]));
        }
        for (const { kind, title, edits } of service.fixes(study, cell, { start: at, end: at })) {
          const after = edited(study, edits);
          expect(after, title).not.toBe(text);
          const fixed = expectSound(after);
          if (kind !== 'fix')
            expect(errorsIn(fixed), `${title}\n${text}`).toBeLessThanOrEqual(errorsIn(study));
          taken++;
        }
      }
    }
    expect(taken).toBeGreaterThan(25);
  });

  it('renaming keeps all that is computed', { timeout: 60_000 }, () => {
    const pick = randomFrom(6);
    let renamed = 0;
    for (const text of damagedCases(33, 60)) {
      const study = checkCase(text);
      for (let times = 0; times < 12; times++) {
        const cell = pick(study.file.cells.length);
        const at = pick((study.file.cells[cell]?.raw.text.length ?? 0) + 1);
        const result = service.rename(study, cell, at, 'quite_another');
        if ('refused' in result) continue;
        const after = checkCase(edited(study, result.edits));
        const verdicts = (of: Study) => of.expectations.map(({ truth }) => truth.verdict);
        const codes = (of: Study) => of.findings.map(({ diagnostic }) => diagnostic.code);
        expect(verdicts(after), text).toEqual(verdicts(study));
        expect(codes(after), text).toEqual(codes(study));
        renamed++;
      }
    }
    expect(renamed).toBeGreaterThan(20);
  });
});
