import type { CaptureCell, ReferenceCell } from '../../casefile/cell.ts';
import type { Node, TextNode } from '../../casefile/tree.ts';
import { type Diagnostic, diagnose } from '../../diagnostics/diagnostic.ts';
import { halfWidthSi } from '../../quantity/convert.ts';
import { otherUnit } from '../../quantity/format.ts';
import { parseQuantity } from '../../quantity/parse.ts';
import type { Quantity } from '../../quantity/types.ts';
import { plainUnit, productUnit, unitOf } from '../../quantity/unit.ts';
import { plainNames } from '../../recording/plainName.ts';
import type { Signal } from '../../signals/types.ts';
import { type Fitted, fitTo } from '../fitTo.ts';
import { placedIn } from '../placed.ts';
import { readUnit } from '../readUnit.ts';
import type { Column, Samples } from './samples.ts';
import { type Circumstances, isSignal, unknownSignal } from './values.ts';

/** A channel as its cell names it. */
export interface Channel {
  readonly key: TextNode;
  readonly column: TextNode;
  /** The column itself, where the cell does not name it. */
  readonly at: number | undefined;
  readonly unit: TextNode | undefined;
  readonly signal: TextNode | undefined;
  readonly accuracy: TextNode | undefined;
  readonly scale: TextNode | undefined;
  readonly offset: TextNode | undefined;
  /** Its own time, where it was taken at other moments than the rest. */
  readonly time: CaptureCell['time'];
  readonly node: Node | undefined;
}

/** A channel whose column, unit and signal are known. */
export interface Planned {
  readonly channel: Channel;
  readonly signal: Signal | undefined;
  readonly fitted: Fitted;
  readonly column: Column;
  /** How surely the scale is known, as a share of it, and the offset, in SI. */
  readonly scaleShare: number;
  readonly offsetWidth: number;
}

/** The channels that the cell names; without `channels`, every column of numbers but the times, named after its heading. */
export function channelsOf(
  { channels }: Pick<CaptureCell | ReferenceCell, 'channels'>,
  samples: Samples | undefined,
  times: readonly number[],
): readonly Channel[] {
  if (channels !== undefined) {
    return channels.map(({ key, value }) => ({ ...value, key, at: undefined, column: value.column ?? key }));
  }
  if (samples === undefined) return [];
  return plainNames(samples.written).flatMap((name, at) => {
    if (times.includes(at) || !samples.holdsNumbers(at)) return [];
    const place = samples.placeOf(at);
    const column = { ...place, text: samples.headings[at] ?? '' };
    return [{ ...nothingSaid, at, key: { ...place, text: name }, column }];
  });
}

const nothingSaid = {
  unit: undefined,
  signal: undefined,
  accuracy: undefined,
  scale: undefined,
  offset: undefined,
  time: undefined,
  node: undefined,
} as const;

/** Finds the signal of a channel, and what its numbers mean; a channel that cannot be read says so and has no plan. */
export function planChannel(
  channel: Channel,
  samples: Samples,
  at: number,
  around: Circumstances,
  found: Diagnostic[],
): Planned | undefined {
  const signal = signalOf(channel, around, found);
  const unit = channel.unit === undefined ? undefined : readUnit(channel.unit);
  found.push(...(unit?.diagnostics ?? []));
  if (unit !== undefined && unit.value === undefined) return undefined;
  const written = unit?.value ?? samples.unitIn(at) ?? samples.firstValue(at);
  const raw = written ?? plainQuantity;
  const scaled = scaledBy(raw, channel.scale, found);
  if (scaled === undefined) return undefined;
  if (scaled.quantity.unit === plainUnit && signal !== undefined && !takesPlain(signal)) {
    found.push(withoutUnit(channel, signal));
    return undefined;
  }
  // A gear or a state of the loop may be sampled as a plain number.
  const asQuantity = signal?.holds === 'quantity' ? signal : undefined;
  const fitting = fitTo(scaled.quantity, asQuantity, channel.key.text, channel.unit ?? channel.column);
  found.push(...fitting.diagnostics);
  const { fitted } = fitting;
  if (fitted === undefined) return undefined;
  const { type } = fitted;
  const more = offsetOf(channel.offset, type.dimension, found);
  if (more === undefined) return undefined;
  const zero = type.kind === 'point' ? type.unit.offset : 0;
  const rawType = {
    dimension: raw.unit.dimension,
    kind: channel.scale === undefined ? type.kind : raw.kind,
    unit: raw.unit,
  };
  return {
    channel,
    signal,
    fitted,
    column: {
      at,
      raw: rawType,
      factor: raw.unit.factor * scaled.by,
      offset: zero + more.si,
      clock: undefined,
      fromFirst: false,
    },
    scaleShare: scaled.share,
    offsetWidth: more.width,
  };
}

export function signalOf(channel: Channel, around: Circumstances, found: Diagnostic[]): Signal | undefined {
  const signal = isSignal(channel.signal?.text ?? channel.key.text, around.header);
  if (channel.signal !== undefined && signal === undefined) {
    found.push(unknownSignal(channel.signal, around.header));
  }
  return signal;
}

const plainQuantity: Quantity = parseQuantity('1').value as Quantity;

const takesPlain = (signal: Signal): boolean =>
  signal.holds !== 'quantity' || signal.forms.some((form) => unitOf(form.unit) === plainUnit);

/** What one number of the column stands for: a probe's `100 A/V` turns volts into amperes. */
function scaledBy(
  raw: Quantity,
  scale: TextNode | undefined,
  found: Diagnostic[],
): { readonly quantity: Quantity; readonly by: number; readonly share: number } | undefined {
  if (scale === undefined) return { quantity: raw, by: 1, share: 0 };
  const { value, diagnostics } = parseQuantity(scale.text);
  found.push(...placedIn(scale, diagnostics));
  if (value === undefined) return undefined;
  const unit = productUnit(raw.unit, value.unit);
  return {
    quantity: { ...raw, unit, kind: kindIn(unit.symbol), kindGiven: false },
    by: value.value * value.unit.factor,
    share: value.plusMinus === 0 ? 0 : Math.abs(value.plusMinus / value.value),
  };
}

const kindIn = (unit: string): Quantity['kind'] => parseQuantity(`1 ${unit}`).value?.kind ?? 'none';

/** What is added and its half-width, in SI units; undefined where it is of another dimension. */
function offsetOf(
  offset: TextNode | undefined,
  dimension: Fitted['type']['dimension'],
  found: Diagnostic[],
): { readonly si: number; readonly width: number } | undefined {
  if (offset === undefined) return { si: 0, width: 0 };
  const { value, diagnostics } = parseQuantity(offset.text);
  found.push(...placedIn(offset, diagnostics));
  if (value === undefined) return undefined;
  if (value.unit.dimension === dimension)
    return { si: value.value * value.unit.factor, width: halfWidthSi(value) };
  const facts = {
    name: 'offset',
    got: `\`${offset.text}\``,
    takes: 'the unit of the channel after its scale',
  };
  found.push(diagnose('wrong-value-shape', offset.span, facts));
  return undefined;
}

function withoutUnit({ key, column, node }: Channel, signal: Signal): Diagnostic {
  const units = new Set<string>();
  for (const form of signal.forms) {
    const unit = unitOf(form.unit);
    const other = unit === undefined ? undefined : otherUnit(unit, form.kind);
    units.add(form.unit);
    if (other !== undefined) units.add(other.symbol);
  }
  units.delete('1');
  const fixes = [...units].flatMap((unit) => {
    const title = `Write \`unit: ${unit}\``;
    if (node?.kind === 'text') {
      return [
        {
          title,
          edits: [{ span: node.span, newText: `{column: ${JSON.stringify(column.text)}, unit: ${unit}}` }],
        },
      ];
    }
    if (node?.kind !== 'map' || !node.flow) return [];
    const end = { start: node.span.end - 1, end: node.span.end - 1 };
    return [{ title, edits: [{ span: end, newText: `, unit: ${unit}` }] }];
  });
  return diagnose(
    'channel-without-unit',
    column.span,
    { name: key.text, column: column.text, units: [...units] },
    fixes,
  );
}
