import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { isMap, isScalar, isSeq, parseAllDocuments } from 'yaml';
import { message } from '../../core/diagnostics/words.ts';
import type { Value } from '../../core/expression/value.ts';
import type { Amount } from '../../core/quantity/types.ts';
import { checkCase } from '../../core/rules/checkCase.ts';
import type { Study } from '../../core/study/types.ts';
import { sampleFiles } from '../support/samples.ts';
import { allCases } from './expected/allCases.ts';
import type { ExpectedCase } from './expectedCase.ts';

const folder = join(import.meta.dirname, '..', '..', 'samples');
const textOf = (file: string): string => readFileSync(join(folder, file), 'utf8');

it('every sample has its expected case', () => {
  const files = readdirSync(folder).filter((name) => name.endsWith('.diag'));
  expect(files.sort()).toEqual(allCases.map((each) => each.file).sort());
});

describe.each(allCases)('$file', (expected) => {
  const text = textOf(expected.file);
  const studied = checkCase(text, undefined, sampleFiles);

  it('says that its data are synthetic', () => {
    expect(text.split('\n---')[0]).toMatch(/synthetic/i);
  });

  it('computes what a second route computes', () => {
    for (const [name, value] of Object.entries(expected.values)) {
      const got = namedValue(studied, name);
      if (typeof value === 'number') {
        expect(closeTo(si(got), value), `${name}: ${si(got)} for ${value}`).toBe(true);
        continue;
      }
      if (typeof value === 'string') {
        expect(got, name).toEqual({ kind: 'words', text: value });
        continue;
      }
      for (const [member, memberValue] of Object.entries(value)) {
        if (got.kind === 'fields') {
          const field = got.fields.get(member) ?? expect.fail(`${name}.${member}`);
          if (typeof memberValue === 'string') expect(field).toEqual({ kind: 'words', text: memberValue });
          else expect(closeTo(si(field), memberValue), `${name}.${member}: ${si(field)}`).toBe(true);
          continue;
        }
        if (typeof memberValue === 'string') expect.fail(`${name}.${member} is no text`);
        const memberGot = memberOf(got, member).si;
        expect(closeTo(memberGot, memberValue), `${name}[${member}]: ${memberGot}`).toBe(true);
      }
    }
    for (const [name, { truth, within }] of Object.entries(expected.near ?? {})) {
      const off = Math.abs(readOff(studied, name) - truth);
      expect(off, `${name}: off by ${off}`).toBeLessThan(within);
    }
    expect(notRecomputed(studied, expected)).toEqual([]);
  });

  it('carries the half-widths that follow from the instruments', () => {
    for (const [name, width] of Object.entries(expected.halfWidths)) {
      const got = namedValue(studied, name);
      if (got.kind !== 'one') throw new Error(`${name} is ${got.kind}`);
      const found = Math.hypot(...got.amount.spread.map((each) => each.by));
      expect(closeTo(found, width), `${name}: ± ${found} for ± ${width}`).toBe(true);
    }
  });

  it('ends in the verdicts that the author meant', () => {
    const found = studied.expectations.filter((each) => each.part === 'expect' || each.part === 'verify');
    const others = found.filter((each) => each.truth.verdict !== 'holds');
    const got = Object.fromEntries(others.map((each) => [`${each.part}: ${each.text}`, each.truth.verdict]));
    expect(got).toEqual(expected.notHolding);
    if (!hasBrokenCells(studied)) expect(found.map((each) => each.text)).toEqual(statementsIn(text));
  });

  it('gives each suspect its standing', () => {
    expect(Object.fromEntries(studied.suspects.map((each) => [each.name, each.standing]))).toEqual(
      expected.suspects,
    );
  });

  it('has no findings but the intended ones', () => {
    const serious = studied.findings.filter((each) => each.diagnostic.severity !== 'info');
    const said = serious.map((each) => message(each.diagnostic)).join('\n');
    expect(
      serious.map((each) => each.diagnostic.code),
      said,
    ).toEqual(expected.findings);
  });

  it('starts every cell with its own kind', () => {
    const kinds = studied.file.cells.map((each) => each.cell?.kind);
    if (!hasBrokenCells(studied)) expect(kinds).not.toContain(undefined);
    expect(kinds[0]).toBe('diag');
  });
});

describe('the cases taken together', () => {
  const studies = allCases.map((each) => ({
    file: each.file,
    study: checkCase(textOf(each.file), undefined, sampleFiles),
  }));
  const workbooks = studies.filter(({ study: each }) => each.title.includes('deliberate mistakes'));
  const cases = studies.filter(({ study: each }) => outcome(each) === 'solved');

  it('hold at least eight whole cases, each from complaint to proven repair', () => {
    expect(cases.length).toBeGreaterThanOrEqual(8);
    for (const { file, study: each } of cases) {
      const kinds = each.file.cells.map(({ cell }) => cell?.kind);
      expect(kinds, file).toEqual(
        expect.arrayContaining(['readings', 'check', 'test', 'suspects', 'caution', 'question', 'repair']),
      );
      const proofs = each.expectations.filter(({ part }) => part === 'verify');
      expect(proofs.length, file).toBeGreaterThan(1);
      // One that is left in each list of suspects: a car may have two faults.
      for (const cell of new Set(each.suspects.map((suspect) => suspect.cell))) {
        const left = each.suspects.filter(
          (suspect) => suspect.cell === cell && suspect.standing === 'still possible',
        );
        expect(left, file).toHaveLength(1);
      }
      expect(each.readings.some(({ when }) => when === 'after')).toBe(true);
    }
  });

  it('hold at least two with deliberate mistakes that say so', () => {
    expect(workbooks.length).toBeGreaterThanOrEqual(2);
  });

  it('hold one that is still open, with the measurement to take next', () => {
    const open = studies.filter(({ study: each }) => outcome(each) === 'open');
    expect(open.map(({ file }) => file)).toEqual(['half-worked-case.diag']);
    expect(open.map(({ study: each }) => each.next)).toEqual(['wet.wet_compression']);
  });
});

/** A relative difference of 1e-4 covers the gas constant that the second route takes; everything else agrees far closer. */
function closeTo(found: number, expected: number): boolean {
  return Math.abs(found - expected) <= 1e-4 * Math.abs(expected) + 1e-12;
}

function namedValue(studied: Study, name: string): Value {
  const found =
    studied.computed.find((each) => each.fullName === name) ??
    studied.readings.find((each) => each.fullName === name);
  if (found === undefined) throw new Error(`There is no ${name}.`);
  return found.value;
}

/** `turning.speed`, or a member or field of a computed name: `compressed.share.2`, `valves.own.evo`. */
function readOff(studied: Study, name: string): number {
  const whole = studied.computed.find((each) => each.fullName === name);
  if (whole !== undefined) return si(whole.value);
  const at = name.lastIndexOf('.');
  const member = name.slice(at + 1);
  const value = namedValue(studied, name.slice(0, at));
  if (value.kind === 'members') return memberOf(value, member).si;
  const field = value.kind === 'fields' ? value.fields.get(member) : undefined;
  if (field === undefined) throw new Error(`There is no ${name}.`);
  return si(field);
}

function si(value: Value): number {
  if (value.kind !== 'one') throw new Error(`A single value was expected, not ${JSON.stringify(value)}.`);
  return value.amount.si;
}

function memberOf(value: Value, member: string): Amount {
  const found = value.kind === 'members' ? value.members.get(member) : undefined;
  if (found === undefined || 'kind' in found) throw new Error(`There is no member ${member}.`);
  return found;
}

/** Names that a case computes and no second route does; values that could not be computed are checked by their findings. */
function notRecomputed(studied: Study, expected: ExpectedCase): string[] {
  const near = Object.keys(expected.near ?? {});
  return studied.computed
    .filter((each) => each.value.kind !== 'absent' && expected.values[each.fullName] === undefined)
    .map((each) => each.fullName)
    .filter((name) => !near.some((each) => each === name || each.startsWith(`${name}.`)));
}

function outcome(studied: Study): string | undefined {
  const header = studied.file.cells[0]?.cell;
  return header?.kind === 'diag' ? header.outcome?.text : undefined;
}

function hasBrokenCells(studied: Study): boolean {
  return studied.file.cells.some((each) => each.cell === undefined);
}

/** The statements of `expect` and `verify` as the yaml package reads them, in the order of the file. */
function statementsIn(text: string): string[] {
  return [...parseAllDocuments(text)].flatMap((document) => {
    if (!('contents' in document)) return [];
    return ['expect', 'verify'].flatMap((key) => {
      const list = document.get(key);
      if (!isSeq(list)) return [];
      return list.items.map((item) => {
        const node = isMap(item) ? item.get(key, true) : item;
        return String(isScalar(node) ? node.value : node).trim();
      });
    });
  });
}
