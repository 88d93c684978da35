import { describe, expect, it } from 'vitest';
import { writeMarkdown } from '../../core/report/markdown/report.ts';
import { usualMeaning } from '../../core/report/usualMeaning.ts';
import { checkCase } from '../../core/rules/checkCase.ts';

const study = checkCase(
  'diag: 1\ncase: A case\n---\ncheck: What is it?\nlet:\n  said: charging_pattern(14.2 V)\n  plain: 2 V\n  none: charging_pattern(142 V)\n',
);
const named = (name: string) => study.computed.find((each) => each.name === name) ?? expect.fail(name);

describe('an answer in words', () => {
  it('has what it usually means beside it in the report', () => {
    const meaning = '13.5 to 14.7 V, the usual range of conventional charging.';
    expect(usualMeaning(named('said'))).toBe(meaning);
    expect(writeMarkdown({ study, file: 'case.diag', pictures: () => undefined })).toContain(meaning);
  });

  it('is what other values are not, and what has no answer', () => {
    expect(usualMeaning(named('plain'))).toBeUndefined();
    expect(usualMeaning(named('none'))).toBeUndefined();
  });
});
