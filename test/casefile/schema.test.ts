import { describe, expect, it } from 'vitest';
import { type Holds, type Keys, propertyOf } from '../../core/casefile/kinds/key.ts';
import { kindNames, kindOf, kinds } from '../../core/casefile/kinds/kinds.ts';
import { cellOf, codes, findings, header, mended } from './found.ts';

function text(node: { readonly text: string } | undefined): string | undefined {
  return node?.text;
}

describe('the table of kinds', () => {
  it('has the kinds and keys of the format', () => {
    expect([...kindNames]).toEqual([
      ...[
        'diag',
        'note',
        'readings',
        'reference',
        'capture',
        'check',
        'test',
        'picture',
        'chart',
        'suspects',
      ],
      ...['question', 'repair', 'caution'],
    ]);
    const keys = (kind: keyof typeof kinds) => Object.keys(kinds[kind].keys);
    expect(keys('diag')).toEqual([
      ...[
        'case',
        'vehicle',
        'engine',
        'site',
        'tools',
        'customer says',
        'confirmed',
        'history',
        'codes',
        'tags',
      ],
      ...['outcome', 'cause', 'repair', 'teaching', 'objectives', 'signals', 'author', 'license', 'for'],
    ]);
    expect(keys('note')).toEqual(['for']);
    expect(keys('readings')).toEqual([
      ...[
        'as',
        'when',
        'state',
        'states',
        'tool',
        'taken',
        'odometer',
        'values',
        'table',
        'obd',
        'chart',
        'for',
      ],
    ]);
    expect(keys('reference')).toEqual([
      ...['as', 'source', 'state', 'states', 'values', 'table', 'file', 'format', 'time', 'channels', 'for'],
    ]);
    expect(keys('capture')).toEqual([
      ...['as', 'when', 'state', 'tool', 'file', 'rows', 'format', 'time', 'channels', 'chart', 'for'],
    ]);
    expect(keys('check')).toEqual([
      'as',
      'let',
      'expect',
      'shows',
      'because',
      'if fails',
      'cite',
      'chart',
      'for',
    ]);
    expect(keys('test')).toEqual(['as', 'did', 'at', 'found', 'result', 'tool', 'picture', 'for']);
    expect(keys('picture')).toEqual(['as', 'file', 'alt', 'shows', 'marks', 'for']);
    expect(keys('chart')).toEqual(['kind', 'plot', 'mark', 'for']);
    expect(keys('suspects')).toEqual(['consider', 'for']);
    expect(keys('question')).toEqual([
      ...['ask', 'answer', 'choices', 'accept', 'hints', 'because', 'points', 'for'],
    ]);
    expect(keys('repair')).toEqual(['done', 'parts', 'hours', 'verify', 'for']);
    expect(keys('caution')).toEqual(['for']);
  });

  /** A cell that gives a key its own example. */
  function written(kind: string, name: string, holds: Holds, example: string): string {
    const start = kind === 'diag' ? 'diag: 1\ncase: x' : `${kind}: x`;
    if (kind === 'diag' && name === 'case') return `diag: 1\ncase: ${example}`;
    const block = typeof holds === 'object' ? !('words' in holds) : holds === 'map';
    return `${start}\n${name}:${block ? `\n  ${example}` : ` ${example}`}`;
  }

  it('has examples that are right', () => {
    let tried = 0;
    for (const kind of kindNames) {
      const keys: Keys = kinds[kind].keys;
      for (const [name, key] of Object.entries(keys)) {
        const cell = written(kind, name, key.holds, key.example);
        const file = kind === 'diag' ? cell : header + cell;
        expect(
          codes(file).filter((code) => code !== 'missing-key'),
          cell,
        ).toEqual([]);
        tried++;
      }
    }
    expect(tried).toBeGreaterThan(80);
  });

  it('reads each key into a property of its own', () => {
    for (const kind of kindNames) {
      const properties = Object.entries<Keys[string]>(kinds[kind].keys).map(([name, key]) =>
        propertyOf(name, key),
      );
      expect(new Set([...properties, 'kind', 'title', 'node']).size).toBe(properties.length + 3);
    }
  });

  it('knows no kind that every object has', () => {
    expect(['toString', '__proto__', 'constructor'].map(kindOf)).toEqual([undefined, undefined, undefined]);
  });
});

describe('a cell as it was understood', () => {
  it('has its values as the tree’s own nodes', () => {
    const { cell, tree } = cellOf(
      'check: Trims\nas: trims\nif fails: Look for air.\nlet:\n  idle: a + b\nexpect: idle > 2 %',
    );
    if (cell?.kind !== 'check' || tree?.kind !== 'map') throw new Error('no check');
    expect(cell.title).toBe(tree.entries[0]?.value);
    expect(cell.as).toBe(tree.entries[1]?.value);
    expect(text(cell.ifFails)).toBe('Look for air.');
    expect(cell.let?.map((each) => [each.key.text, each.value.text])).toEqual([['idle', 'a + b']]);
    expect(cell.expect?.map((each) => text(each.expression))).toEqual(['idle > 2 %']);
    expect(cell.node).toBe(tree);
  });

  it('takes an expectation alone or with remarks', () => {
    const { cell } = cellOf('check: x\nexpect:\n  - a > b\n  - expect: c > d\n    if fails: e\n    cite: f');
    if (cell?.kind !== 'check') throw new Error('no check');
    expect(
      cell.expect?.map((each) => [text(each.expression), text(each.ifFails), each.cite?.map(text)]),
    ).toEqual([
      ['a > b', undefined, undefined],
      ['c > d', 'e', ['f']],
    ]);
  });

  it('takes an engine state as words or with what else is known of it', () => {
    const { cell } = cellOf(
      'readings: x\nstates:\n  idle: warm idle\n  fast: {state: cruise, gear: 4, loop: closed}',
    );
    if (cell?.kind !== 'readings') throw new Error('no readings');
    expect(
      cell.states?.map(({ key, value }) => [
        key.text,
        value.name.text,
        value.more.map((each) => `${each.key.text} ${each.value.text}`),
      ]),
    ).toEqual([
      ['idle', 'warm idle', []],
      ['fast', 'cruise', ['gear 4', 'loop closed']],
    ]);
  });

  it('takes a suspect, a question, a repair', () => {
    const suspects = cellOf(
      'suspects: x\nconsider:\n  - name: air\n    predicts: a > b\n    ruled out if:\n      - c > d\n  - fuel',
    ).cell;
    if (suspects?.kind !== 'suspects') throw new Error('no suspects');
    expect(
      suspects.consider?.map((each) => [
        each.name.text,
        each.predicts?.map(text),
        each.ruledOutIf?.map(text),
      ]),
    ).toEqual([
      ['air', ['a > b'], ['c > d']],
      ['fuel', undefined, undefined],
    ]);
    const question = cellOf('question: x\nask: y\nchoices:\n  - one\n  - {choice: two, right: yes}').cell;
    if (question?.kind !== 'question') throw new Error('no question');
    expect(question.choices?.map((each) => [each.choice.text, text(each.right)])).toEqual([
      ['one', undefined],
      ['two', 'yes'],
    ]);
    const repair = cellOf(
      'repair: x\nparts:\n  - gasket\n  - {part: hose, number: H-1}\nverify:\n  - verify: a > b',
    ).cell;
    if (repair?.kind !== 'repair') throw new Error('no repair');
    expect(repair.parts?.map((each) => [each.part.text, text(each.number)])).toEqual([
      ['gasket', undefined],
      ['hose', 'H-1'],
    ]);
    expect(repair.verify?.map((each) => each.expression.text)).toEqual(['a > b']);
  });

  it('leaves out what is wrong and keeps the rest', () => {
    const { cell } = cellOf(
      'readings: x\nas: key-on\nwhen: befor\nstate: [a]\nmood: good\ntool:\nvalues:\n  map: 1 inHg\n  map: 2 inHg',
    );
    if (cell?.kind !== 'readings') throw new Error('no readings');
    expect([cell.as, cell.when, cell.state, cell.tool]).toEqual([undefined, undefined, undefined, undefined]);
    expect(cell.values?.entries.map((entry) => entry.key.text)).toEqual(['map']);
  });
});

describe('what is said about keys and values', () => {
  const only = (cell: string) => findings(header + cell);

  it('an unknown kind, with the nearest', () => {
    expect(only('reading: Idle')).toEqual([
      {
        code: 'unknown-kind',
        at: '4:1',
        covers: 'reading',
        says: '`reading` is no kind of cell. Did you mean `readings`? A cell starts with `diag`, `note`, `readings`, `reference`, `capture`, `check`, `test`, `picture`, `chart`, `suspects`, `question`, `repair` or `caution`.',
      },
    ]);
    expect(mended(`${header}reading: Idle`, 'unknown-kind')).toBe(`${header}readings: Idle`);
  });

  it('a kind that does not stand first', () => {
    expect(only('as: koeo\nreadings: Key on')).toEqual([
      {
        code: 'kind-not-first',
        at: '5:1',
        covers: 'readings',
        says: '`readings` says what this cell is and must stand on its first line.',
      },
    ]);
  });

  it('text that is no cell', () => {
    expect(only('Rain all day.')).toEqual([
      {
        code: 'not-a-cell',
        at: '4:1',
        covers: 'Rain all day.',
        says: '`Rain all day.` is no cell: a cell starts with its kind and a title, such as `note: …` or `readings: …`.',
      },
    ]);
  });

  it('an unknown key, with the nearest or all that are allowed', () => {
    expect(only('check: x\nexpects: a > b')).toEqual([
      {
        code: 'unknown-key',
        at: '5:1',
        covers: 'expects',
        says: '`expects` is no key of `check`. Did you mean `expect`?',
      },
    ]);
    expect(mended(`${header}check: x\nexpects: a > b`, 'unknown-key')).toBe(
      `${header}check: x\nexpect: a > b`,
    );
    expect(only('repair: x\nmood: good')).toEqual([
      {
        code: 'unknown-key',
        at: '5:1',
        covers: 'mood',
        says: '`mood` is no key of `repair`. It may have `done`, `parts`, `hours`, `verify` or `for`.',
      },
    ]);
    expect(only('check: x\nexpect:\n  - expect: a > b\n    if fail: c')).toEqual([
      {
        code: 'unknown-key',
        at: '7:5',
        covers: 'if fail',
        says: '`if fail` is no key of `expect`. Did you mean `if fails`?',
      },
    ]);
    expect(findings('diag: 1\ncase: x\nengine:\n  fule: E10')).toEqual([
      {
        code: 'unknown-key',
        at: '4:3',
        covers: 'fule',
        says: '`fule` is no key of `engine`. Did you mean `fuel`?',
      },
    ]);
  });

  it('tells at the second of two keys that only one of them may stand', () => {
    const table = 'table: |\n  reading  idle  unit\n  map      13    inHg\n';
    const told = (cell: string): readonly string[] =>
      findings(`${header}${cell}`).map(({ code, covers }) => `${code} at ${covers}`);
    const [state, states, values] = [
      'state: warm idle\n',
      'states:\n  idle: warm idle\n',
      'values:\n  ect: 90 °C\n',
    ];
    expect(told(`readings: x\n${state}${states}${table}`)).toEqual(['either-key at states']);
    expect(told(`readings: x\n${states}${state}${table}`)).toEqual(['either-key at state']);
    expect(told(`readings: x\n${states}${values}`)).toEqual(['either-key at values']);
    expect(told(`reference: x\n${values}${state}${table}`)).toEqual(['either-key at table']);
    expect(told(`capture: x\nfile: a.csv\nrows: |\n  time  front\n  0 s   0.1 V\n`)).toEqual([
      'either-key at rows',
    ]);
    expect(told(`readings: x\n${states}${table}`)).toEqual([]);
    expect(told(`reference: x\n${state}${values}`)).toEqual([]);
    expect(findings(`${header}readings: x\n${states}${values}`)[0]?.says).toBe(
      '`values` and `states` cannot stand in one cell: values at several states stand in a `table`, with a column for each. Keep one of them, or make two cells.',
    );
  });

  it('a key that stands twice, at any depth', () => {
    expect(only('readings: x\nvalues:\n  map: 1 inHg\n  map: 2 inHg')).toEqual([
      {
        code: 'duplicate-key',
        at: '7:3',
        covers: 'map',
        says: '`map` stands here a second time; only the first is read. Delete one of them.',
      },
    ]);
    expect(codes(`${header}readings: x\nvalues:\n  a: {1: 2 psi, 1: 3 psi}`)).toEqual(['duplicate-key']);
    expect(codes(`${header}note: x\nnote: y`)).toEqual(['duplicate-key']);
  });

  it('a key that is missing', () => {
    expect(findings('diag: 1')).toEqual([
      { code: 'missing-key', at: '1:1', covers: 'diag', says: '`diag` needs `case`: the case’s title.' },
    ]);
    expect(only('suspects: x\nconsider:\n  - predicts: a > b')).toEqual([
      {
        code: 'missing-key',
        at: '6:5',
        covers: 'predicts: a > b',
        says: '`consider` needs `name`: the fault.',
      },
    ]);
  });

  it('a key without a value', () => {
    expect(only('readings: x\nstate:\nvalues:\n  map:\n  a: {b: }')).toEqual([
      {
        code: 'missing-value',
        at: '5:1',
        covers: 'state',
        says: 'Nothing stands after `state`. It takes an engine state, such as `warm idle`.',
      },
      {
        code: 'missing-value',
        at: '7:3',
        covers: 'map',
        says: 'Nothing stands after `map`. It takes a value.',
      },
      { code: 'missing-value', at: '8:7', covers: 'b', says: 'Nothing stands after `b`. It takes a value.' },
    ]);
    expect(only('readings: x\nvalues:\nmap: 13 inHg\nrpm: 700 rpm\nstate: warm idle')).toEqual([
      {
        code: 'missing-value',
        at: '5:1',
        covers: 'values',
        says: 'Nothing stands after `values`, and `map` below it is no key of the cell. Set what belongs to `values` in by two spaces.',
      },
    ]);
    // What is nearly a key of the cell is one that was misspelt.
    expect(codes(`${header}readings: x\nvalues:\nstat: warm idle`)).toEqual(['missing-value', 'unknown-key']);
    expect(only('capture: x\nfile: ""')).toEqual([
      {
        code: 'missing-value',
        at: '5:1',
        covers: 'file',
        says: 'Nothing stands after `file`. It takes a text, such as `captures/o2-2500.csv`.',
      },
    ]);
    // A column may well have no heading.
    expect(only('capture: x\nfile: a.csv\nchannels:\n  front: ""')).toEqual([]);
    expect(only('check: x\nexpect:\n  - a > b\n  -')).toEqual([
      {
        code: 'missing-value',
        at: '7:3',
        covers: '-',
        says: 'Nothing stands after `expect: -`. It takes a text or entries (`expect`, `if fails`, `shows`, `because` or `cite`), such as `idle between -10 % and 10 %`.',
      },
    ]);
  });

  it('a value of the wrong shape', () => {
    expect(only('readings: x\nvalues: 29.6 inHg')).toEqual([
      {
        code: 'wrong-shape',
        at: '5:9',
        covers: '29.6 inHg',
        says: '`values` takes entries, each `name: value` on a line of its own, not a text. For example `map: 29.6 inHg`.',
      },
    ]);
    expect(only('check: x\nlet:\n  a:\n    - b')).toEqual([
      { code: 'wrong-shape', at: '7:5', covers: '- b', says: '`a` takes an expression, not a list.' },
    ]);
    expect(only('readings: x\nstate:\n  gear: 4')).toEqual([
      {
        code: 'wrong-shape',
        at: '6:3',
        covers: 'gear: 4',
        says: '`state` takes an engine state, not entries with keys of their own. For example `warm idle`.',
      },
    ]);
  });

  it('a name that expressions cannot use', () => {
    expect(only('readings: x\nas: key on')).toEqual([
      {
        code: 'bad-name',
        at: '5:5',
        covers: 'key on',
        says: '`key on` cannot be a name. A name has letters, digits and `_` only and does not start with a digit.',
      },
    ]);
    expect(mended(`${header}readings: x\nas: key on`, 'bad-name')).toBe(`${header}readings: x\nas: key_on`);
  });

  it('a name of one’s own that expressions cannot use', () => {
    expect(only('readings: x\nstates:\n  warm idle: warm idle')).toEqual([
      {
        code: 'bad-name',
        at: '6:3',
        covers: 'warm idle',
        says: '`warm idle` cannot be a name. A name has letters, digits and `_` only and does not start with a digit.',
      },
    ]);
    expect(codes(`${header}check: x\nlet:\n  a-b: 1 V`)).toEqual(['bad-name']);
    expect(codes(`${header}capture: x\nchannels:\n  1: a`)).toEqual(['bad-name']);
    expect(codes(`${header}check: x\nlet:\n  größe_2: 1 V`)).toEqual([]);
    expect(codes('diag: 1\ncase: x\ntools:\n  the gauge: vacuum gauge')).toEqual([]);
  });

  it('a word that is not on the list', () => {
    expect(only('readings: x\nwhen: befor')).toEqual([
      {
        code: 'unknown-word',
        at: '5:7',
        covers: 'befor',
        says: '`when` cannot be `befor`. Did you mean `before`? It is `before`, `after`, `known good` or `freeze frame`.',
      },
    ]);
    const listed: [string, string][] = [
      ['test: x\nresult: maybe', 'result'],
      ['note: x\nfor: everyone', 'for'],
      ['check: x\nshows: faults', 'shows'],
      ['question: x\nask: y\nchoices:\n  - {choice: a, right: perhaps}', 'right'],
    ];
    for (const [cell, key] of listed) expect(only(cell)[0]?.says).toContain(`\`${key}\` cannot be`);
    for (const word of ['outcome: done', 'teaching: no', 'codes: {code: P0171, status: old}']) {
      expect(codes(`diag: 1\ncase: x\n${word}`)).toEqual(['unknown-word']);
    }
  });
});
