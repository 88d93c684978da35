import { describe, expect, it } from 'vitest';
import { checkCase } from '../../core/rules/checkCase.ts';
import { definitions, references } from '../../core/service/definitions.ts';
import { occurrencesOf } from '../../core/service/occurrences.ts';
import { renamable, rename } from '../../core/service/rename.ts';
import type { CellEdits } from '../../core/service/types.ts';
import { caseResult } from '../../core/study/results.ts';
import type { Study } from '../../core/study/types.ts';
import { applyEdits } from '../../core/text/edits.ts';
import { samples } from '../support/samples.ts';
import { atCursor, marked, words } from './cursor.ts';
import { loads, loadsAt } from './loads.ts';

/** The lines on which the name at a place of the case stands, with carets under it. */
function checkReferences(place: string, lines: string): void {
  const { study, cell, offset } = atCursor(loadsAt(place));
  const found = references(study, cell, offset).map((each) => ({
    ...each,
    says: each.defines ? 'defines' : '',
  }));
  expect(marked(study, found)).toBe(lines.replace(/^\n/, '').trimEnd());
}

/** The first line of what the name at a place goes to, and the name there. */
function checkDefinition(place: string, targets: readonly string[]): void {
  const { study, cell, offset } = atCursor(loadsAt(place));
  const found = definitions(study, cell, offset)?.targets ?? [];
  expect(
    found.map((each) => {
      const [line] = words(study, each.cell, each.span).split('\n');
      return `${each.cell + 1}: ${line} (${words(study, each.cell, each.nameSpan)})`;
    }),
  ).toEqual(targets);
}

/** The file with edits that count in cells. */
function inFile(study: Study, edits: readonly CellEdits[]): string {
  const moved = edits.flatMap(({ cell, edits: inCell }) => {
    const start = study.file.stream.starts[cell] ?? 0;
    return inCell.map((each) => ({
      ...each,
      span: { start: each.span.start + start, end: each.span.end + start },
    }));
  });
  return applyEdits(study.text, moved);
}

/** The case after renaming what stands at a place, and that it says the same under the new name. */
function checkRename(place: string, newName: string, changes: Readonly<Record<string, string>>): void {
  const { study, cell, offset, text } = atCursor(loadsAt(place));
  const found = rename(study, cell, offset, newName);
  if ('refused' in found) throw new Error(found.refused);
  const after = inFile(study, found.edits);
  const lines = text.split('\n');
  const changed = Object.fromEntries(
    after.split('\n').flatMap((line, at) => (line === lines[at] ? [] : [[lines[at] ?? '', line]])),
  );
  expect(changed).toEqual(changes);
  const verdicts = (of: string): unknown =>
    caseResult(checkCase(of), 'case.diag').expectations.map(({ verdict, value }) => [verdict, value]);
  expect(verdicts(after)).toEqual(verdicts(text));
}

function checkRefused(place: string, newName: string, reason: string): void {
  const { study, cell, offset } = atCursor(loadsAt(place));
  const found = rename(study, cell, offset, newName);
  expect('refused' in found ? found.refused : 'renamed').toBe(reason);
}

describe('go to definition', () => {
  it('goes from each part of a dotted name to what it stands for', () => {
    checkDefinition('before.idle.map +', ['2: readings: Three loads (before)']);
    checkDefinition('idle.map +', ['2: idle: warm idle (idle)']);
    checkDefinition('map + gauged', ['2: map (map)']);
    checkDefinition('vacuum\n  twice', ['4: vacuum: {value: 16.4 inHg, tool: gauge} (vacuum)']);
  });

  it('goes to computed names of the cell itself and of others', () => {
    checkDefinition('seen\nexpect', ['5: seen: before.idle.map + gauged.vacuum (seen)']);
    checkDefinition('seen > 20', ['5: seen: before.idle.map + gauged.vacuum (seen)']);
    checkDefinition('twice > 1', ['5: twice: 2 * seen (twice)']);
  });

  it('goes to tools, own signals, header values, a reference’s values and a test’s result', () => {
    checkDefinition('gauge}', ['1: gauge: (gauge)']);
    checkDefinition('sump: 80', ['1: sump: (sump)']);
    checkDefinition('displacement > spec', ['1: displacement: 2.4 L (displacement)']);
    checkDefinition('lift * spec', ['3: lift: 9 mm (lift)']);
    checkDefinition('result is', ['7: result: yes (result)']);
  });

  it('goes from a state in quotes to the state', () => {
    checkDefinition('idle"]', ['2: idle: warm idle (idle)']);
  });

  it('goes nowhere from free words, functions and signals that nobody measured', () => {
    checkDefinition('Look again', []);
    const { study, cell, offset } = atCursor('check: A\nexpect:\n  - total$0_trim(1 %, 2 %) > ect\n');
    expect(definitions(study, cell, offset)).toBeUndefined();
  });
});

describe('references', () => {
  it('finds a computed name in its own cell and in others', () => {
    checkReferences(
      'seen: before',
      `
  seen: before.idle.map + gauged.vacuum
  ^^^^ defines
  twice: 2 * seen
             ^^^^
  - seen within 0.5 inHg of 29.5 inHg
    ^^^^
      - sum.seen > 20 inHg absolute
            ^^^^
`,
    );
  });

  it('finds a state in headings, in dotted names and in brackets', () => {
    checkReferences(
      'idle: warm',
      `
  idle: warm idle
  ^^^^ defines
  reading   idle   fast   unit
            ^^^^
  seen: before.idle.map + gauged.vacuum
               ^^^^
      - before.map["idle"] > 20 inHg
                    ^^^^
`,
    );
  });

  it('finds a cell by its name, from wherever it is asked', () => {
    const before = `
as: before
    ^^^^^^ defines
  seen: before.idle.map + gauged.vacuum
        ^^^^^^
      - before.map["idle"] > 20 inHg
        ^^^^^^
`;
    checkReferences('before\nstates', before);
    checkReferences('before.map', before);
  });

  it('finds a reading, a tool and an own signal', () => {
    checkReferences(
      'map + gauged',
      `
  map       13.1   9.8    inHg
  ^^^ defines
  seen: before.idle.map + gauged.vacuum
                    ^^^
      - before.map["idle"] > 20 inHg
               ^^^
`,
    );
    checkReferences(
      'gauge}',
      `
  gauge:
  ^^^^^ defines
  vacuum: {value: 16.4 inHg, tool: gauge}
                                   ^^^^^
`,
    );
    checkReferences(
      'sump: 80',
      `
  sump:
  ^^^^ defines
  sump: 80 °C
  ^^^^
`,
    );
  });
});

describe('rename', () => {
  it('renames across cells, and the case says the same', () => {
    checkRename('seen: before', 'found', {
      '  seen: before.idle.map + gauged.vacuum': '  found: before.idle.map + gauged.vacuum',
      '  twice: 2 * seen': '  twice: 2 * found',
      '  - seen within 0.5 inHg of 29.5 inHg': '  - found within 0.5 inHg of 29.5 inHg',
      '      - sum.seen > 20 inHg absolute': '      - sum.found > 20 inHg absolute',
    });
    checkRename('before.map', 'three', {
      'as: before': 'as: three',
      '  seen: before.idle.map + gauged.vacuum': '  seen: three.idle.map + gauged.vacuum',
      '      - before.map["idle"] > 20 inHg': '      - three.map["idle"] > 20 inHg',
    });
    checkRename('idle: warm', 'slow', {
      '  idle: warm idle': '  slow: warm idle',
      '  reading   idle   fast   unit': '  reading   slow   fast   unit',
      '  seen: before.idle.map + gauged.vacuum': '  seen: before.slow.map + gauged.vacuum',
      '      - before.map["idle"] > 20 inHg': '      - before.map["slow"] > 20 inHg',
    });
  });

  it('renames tools, own signals and a reference’s own names', () => {
    checkRename('gauge}', 'vacuum gauge', {
      '  gauge:': '  vacuum gauge:',
      '  vacuum: {value: 16.4 inHg, tool: gauge}': '  vacuum: {value: 16.4 inHg, tool: vacuum gauge}',
    });
    checkRename('sump: 80', 'oil', { '  sump:': '  oil:', '  sump: 80 °C': '  oil: 80 °C' });
    checkRename('lift: 9', 'travel', {
      '  lift: 9 mm': '  travel: 9 mm',
      '      - engine.displacement > spec.lift * spec.lift * spec.lift':
        '      - engine.displacement > spec.travel * spec.travel * spec.travel',
    });
  });

  it('refuses signals, words of the header, functions and unknown names', () => {
    checkRefused('map + gauged', 'pressure', '`map` is a signal: it keeps its name.');
    checkRefused(
      'displacement >',
      'size',
      '`engine.displacement` is a word of the header: it keeps its name.',
    );
    checkRefused('result is', 'outcome', '`result` is a word of the case’s format: it keeps its name.');
    const { study, cell, offset } = atCursor('check: A\nexpect:\n  - total$0_trim(1 %, 2 %) > 1 %\n');
    expect(renamable(study, cell, offset)).toEqual({
      refused: '`total_trim` is a function: it keeps its name.',
    });
  });

  it('refuses a new name that is none, or that the language or the trade has already', () => {
    checkRefused(
      'seen: before',
      '1x',
      '`1x` cannot be a name: use letters, digits and `_`, and no digit first.',
    );
    checkRefused(
      'seen: before',
      'a b',
      '`a b` cannot be a name: use letters, digits and `_`, and no digit first.',
    );
    checkRefused('seen: before', 'within', '`within` is a word of the expression language.');
    checkRefused('seen: before', 'map', '`map` is a signal: it can name nothing else.');
    checkRefused('before\nstates', 'engine', '`engine` is a section of the header.');
    checkRefused('gauge}', 'a: b', '`a: b` cannot be a tool’s name: use letters, digits and single spaces.');
  });

  it('refuses a name that would then mean something else', () => {
    checkRefused('seen: before', 'twice', '`twice` would mean something else: it is taken.');
    checkRefused('before\nstates', 'spec', '`spec` would mean something else: it is taken.');
    checkRefused('idle: warm', 'fast', '`fast` would mean something else: it is taken.');
  });

  it('leaves every verdict and every finding of every sample as it was, whatever of it is renamed', () => {
    let renamed = 0;
    for (const [name, text] of samples) {
      const study = checkCase(text);
      const says = (of: string): unknown => {
        const { expectations, diagnostics, suspects } = caseResult(checkCase(of, study), 'case.diag');
        return [
          expectations.map(({ verdict, value, distance }) => [verdict, value, distance]),
          diagnostics.map(({ code, line }) => [code, line]),
          suspects.map(({ standing }) => standing),
        ];
      };
      const before = says(text);
      const own = occurrencesOf(study).filter((each) => each.defines);
      for (const { cell, span } of own) {
        const found = rename(study, cell, span.start, 'called_otherwise');
        if ('refused' in found) continue;
        renamed++;
        expect(says(inFile(study, found.edits)), name).toEqual(before);
      }
    }
    expect(renamed).toBeGreaterThan(150);
  });

  it('says what can be renamed where the cursor stands', () => {
    const { study, cell, offset } = atCursor(loadsAt('seen\nexpect'));
    const found = renamable(study, cell, offset);
    expect(found).toMatchObject({ name: 'seen' });
    expect(found !== undefined && 'span' in found ? words(study, cell, found.span) : '').toBe('seen');
    const free = atCursor(loadsAt('Look again'));
    expect(renamable(free.study, free.cell, free.offset)).toBeUndefined();
  });

  it('takes a name that stays as no change', () => {
    const { study, cell, offset } = atCursor(loadsAt('seen: before'));
    expect(rename(study, cell, offset, 'seen')).toEqual({ edits: [] });
    expect(loads).toContain('seen');
  });
});
