import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { CaseFiles, FileContent } from '../../core/recording/files.ts';
import { checkCase } from '../../core/rules/checkCase.ts';
import { filesOf, resultOf } from './caseFiles.ts';

const text = `diag: 1
case: Two captures
---
capture: Log
as: log
state: cruise
file: log.csv
channels:
  front: {column: "front (V)", signal: o2_b1s1}
  map: MAP (kPa)
---
capture: Good
as: good
state: cruise
when: known good
file: good.csv
---
check: Swing
as: swing
let:
  high: max(log.front)
  part: mean(log.map) / 2
  sides: max(good.front) - high
expect:
  - high > 0.5 V
  - part < 20 kPa
---
check: Other
expect:
  - swing.sides within 0.2 V of 0 V
`;

const logs = [
  'Time (s),front (V),MAP (kPa)\n0,0.1,30\n1,0.8,31\n',
  'Time (s);front (V);MAP (kPa)\n0;0,1;30\n1;0,4;31\n',
  'Time (s),front (V),MAP (kPa)\n0,0.1,30\n1,ERR,31\n0.5,0.8,33\n',
  'Time (s),front (V)\n0,0.1\n1,0.8\n',
  '1,5\n2,5\n',
  '',
];

/** A change of the case's text, or of what the host has for one of its files. */
const changes = fc.oneof(
  fc
    .constantFrom(
      ['file: log.csv', 'file: good.csv'],
      ['file: log.csv', 'file: gone.csv'],
      ['signal: o2_b1s1', 'signal: o2_b1s2'],
      ['MAP (kPa)', '{column: MAP (kPa), unit: psi}'],
      ['0.5 V', '0.3 V'],
      ['capture: Good', 'capture: Better'],
      ['---\ncheck: Other', '---\nnote: between\n---\ncheck: Other'],
    )
    .map(([from, to]) => ({ from: from ?? '', to: to ?? '' })),
  fc.record({ file: fc.constantFrom('log.csv', 'good.csv'), content: fc.nat(logs.length) }),
);

it('studying a case again after its text or its files changed gives what a fresh study gives', () => {
  fc.assert(
    fc.property(fc.array(changes, { minLength: 1, maxLength: 8 }), (list) => {
      const held = new Map<string, FileContent>();
      const put = (file: string, content: number): void => {
        const log = logs[content];
        // As a host does: the same bytes while the file stays the same.
        if (log === undefined) held.delete(file);
        else held.set(file, filesOf({ [file]: log })(file));
      };
      put('log.csv', 0);
      put('good.csv', 1);
      const files: CaseFiles = (file) => held.get(file) ?? { kind: 'none', why: { is: 'not there' } };
      let now = text;
      let study = checkCase(now, undefined, files);
      for (const change of list) {
        if ('file' in change) put(change.file, change.content);
        else
          now = now.includes(change.from)
            ? now.replace(change.from, change.to)
            : now.replace(change.to, change.from);
        study = checkCase(now, study, files);
        const fresh = checkCase(now, undefined, files);
        expect(JSON.stringify(resultOf(study))).toBe(JSON.stringify(resultOf(fresh)));
      }
    }),
    { numRuns: 150 },
  );
});
