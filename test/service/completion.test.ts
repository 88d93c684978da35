import { describe, expect, it } from 'vitest';
import { completions } from '../../core/service/completion.ts';
import type { Completion } from '../../core/service/types.ts';
import { applyEdits } from '../../core/text/edits.ts';
import { atCursor } from './cursor.ts';

/** What is offered at `$0`, likeliest first. */
function offersAt(source: string): readonly Completion[] {
  const { study, cell, offset } = atCursor(source);
  return [...completions(study, cell, offset).items].sort((a, b) => a.rank - b.rank);
}

/** The offers at `$0` start with these, in this order. */
function checkFirst(source: string, labels: readonly string[]): void {
  expect(
    offersAt(source)
      .slice(0, labels.length)
      .map((each) => each.label),
  ).toEqual(labels);
}

/** Among the offers at `$0` are these, and none of those. */
function checkOffers(source: string, wanted: readonly string[], unwanted: readonly string[] = []): void {
  const labels = offersAt(source).map((each) => each.label);
  for (const each of wanted) expect(labels).toContain(each);
  for (const each of unwanted) expect(labels).not.toContain(each);
}

/** The text after taking an offer; places to fill in show their words. */
function checkTaken(source: string, label: string, after: string): void {
  const { study, cell, offset } = atCursor(source);
  const taken = completions(study, cell, offset).items.find((each) => each.label === label);
  if (taken === undefined) throw new Error(`\`${label}\` is not offered.`);
  const { raw } = study.file.cells[cell] ?? {};
  const newText = taken.newText.replace(/\$\{\d:([^}]*)\}|\$0/g, '$1');
  const text = applyEdits((raw?.text ?? '') + (raw?.ending ?? ''), [{ span: taken.span, newText }]);
  expect(text.replace(/\n$/, '')).toBe(after);
}

const loads = `readings: Three loads
as: before
states:
  idle: warm idle
  fast: 2500 rpm no load
table: |
  reading   idle   fast   unit
  maf       3.4    11.5   g/s
  stft_b1   +14    +4     %
`;

const koeo = `readings: Key on
as: koeo
values:
  map: 29.6 inHg
  loop: open
---
readings: Loads
as: before
states:
  idle: warm idle
  fast: 2500 rpm no load
table: |
  reading   idle   fast   unit
  rpm       780    2500   rpm
---
check: A
as: own
let:
  first: koeo.map
expect:
`;

describe('completion', () => {
  it('offers the kinds of cells where a cell begins', () => {
    checkOffers('re$0', ['readings', 'reference', 'repair', 'check', 'note']);
    checkOffers('$0', ['readings', 'check']);
    checkTaken('not$0', 'note', 'note: |\n  text');
  });

  it('offers the kind’s keys that are not there yet', () => {
    checkOffers('readings: A\nas: a\n$0', ['state', 'values', 'when', 'for'], ['as', 'expect']);
    checkOffers('check: A\nex$0', ['expect', 'let'], ['values']);
    checkOffers(
      'check: A\nexpect:\n  - expect: a < b\n    if$0',
      ['if fails', 'because'],
      ['expect', 'koeo'],
    );
    checkTaken('readings: A\nsta$0', 'state', 'readings: A\nstate: ');
    checkTaken('readings: A\nval$0', 'values', 'readings: A\nvalues:');
  });

  it('offers keys of maps in braces, too', () => {
    checkOffers('readings: A\nvalues:\n  map: {value: 13 inHg, to$0', ['tool', 'at', 'saw'], ['value']);
    checkOffers('readings: A\nvalues:\n  compression: {1: 181 psi, $0', ['2', '3', '4'], ['1']);
  });

  it('offers listed words, states and tools', () => {
    checkFirst('readings: A\nwhen: $0', ['before', 'after', 'known good', 'freeze frame']);
    checkOffers('readings: A\nstate: wa$0', ['warm idle', 'key on engine off']);
    checkFirst('readings: A\nvalues:\n  map: {value: 13 inHg, tool: $0', ['gauge']);
    checkFirst('readings: A\ntool: $0', ['gauge']);
    checkOffers('readings: A\nvalues:\n  loop: $0', ['open', 'closed', 'not taken']);
  });

  it('finds a state by the trade’s short word for it', () => {
    const state = offersAt('readings: A\nstate: KO$0').find((each) => each.label === 'key on engine off');
    expect(state?.filter).toContain('KOEO');
  });

  it('finds a function by what it does', () => {
    const drop = offersAt('check: A\nlet:\n  a: ca$0').find((each) => each.label === 'wire_drop');
    expect(drop?.filter).toContain('cable');
  });

  it('offers signals, the case’s own first, found by their meaning as well', () => {
    checkFirst('readings: A\nvalues:\n  $0', ['sump']);
    checkOffers('readings: A\nvalues:\n  rpm: 700 rpm\n  ma$0', ['map', 'maf'], ['rpm']);
    const map = offersAt('readings: A\nvalues:\n  ma$0').find((each) => each.label === 'map');
    expect(map).toMatchObject({ newText: 'map: ', detail: 'Intake manifold pressure' });
    expect(map?.filter).toContain('manifold pressure');
  });

  it('offers the units that fit the signal, the usual ones first, and no others', () => {
    checkFirst('readings: A\nvalues:\n  map: 13 $0', ['kPa', 'inHg']);
    checkOffers('readings: A\nvalues:\n  map: 13 $0', ['psi'], ['V', '%']);
    checkFirst('readings: A\nvalues:\n  compression: {1: 181 $0', ['psi', 'kPa']);
    checkTaken('readings: A\nvalues:\n  map: 13$0', 'inHg', 'readings: A\nvalues:\n  map: 13 inHg');
    checkOffers('readings: A\nvalues:\n  maf: 3 $0', ['g/s', 'V', 'Hz'], ['psi']);
    checkFirst('diag: 1\ncase: A\nengine:\n  displacement: 2.4 $0', ['L']);
  });

  it('offers units and signals where a key names one', () => {
    const capture = 'capture: A\nchannels:\n  front: {column: a, ';
    checkTaken(`${capture}unit: m$0`, 'mV', `${capture}unit: mV`);
    checkTaken(`${capture}signal: o2$0`, 'o2_b1s1', `${capture}signal: o2_b1s1`);
    checkTaken(
      'diag: 1\ncase: A\nsignals:\n  sump:\n    unit: $0',
      '°C',
      'diag: 1\ncase: A\nsignals:\n  sump:\n    unit: °C',
    );
    checkFirst('capture: A\nchannels:\n  o2_b1s1:\n    unit: $0', ['V']);
  });

  it('offers what a pressure is counted from behind its unit', () => {
    checkFirst('readings: A\nvalues:\n  fuel_pressure: 45 psi $0', [
      'absolute',
      'gauge',
      'vacuum',
      'difference',
    ]);
    checkFirst('readings: A\nvalues:\n  fuel_pressure: 45 psi g$0', ['gauge']);
  });

  it('offers headings, signals and units in a table', () => {
    const table = 'readings: A\nstates:\n  idle: warm idle\ntable: |\n';
    checkFirst(`${table}  $0`, ['reading', 'idle', 'unit']);
    checkOffers(`${table}  reading  idle  unit\n  ma$0`, ['map', 'maf']);
    checkFirst(`${table}  reading  idle  unit\n  map  13  $0`, ['kPa', 'inHg']);
    checkTaken(
      `${table}  reading  idle  unit\n  map  13  in$0`,
      'inHg',
      `${table}  reading  idle  unit\n  map  13  inHg`,
    );
  });

  it('offers names in scope, own ones first, then measured ones, functions, and what nobody measured', () => {
    const offers = offersAt(`${koeo}  - $0`).map((each) => each.label);
    const places = ['first', 'koeo', 'koeo.map', 'engine.displacement', 'total_trim', 'ect'].map((each) =>
      offers.indexOf(each),
    );
    expect(places).toEqual([...places].sort((a, b) => a - b));
    expect(places).not.toContain(-1);
    expect(offersAt(`${koeo}  - $0`).find((each) => each.label === 'koeo.map')?.detail).toBe(
      '29.6 inHg absolute (100.2 kPa)',
    );
  });

  it('does not offer a computed name to itself', () => {
    checkOffers('check: A\nlet:\n  a: 1\n  b: $0', ['a'], ['b']);
  });

  it('offers members behind a point', () => {
    checkOffers(`${koeo}  - koeo.$0`, ['map', 'loop'], ['total_trim', 'koeo']);
    checkFirst(`${koeo}  - before.$0`, ['idle', 'fast', 'rpm']);
    checkFirst(`${koeo}  - before.idle.$0`, ['rpm']);
    checkOffers(`${koeo}  - before.rpm.$0`, ['idle', 'fast'], ['map']);
    checkOffers(`${koeo}  - engine.$0`, ['displacement', 'cylinders'], ['altitude']);
    checkTaken(
      'check: A\nexpect:\n  - engine.dis$0',
      'displacement',
      'check: A\nexpect:\n  - engine.displacement',
    );
  });

  it('offers labels, states and cylinders in brackets', () => {
    checkFirst(`${koeo}  - before.rpm[$0`, ['"idle"', '"fast"']);
    const compression =
      'readings: C\nas: c\nvalues:\n  compression: {1: 181 psi, 2: 170 psi}\n---\ncheck: A\nexpect:\n';
    checkFirst(`${compression}  - c.compression[$0`, ['1', '2']);
  });

  it('offers what may follow a value', () => {
    checkFirst(`${koeo}  - koeo.map $0`, ['between', 'within', 'is', 'and']);
    checkTaken('check: A\nexpect:\n  - map $0', 'between', 'check: A\nexpect:\n  - map between low and high');
  });

  it('offers the units of what a number is compared with', () => {
    checkFirst(`${koeo}  - koeo.map < 14 $0`, ['inHg', 'kPa']);
    checkFirst('check: A\nexpect:\n  - ect < 14 $0', ['°C', '°F']);
  });

  it('offers the words that a signal or a test may hold behind `is`', () => {
    checkOffers(`${koeo}  - koeo.loop is $0`, ['"open"', '"closed"'], ['yes']);
    checkOffers('test: Smoke\nas: smoke\nresult: yes\n---\ncheck: A\nexpect:\n  - smoke.result is $0', [
      'yes',
      'no',
      'unclear',
    ]);
  });

  it('offers the words that a function can answer with, called or by a name, begun or not', () => {
    const charging = ['"not charging"', '"low, or held low on purpose"', '"charging"'];
    const check = 'check: A\nlet:\n  said: charging_pattern(14.2 V)\nexpect:\n';
    checkFirst(`${check}  - charging_pattern(14.2 V) is $0`, charging);
    checkFirst(`${check}  - charging_pattern((14 + 0.2) V) is not $0`, charging);
    checkFirst(`${check}  - said is $0`, charging);
    checkOffers(`${check}  - said is "ch$0`, charging, ['yes']);
    expect(offersAt(`${check}  - total_trim(1 %, 2 %) is "$0`)).toEqual([]);
    checkTaken(`${check}  - said is "ch$0"`, '"charging"', `${check}  - said is "charging"`);
    checkTaken(`${check}  - loop is "cl$0`, '"closed"', `${check}  - loop is "closed"`);
  });

  it('offers the words among several values of an answer', () => {
    const check = 'check: A\nlet:\n  events: trim_pattern(before.stft_b1, before.maf)\nexpect:\n';
    checkOffers(`${loads}---\n${check}  - events.pattern is $0`, ['"same grams"'], ['yes']);
    checkOffers(`${loads}---\n${check}  - trim_pattern(before.stft_b1, before.maf).pattern is $0`, [
      '"same grams"',
    ]);
    checkOffers(
      `${check}  - trim_pattern(before.stft_b1, before.maf).grams is $0`,
      ['yes'],
      ['"same grams"'],
    );
  });

  it('offers functions with their signatures, and the names of their parameters', () => {
    const trim = offersAt('check: A\nlet:\n  a: tot$0').find((each) => each.label === 'total_trim');
    expect(trim).toMatchObject({ kind: 'function', snippet: true });
    expect(trim?.detail).toMatch(/^\(stft, ltft\)/);
    checkTaken('check: A\nlet:\n  a: tot$0', 'total_trim', 'check: A\nlet:\n  a: total_trim(stft, ltft)');
    checkOffers('check: A\nlet:\n  a: total_trim($0', ['stft =', 'ltft =']);
  });

  it('works in a block of several lines, in quotes, and in lists within lists', () => {
    checkOffers('check: A\nlet:\n  a: |\n    engine.displacement\n    + engine.$0', ['displacement']);
    checkOffers('suspects: A\nconsider:\n  - name: x\n    predicts:\n      - eng$0', ['engine.displacement']);
  });

  it('offers nothing in free words and remarks', () => {
    expect(offersAt('note: |\n  wo$0')).toEqual([]);
    expect(offersAt('readings: ti$0')).toEqual([]);
    expect(offersAt('readings: A\nstate: warm idle # re$0')).toEqual([]);
    expect(offersAt('check: A\nexpect:\n  - drops["op$0')).toEqual([]);
    expect(offersAt('check: A\nlet:\n  a: wire_drop("18 $0')).toEqual([]);
  });

  const rows = 'capture: Log\nrows: |\n  time  front_volts  O2[V]\n  0  0.1  2\n  1  0.8  3\n';

  it('offers the columns of a capture by their headings, in quotes where they need them', () => {
    const headings = ['time', 'front_volts', 'O2[V]'];
    checkFirst(`${rows}channels:\n  front: {column: $0}\n`, headings);
    checkFirst(`${rows}channels:\n  front: $0\n`, headings);
    checkFirst(`${rows}time: $0\n`, headings);
    checkFirst(`${rows}channels:\n  front: {column: front_volts, time: $0}\n`, headings);
    checkFirst(`${rows}channels:\n  front: {column: front_volts, time: {column: $0}}\n`, headings);
    checkOffers(`${rows}channels:\n  front: {column: front_volts, ti$0}\n`, ['time']);
    const before = `${rows}channels:\n  front: `;
    checkTaken(`${before}{column: $0}\n`, 'front_volts', `${before}{column: front_volts}`);
    checkTaken(`${before}{column: "fr$0"}\n`, 'front_volts', `${before}{column: "front_volts"}`);
    checkTaken(`${before}"$0\n`, 'O2[V]', `${before}"O2[V]"`);
    checkTaken(`${before}O$0\n`, 'O2[V]', `${before}"O2[V]"`);
  });

  it('offers first the units that a signal is mostly read in', () => {
    checkFirst('readings: A\nvalues:\n  ect: 80 $0\n', ['°C', '°F', 'V', 'Ω', 'K']);
    checkFirst('readings: A\nvalues:\n  map: 13 $0\n', ['kPa', 'inHg', 'psi']);
  });
});
