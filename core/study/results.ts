import type { Code } from '../diagnostics/diagnostic.ts';
import type { Severity } from '../diagnostics/row.ts';
import { message } from '../diagnostics/words.ts';
import type { Absent, Series, Value, Verdict } from '../expression/value.ts';
import { halfWidth } from '../quantity/amount.ts';
import { fromSi } from '../quantity/convert.ts';
import { round12 } from '../quantity/format.ts';
import type { Amount, QuantityType } from '../quantity/types.ts';
import { lineIndex, positionAt } from '../text/lines.ts';
import type { Summary } from './summary.ts';
import type { Expectation, Finding, Part, Standing, Study } from './types.ts';

/** The results of `casebook check --format json`. This shape is a promise: it only ever grows. */
export interface Results {
  readonly version: 1;
  readonly cases: readonly CaseResult[];
  readonly summary: Summary;
}

export interface CaseResult {
  readonly file: string;
  readonly title: string;
  readonly values: Readonly<Record<string, ValueResult>>;
  readonly expectations: readonly ExpectationResult[];
  readonly suspects: readonly SuspectResult[];
  readonly next?: string;
  readonly diagnostics: readonly DiagnosticResult[];
}

type NumberOrNull = number | null;

export interface ValueResult {
  readonly value?:
    | NumberOrNull
    | string
    | { readonly from: NumberOrNull; readonly to: NumberOrNull }
    | readonly (readonly [number, number])[]
    | Readonly<Record<string, NumberOrNull>>;
  /** Several values of different sorts by name. */
  readonly fields?: Readonly<Record<string, ValueResult>>;
  readonly series?: {
    readonly samples: number;
    readonly from: NumberOrNull;
    readonly to: NumberOrNull;
    readonly min: NumberOrNull;
    readonly max: NumberOrNull;
    readonly mean: NumberOrNull;
  };
  readonly unit?: string;
  readonly xUnit?: string;
  readonly kind?: string;
  readonly uncertainty?: number | Readonly<Record<string, number>>;
  readonly status?: string;
  readonly why?: string;
  /** Of a map, the members without a number: the same two of each. */
  readonly missing?: Readonly<Record<string, { readonly status: string; readonly why: string }>>;
}

export interface ExpectationResult {
  readonly cell: number;
  readonly part: Part;
  readonly title: string;
  readonly text: string;
  readonly verdict: Verdict;
  readonly value: NumberOrNull;
  readonly unit?: string;
  readonly uncertainty?: number;
  readonly limit?: string;
  readonly distance?: number;
  readonly from: readonly string[];
  readonly line: number;
  readonly column: number;
  readonly member?: string;
  readonly why?: string;
}

export interface SuspectResult {
  readonly name: string;
  readonly standing: Standing;
  readonly by: readonly string[];
}

export interface DiagnosticResult {
  readonly code: Code;
  readonly severity: Severity;
  readonly message: string;
  readonly line: number;
  readonly column: number;
  readonly endLine: number;
  readonly endColumn: number;
}

/** A case's results as plain data. `file` is how the case is called: its path with `/`. */
export function caseResult(study: Study, file: string): CaseResult {
  const index = lineIndex(study.text);
  const startOf = (cell: number | undefined): number =>
    cell === undefined ? 0 : (study.file.stream.starts[cell] ?? 0);
  const values: Record<string, ValueResult> = Object.create(null) as Record<string, ValueResult>;
  const names = namesOf(study);
  study.readings.forEach((reading, i) => {
    values[names[i] ?? reading.fullName] = valueResult(reading.value);
  });
  for (const computed of study.computed) values[computed.fullName] = valueResult(computed.value);
  return {
    file,
    title: study.title,
    values,
    expectations: study.expectations.map((each) => {
      const at = positionAt(index, startOf(each.cell) + each.span.start);
      return expectationResult(each, at);
    }),
    suspects: study.suspects.map(({ name, standing, by }) => ({ name, standing, by })),
    ...(study.next === undefined ? {} : { next: study.next }),
    diagnostics: study.findings.map((finding) => diagnosticResult(finding, index, startOf(finding.cell))),
  };
}

/** The readings' names; one of a cell without an `as` carries the cell's number where the name alone is not unique: `2.map`. */
function namesOf({ readings, file }: Study): readonly string[] {
  const count = new Map<string, number>();
  for (const { fullName } of readings) count.set(fullName, (count.get(fullName) ?? 0) + 1);
  return readings.map(({ fullName, cell, from }) => {
    const holder = file.cells[cell]?.cell;
    const unnamed = from !== 'header' && holder !== undefined && !('as' in holder && holder.as !== undefined);
    return unnamed && (count.get(fullName) ?? 0) > 1 ? `${cell + 1}.${fullName}` : fullName;
  });
}

function expectationResult(
  expectation: Expectation,
  at: { readonly line: number; readonly column: number },
): ExpectationResult {
  const { truth } = expectation;
  const { left } = truth;
  return {
    cell: expectation.cell + 1,
    part: expectation.part,
    title: expectation.title,
    text: expectation.text,
    verdict: truth.verdict,
    value: left === undefined ? null : inUnit(left.amount, left.type),
    ...(left === undefined
      ? {}
      : { unit: left.type.unit.symbol, uncertainty: widthIn(left.amount, left.type) }),
    ...(truth.limit === undefined ? {} : { limit: truth.limit }),
    ...(truth.margin === undefined || truth.marginType === undefined
      ? {}
      : { distance: round12(truth.margin / truth.marginType.unit.factor) }),
    from: expectation.from,
    line: at.line,
    column: at.column,
    ...(truth.member === undefined ? {} : { member: truth.member }),
    ...(truth.why === undefined ? {} : { why: truth.why }),
  };
}

function diagnosticResult(
  { diagnostic }: Finding,
  index: ReturnType<typeof lineIndex>,
  start: number,
): DiagnosticResult {
  const from = positionAt(index, start + diagnostic.span.start);
  const to = positionAt(index, start + diagnostic.span.end);
  return {
    code: diagnostic.code,
    severity: diagnostic.severity,
    message: message(diagnostic),
    line: from.line,
    column: from.column,
    endLine: to.line,
    endColumn: to.column,
  };
}

function valueResult(value: Value): ValueResult {
  switch (value.kind) {
    case 'one':
      return {
        value: inUnit(value.amount, value.type),
        ...units(value.type),
        uncertainty: widthIn(value.amount, value.type),
      };
    case 'members': {
      const members = [...value.members];
      const missing = members.flatMap(([name, member]) =>
        isAbsent(member) ? [[name, { status: member.status, why: member.why }] as const] : [],
      );
      // A label may be called `__proto__`, which only `fromEntries` takes for a name.
      return {
        value: Object.fromEntries(
          members.map(([name, member]) => [name, isAbsent(member) ? null : inUnit(member, value.type)]),
        ),
        ...units(value.type),
        uncertainty: Object.fromEntries(
          members.map(([name, member]) => [name, isAbsent(member) ? 0 : widthIn(member, value.type)]),
        ),
        ...(missing.length === 0 ? {} : { missing: Object.fromEntries(missing) }),
      };
    }
    case 'fields':
      return {
        fields: Object.fromEntries([...value.fields].map(([name, each]) => [name, valueResult(each)])),
      };
    case 'series':
      return { series: seriesResult(value), ...units(value.type) };
    case 'curve':
      return {
        value: value.x.map((x, i) => [
          round12(fromSi(x, value.xType.unit, value.xType.kind)),
          round12(fromSi(value.y[i] ?? Number.NaN, value.yType.unit, value.yType.kind)),
        ]),
        unit: value.yType.unit.symbol,
        xUnit: value.xType.unit.symbol,
      };
    case 'range': {
      const end = (amount: Amount | undefined): NumberOrNull =>
        amount === undefined ? null : inUnit(amount, value.type);
      return { value: { from: end(value.low), to: end(value.high) }, ...units(value.type) };
    }
    case 'words':
      return { value: value.text };
    case 'truth':
      return { value: value.verdict };
    case 'absent':
      return { value: null, status: value.status, why: value.why };
  }
}

function seriesResult(series: Series): NonNullable<ValueResult['series']> {
  const { samples, time } = series;
  let count = 0;
  let min = Number.POSITIVE_INFINITY;
  let max = Number.NEGATIVE_INFINITY;
  let sum = 0;
  for (const sample of samples) {
    if (Number.isNaN(sample)) continue;
    count++;
    sum += sample;
    if (sample < min) min = sample;
    if (sample > max) max = sample;
  }
  const read = (si: number): NumberOrNull =>
    count === 0 ? null : round12(fromSi(si, series.type.unit, series.type.kind));
  const from = time[0];
  const to = time[time.length - 1];
  return {
    samples: samples.length,
    from: from === undefined ? null : round12(from),
    to: to === undefined ? null : round12(to),
    min: read(min),
    max: read(max),
    mean: read(sum / count),
  };
}

function units(type: QuantityType): { readonly unit: string; readonly kind?: string } {
  const unit = type.unit.symbol;
  return type.kind === 'none' || type.kind === 'open' ? { unit } : { unit, kind: type.kind };
}

function inUnit(amount: Amount, type: QuantityType): NumberOrNull {
  const value = round12(fromSi(amount.si, type.unit, type.kind));
  return Number.isFinite(value) ? value : null;
}

const widthIn = (amount: Amount, type: QuantityType): number =>
  round12(halfWidth(amount) / Math.abs(type.unit.factor));

const isAbsent = (member: Amount | Absent): member is Absent => 'kind' in member;
