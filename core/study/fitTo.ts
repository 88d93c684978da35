import type { TextNode } from '../casefile/tree.ts';
import { type Diagnostic, diagnose, type Fix } from '../diagnostics/diagnostic.ts';
import { gasolineDensity } from '../engine/fuel/ethanolBlend.ts';
import { toSi } from '../quantity/convert.ts';
import { formatNumber, otherUnit } from '../quantity/format.ts';
import type { Kind, Quantity, QuantityType, Unit } from '../quantity/types.ts';
import { plainUnit, unitOf } from '../quantity/unit.ts';
import { rangesOf } from '../signals/ranges.ts';
import type { Form, Signal } from '../signals/types.ts';

/** What a written quantity is once its signal has had its say. */
export interface Fitted {
  readonly type: QuantityType;
  readonly form: Form | undefined;
}

/**
 * Fits a quantity to the signal that it is a reading of: its unit decides the form, its form decides the kind.
 * Without a signal (a reference's free name), and where the signal's own unit could not be read, it stands as written.
 */
export function fitTo(
  quantity: Quantity,
  signal: Signal | undefined,
  name: string,
  node: TextNode,
): { readonly fitted: Fitted | undefined; readonly diagnostics: readonly Diagnostic[] } {
  const { unit } = quantity;
  const as = (kind: Kind, form: Form | undefined): Fitted => ({
    type: { dimension: unit.dimension, kind, unit },
    form,
  });
  if (signal === undefined || signal.forms.length === 0)
    return { fitted: as(quantity.kind, undefined), diagnostics: [] };

  const plain = unit === plainUnit;
  const form = signal.forms.find((each) => {
    const usual = unitOf(each.unit);
    if (usual?.dimension !== unit.dimension) return false;
    return !plain || usual === plainUnit;
  });
  if (form === undefined) {
    const diagnostic = plain
      ? missingUnit(quantity, signal, name, node)
      : wrongDimension(quantity, signal, name, node);
    return { fitted: undefined, diagnostics: [diagnostic] };
  }
  // A signal that leaves the kind open takes it as written: 195 °F is a point.
  const kind = form.kind ?? quantity.kind;
  if (quantity.kindGiven && quantity.kind !== kind) {
    return { fitted: undefined, diagnostics: [wrongKind(quantity, kind, signal, name, node)] };
  }
  return { fitted: as(kind, form), diagnostics: [] };
}

function wrongKind(quantity: Quantity, kind: Kind, signal: Signal, name: string, node: TextNode): Diagnostic {
  const same = fromOtherSide(quantity, kind);
  const other = siblings[signal.name]?.[quantity.kind];
  const facts = {
    name,
    meaning: signal.meaning,
    is: kindWords(quantity.kind),
    takes: kindWords(kind),
    ...(same === undefined ? {} : { same }),
    ...(other === undefined ? {} : { signal: other }),
  };
  const fixes: Fix[] =
    same === undefined || node.style !== 'plain' || !node.text.includes(quantity.unit.symbol)
      ? []
      : [{ title: `Write \`${same}\``, edits: [{ span: node.span, newText: same }] }];
  return diagnose('wrong-kind', node.span, facts, fixes);
}

/** Signals of one place whose readings are counted from different zeros. */
const siblings: Readonly<Record<string, Partial<Record<Kind, string>>>> = {
  map: { vacuum: 'vacuum', gauge: 'boost' },
  vacuum: { absolute: 'map', gauge: 'boost' },
  boost: { absolute: 'map', vacuum: 'vacuum' },
};

const otherSide: Partial<Record<Kind, Kind>> = { btdc: 'atdc', atdc: 'btdc', bbdc: 'abdc', abdc: 'bbdc' };

/** 12 °ATDC are -12 °BTDC; undefined for what is not counted from one dead centre both ways, or has a ±. */
function fromOtherSide({ value, kind, plusMinus }: Quantity, wanted: Kind): string | undefined {
  if (otherSide[kind] !== wanted || plusMinus !== 0) return undefined;
  return `${formatNumber(-value)} °${wanted.toUpperCase()}`;
}

function missingUnit({ value: number }: Quantity, signal: Signal, name: string, node: TextNode): Diagnostic {
  const all = unitsFor(signal);
  const possible = all.filter((unit) => isPossible(number, unit, signal));
  // Where none makes the number possible, the unit is missing all the same.
  const units = possible.length > 0 ? possible : all;
  const value = node.text.trim();
  const fixes: Fix[] = units.map((unit) => ({
    title: `Write \`${value} ${unit}\``,
    edits: [{ span: { start: node.span.end, end: node.span.end }, newText: ` ${unit}` }],
  }));
  const safe = node.style === 'plain' ? fixes : [];
  return diagnose('missing-unit', node.span, { name, value, units }, safe);
}

function wrongDimension(quantity: Quantity, signal: Signal, name: string, node: TextNode): Diagnostic {
  const units = (slips[quantity.unit.symbol] ?? []).filter((unit) => fits(unit, signal));
  const asVolume = volumeOfFuel(quantity, signal);
  const fixes: Fix[] = units.flatMap((unit) => unitReplaced(node, unit));
  if (asVolume !== undefined)
    fixes.push({ title: `Write \`${asVolume}\``, edits: [{ span: node.span, newText: asVolume }] });
  const facts = {
    ...(asVolume === undefined ? {} : { asVolume: `${asVolume} at ${gasolineDensity} kg/L` }),
    name,
    meaning: signal.meaning,
    written: node.text.trim(),
    is: quantity.unit.dimension.name,
    takes: (units.length > 0 ? units : unitsFor(signal)).map((unit) => `\`${unit}\``),
  };
  return diagnose('wrong-dimension', node.span, facts, fixes);
}

/** An injector's flow by mass, as sellers of injectors write it, in the volume that the header takes: 24 lb/h is 244 cc/min of gasoline. */
function volumeOfFuel({ value, unit }: Quantity, { forms: [form] }: Signal): string | undefined {
  // The flow of an injector is the only one that is written in this unit; others are of air or of diesel.
  const target = form?.unit === 'cc/min' ? unitOf(form.unit) : undefined;
  if (target === undefined || unit.dimension !== unitOf('g/s')?.dimension || !(value > 0)) return undefined;
  const flow = toSi(value, unit, 'none') / (gasolineDensity * 1000) / target.factor;
  return `${Number(flow.toPrecision(3))} ${target.symbol}`;
}

/** Units that are written for others, by what they mean there: the farad, the pound, a gauge's kilograms. */
const slips: Readonly<Record<string, readonly string[]>> = { F: ['°F'], lb: ['psi'], 'kg/cm²': ['kgf/cm²'] };

/** The unit that is meant by one which this signal cannot have, such as °F by F; undefined where the signal can, or nobody knows. */
export function unitMeant(unit: Unit, signal: Signal): string | undefined {
  if (fits(unit.symbol, signal)) return undefined;
  return slips[unit.symbol]?.find((each) => fits(each, signal));
}

/** The value with another unit in its unit's place, where the text stands as it is read. */
function unitReplaced(node: TextNode, unit: string): Fix[] {
  const found = /^(.*\d)\s*([A-Za-z][A-Za-z/²2]*)\s*$/.exec(node.text);
  if (found === null || node.style !== 'plain') return [];
  const newText = `${found[1]?.trim()} ${unit}`;
  return [{ title: `Write \`${newText}\``, edits: [{ span: node.span, newText }] }];
}

function fits(unit: string, signal: Signal): boolean {
  // A unit may be offered with a word behind it: `psi gauge`.
  const dimension = unitOf(unit.split(' ')[0] ?? '')?.dimension;
  return dimension !== undefined && signal.forms.some((form) => unitOf(form.unit)?.dimension === dimension);
}

/** Of the units offered for one that is unknown, those that the signal can have; all of them where none fits. */
export function unitsThatFit(
  diagnostics: readonly Diagnostic[],
  signal: Signal | undefined,
): readonly Diagnostic[] {
  if (signal === undefined) return diagnostics;
  return diagnostics.map((each) => {
    if (each.code !== 'unknown-unit') return each;
    const { word, nearest } = each.facts;
    const fitting = nearest.filter((unit) => fits(unit, signal));
    if (fitting.length === 0 || fitting.length === nearest.length) return each;
    const fixes = each.fixes.filter((_, at) => fitting.includes(nearest[at] ?? ''));
    return diagnose('unknown-unit', each.span, { word, nearest: fitting }, fixes);
  });
}

/** Whether a part can have so many of the unit: 2000 L are no engine's displacement, 2000 cc are. */
function isPossible(number: number, symbol: string, signal: Signal): boolean {
  const unit = unitOf(symbol);
  return signal.forms.some((form) => {
    if (unit === undefined || unitOf(form.unit)?.dimension !== unit.dimension) return false;
    const { physical } = rangesOf(form);
    if (physical === undefined) return true;
    const si = toSi(number, unit, form.kind ?? 'none');
    return si >= physical.low && si <= physical.high;
  });
}

/** The units to offer for a signal: those that a form lists, or its own and its neighbour in the other system. */
function unitsFor(signal: Signal): string[] {
  const units = new Set<string>();
  for (const form of signal.forms) {
    if (form.offered !== undefined) {
      for (const each of form.offered) units.add(each);
      continue;
    }
    units.add(form.unit);
    const unit = unitOf(form.unit);
    const other = unit === undefined ? undefined : otherUnit(unit, form.kind);
    if (other !== undefined) units.add(other.symbol);
  }
  units.delete('1');
  return [...units];
}

/** How a kind is said in a sentence. */
function kindWords(kind: Kind): string {
  switch (kind) {
    case 'absolute':
      return 'an absolute pressure';
    case 'gauge':
      return 'a gauge pressure (above the barometer)';
    case 'vacuum':
      return 'a vacuum (below the barometer)';
    case 'difference':
      return 'a difference';
    case 'point':
      return 'a temperature';
    case 'btdc':
      return 'an angle before top dead centre';
    case 'atdc':
      return 'an angle after top dead centre';
    case 'bbdc':
      return 'an angle before bottom dead centre';
    case 'abdc':
      return 'an angle after bottom dead centre';
    case 'open':
      return 'a pressure';
    case 'none':
      return 'a plain quantity';
  }
}
