import { expect, it } from 'vitest';
import { checkCase } from '../../core/rules/checkCase.ts';
import { caseWith, filesOf, said } from './caseFiles.ts';

/** Every fix that is offered for a capture's file puts right what it is offered for. */
it.each([
  ['a clock that can be read in two ways', 'Elapsed,v (V)\n00:00,0.1\n00:05,0.2\n', ''],
  ['a clock whose time is named', 'Elapsed,v (V)\n00:00,0.1\n00:05,0.2\n', 'time: Elapsed\n'],
  [
    'a channel that has a time of its own',
    't1 (s),a (V),t2 (s),b (V)\n0,0.1,0.05,0.3\n1,0.2,1.05,0.4\n',
    'channels:\n  b: b (V)\n',
  ],
  [
    'the same where more is said of it',
    't1 (s),a (V),t2 (s),b (V)\n0,0.1,0.05,0.3\n1,0.2,1.05,0.4\n',
    'channels:\n  b: {column: b (V), accuracy: 0.01 V}\n',
  ],
  ['a heading that stands twice', 'Time (s),v (V),v (V)\n0,0.1,0.3\n1,0.2,0.4\n', 'channels:\n  v: v (V)\n'],
  [
    'a time that stands twice',
    'Time,a (V),Time,b (V)\n0,0.1,0,0.3\n1,0.2,1,0.4\n',
    'time: {column: Time, unit: s}\nchannels:\n  a: a (V)\n',
  ],
  ['seconds since 1970', 'stamp,v (V)\n1772360430500,0.1\n1772360430600,0.2\n', 'time: stamp\n'],
])('%s', (_, log, lines) => {
  const text = caseWith(lines);
  const files = filesOf({ 'log.csv': log });
  const study = checkCase(text, undefined, files);
  const start = study.file.stream.starts[1] ?? 0;
  const [finding] = study.findings;
  const fixes = finding?.diagnostic.fixes ?? [];
  expect(fixes.length).toBeGreaterThan(0);
  for (const { edits } of fixes) {
    let fixed = text;
    for (const { span, newText } of edits)
      fixed = fixed.slice(0, start + span.start) + newText + fixed.slice(start + span.end);
    expect(said(checkCase(fixed, undefined, files))).toEqual([]);
  }
});
