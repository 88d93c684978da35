import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { QuotedLines } from '../../core/recording/quotedLines.ts';
import { said, samplesOf, studied, timesOf } from './caseFiles.ts';

const heading = 'Time (s),v (V),Remark,w (V)\n';

describe('fields in quotes that go over several lines', () => {
  it('are one line: what stands beside them is read', () => {
    const log = `${heading}0,0.1,"driver said:\nit shakes",0.5\n1,0.2,ok,0.6\n2,0.3,"a ""b""\r\n\r\n1,2,3,4\r\nc",0.7\n3,0.4,,0.8\n`;
    const study = studied(log);
    expect(said(study)).toEqual([]);
    expect(timesOf(study, 'log.v')).toEqual([0, 1, 2, 3]);
    expect(samplesOf(study, 'log.w')).toEqual([0.5, 0.6, 0.7, 0.8]);
  });

  it('do not shift the lines that are told', () => {
    const log = `${heading}0,0.1,"a\nb\nc",0.5\n1,ERR,"d\ne",0.6\n2,0.3,,0.7,9\n3,0.4,,0.8\n1,0.4,,0.8\n`;
    const study = studied(log);
    expect(said(study)).toEqual([
      'capture-lines-refused: In `log.csv` 1 line and 1 value were not read; 4 rows were. Line 5: `ERR` under `v (V)` is no number. Line 7 has 5 columns and the heading 4: `2,0.3,,0.7,9`.',
      'time-runs-back: In line 9 of `log.csv` the time goes back to 1. Put the rows in order, or cut the capture where its clock was set.',
    ]);
  });

  it.each([
    ['an inch mark', `${heading}0,0.1,3/4",0.5\n1,0.2,ok,0.6\n2,0.3,ok,0.7\n`],
    ['a quote that is never closed', `${heading}0,0.1,ok,0.5\n1,0.2,ok,0.6\n2,0.3,"ok,0.7\n`],
  ])('take no line for part of %s', (_, log) => {
    expect(samplesOf(studied(log), 'log.v')?.slice(0, 2)).toEqual([0.1, 0.2]);
  });

  it('are found across the pieces that a file is read in', () => {
    const count = 60_000;
    const rows = Array.from({ length: count }, (_, i) =>
      i % 3 === 0
        ? `${i},0.5,"first line\nsecond, with a comma\nthird",0.${i % 10}\n`
        : `${i},0.5,"x",0.${i % 10}\n`,
    );
    const study = studied(heading + rows.join(''));
    expect(said(study).filter((each) => !each.startsWith('channel-never-changes'))).toEqual([]);
    expect(samplesOf(study, 'log.w')).toEqual(Array.from({ length: count }, (_, i) => (i % 10) / 10));
  });

  it('are found where none stands among the first rows', () => {
    const rows = Array.from(
      { length: 1000 },
      (_, i) => `${i},0.${i % 7},${i === 900 ? '"a\nb"' : 'ok'},0.5\n`,
    );
    const study = studied(heading + rows.join(''));
    expect(said(study).filter((each) => !each.startsWith('channel-never-changes'))).toEqual([]);
    expect(timesOf(study, 'log.v')).toHaveLength(1000);
  });

  it('come out the same however the file is cut into pieces', () => {
    const text = 'a,"b\nc",d\n"1""\n2",3\n4,"5\n6,7\n8,"9",10\n';
    const whole = (cuts: readonly number[]): { readonly text: string; readonly joins: readonly number[] } => {
      const lines = new QuotedLines(44, 1);
      const bytes = new TextEncoder().encode(text);
      const places = [0, ...[...cuts].sort((a, b) => a - b), bytes.length];
      let out = '';
      const add = (piece: Uint8Array): void => {
        out += new TextDecoder().decode(piece);
      };
      places.slice(1).forEach((end, i) => {
        add(lines.take(bytes.subarray(places[i], end), out.split('\n').length - 1));
      });
      add(lines.rest());
      return { text: out, joins: lines.joins };
    };
    const due = whole([]);
    expect(due.text).toBe('a,"b c",d\n"1"" 2",3\n4,"5\n6,7\n8,"9",10\n');
    expect(due.joins).toEqual([1, 2]);
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: text.length }), { maxLength: 6 }), (cuts) => {
        expect(whole(cuts)).toEqual(due);
      }),
    );
  });
});
