import type { Drawing, Frame, Layer } from './drawing.ts';
import { fontSize, type Layout, lineHeight, marginLines, titleSize, xOf, yOf } from './layout.ts';
import type { Quiet, Tone } from './palette.ts';
import { moveApart, placeBeside } from './placing.ts';
import { textWidth } from './textWidth.ts';

/** A text in a frame's own pixels; its middle line stands at `y`. */
export interface Word {
  readonly x: number;
  readonly y: number;
  readonly text: string;
  readonly colour: Tone | Quiet;
  readonly align: 'left' | 'center' | 'right';
  readonly size: number;
  readonly weight: number;
  /** It stands over a moment: elsewhere when one looks closer. */
  readonly moves?: true;
}

/** All that is said in and around a frame: the title over the first, the axes' names, the margin, what stands beside dots. */
export function frameWords(
  drawing: Drawing,
  frame: Frame,
  layout: Layout,
  at: number,
  isLast: boolean,
): readonly Word[] {
  return [
    ...(at === 0 ? titleWords(layout) : []),
    ...axisNames(drawing, frame, layout, isLast),
    ...marginOf(drawing, frame, layout),
    ...besideDots(drawing, frame, layout),
    ...overRules(drawing, frame, layout),
    ...(isLast ? [...tickWords(drawing, frame, layout), ...beneathWords(drawing, frame, layout)] : []),
  ].map((word) => ({ ...word, text: withMinus(word.text) }));
}

/** As the axes write it. */
const withMinus = (text: string): string => text.replace(/(^|[\s(])-(?=\d)/g, '$1−');

const plain = { size: fontSize, weight: 400 };

function titleWords({ titleLines, padding }: Layout): Word[] {
  return titleLines.map((text, line) => ({
    x: -padding.left + 2,
    y: -padding.top + 12 + line * (titleSize + 4),
    text,
    colour: 'ink',
    align: 'left',
    size: titleSize,
    weight: 600,
  }));
}

function axisNames(drawing: Drawing, frame: Frame, { padding, plotWidth }: Layout, isLast: boolean): Word[] {
  const named = ({ name, unit }: { readonly name: string; readonly unit: string }): string =>
    unit === '' ? name : name === '' ? unit : `${name}, ${unit}`;
  const over: Word = {
    x: -padding.left + 2,
    y: -13,
    text: named(frame.y),
    colour: 'soft',
    align: 'left',
    ...plain,
  };
  if (!isLast) return [over];
  const y = frame.height + 34 + (drawing.beneath.length > 0 ? lineHeight + 4 : 0);
  return [over, { x: plotWidth / 2, y, text: named(drawing.x), colour: 'soft', align: 'center', ...plain }];
}

interface InMargin {
  readonly y: number;
  readonly lines: readonly string[];
  readonly colour: Tone | Quiet;
}

/** Names of lines at their ends, limits and notes at their heights; none covers another. */
function marginOf(drawing: Drawing, frame: Frame, { plotWidth }: Layout): Word[] {
  const wanted = frame.layers.flatMap((layer): InMargin[] => {
    const lines = marginLines(layer);
    const height = lines.length === 0 ? undefined : heightOf(layer, drawing, frame);
    return height === undefined ? [] : [{ y: yOf(frame, height), lines, colour: colourIn(layer) }];
  });
  const heights = moveApart(
    wanted.map(({ y, lines }) => ({ y, tall: lines.length * lineHeight })),
    -4,
    frame.height + 6,
  );
  return wanted.flatMap(({ lines, colour }, at) => {
    const first = (heights[at] ?? 0) - ((lines.length - 1) * lineHeight) / 2;
    return lines.map((text, line) => ({
      x: plotWidth + 8,
      y: first + line * lineHeight,
      text,
      colour,
      align: 'left' as const,
      ...plain,
    }));
  });
}

/** On the axis' scale: where the words in the margin belong. */
function heightOf(layer: Layer, drawing: Drawing, { y: axis }: Frame): number | undefined {
  switch (layer.kind) {
    case 'line': {
      for (let i = layer.y.length - 1; i >= 0; i--) {
        const y = layer.y[i] ?? Number.NaN;
        if ((layer.x[i] ?? 0) <= drawing.x.to && Number.isFinite(y)) {
          return Math.max(axis.from, Math.min(axis.to, y));
        }
      }
      return undefined;
    }
    case 'dots':
      return layer.dots.reduce((last, dot) => (dot.x >= last.x ? dot : last), layer.dots[0] ?? { x: 0, y: 0 })
        .y;
    case 'band': {
      const low = Math.max(axis.from, layer.from ?? axis.from);
      const high = Math.min(axis.to, layer.to ?? axis.to);
      return low > high ? undefined : (low + high) / 2;
    }
    case 'rule':
      return layer.at < axis.from || layer.at > axis.to ? undefined : layer.at;
    case 'note':
      return layer.y;
    case 'marks':
      return undefined;
  }
}

const colourIn = (layer: Layer): Tone | Quiet =>
  layer.kind === 'line' || layer.kind === 'dots' ? layer.tone : 'soft';

function besideDots(drawing: Drawing, frame: Frame, layout: Layout): Word[] {
  const points = frame.layers.flatMap((layer) =>
    layer.kind === 'dots' && layer.shape !== 'cloud'
      ? layer.dots.map(({ x, y, plusMinus, says }) => ({
          x: xOf(drawing, layout, x),
          y: yOf(frame, y),
          reach: yOf(frame, y) - yOf(frame, y + plusMinus),
          text: says,
          colour: layer.tone,
        }))
      : [],
  );
  // A line of few places joins points; one of many is a signal's, and has words in the margin.
  const lines = frame.layers.flatMap((layer) =>
    layer.kind === 'line' && layer.x.length <= fewPlaces
      ? [
          Array.from(layer.x, (x, at) => ({
            x: xOf(drawing, layout, x),
            y: yOf(frame, layer.y[at] ?? Number.NaN),
          })),
        ]
      : [],
  );
  const size = { width: layout.plotWidth, height: frame.height };
  const placed = placeBeside(points, size, fontSize, lines);
  return placed.map(({ x, y, align, text }) => ({ x, y, align, text, colour: 'ink', ...plain }));
}

const fewPlaces = 100;

/** What stands on the axis' own values: over the frame, where it has room. */
function overRules(drawing: Drawing, frame: Frame, layout: Layout): Word[] {
  let free = Number.NEGATIVE_INFINITY;
  return frame.layers.flatMap((layer): Word[] => {
    if ((layer.kind !== 'rule' && layer.kind !== 'band') || layer.along !== 'x' || layer.says === '')
      return [];
    const at =
      layer.kind === 'rule' ? layer.at : ((layer.from ?? drawing.x.from) + (layer.to ?? drawing.x.to)) / 2;
    const x = xOf(drawing, layout, at);
    const half = textWidth(layer.says, fontSize) / 2;
    if (x - half < free || x < 0 || x > layout.plotWidth) return [];
    free = x + half + 6;
    return [{ x, y: 4, text: layer.says, colour: 'soft', align: 'center', ...plain, moves: true }];
  });
}

/** What given ticks say. Of two that would cover each other the first ends at its tick and the second begins there. */
function tickWords(drawing: Drawing, frame: Frame, layout: Layout): Word[] {
  const ticks = (drawing.x.ticks ?? [])
    .map(({ at, says }) => ({ x: xOf(drawing, layout, at), says, wide: textWidth(says, fontSize) }))
    .sort((a, b) => a.x - b.x);
  return ticks.map(({ x, says, wide }, at) => {
    const before = ticks[at - 1];
    const after = ticks[at + 1];
    const near = (other: typeof before): boolean =>
      other !== undefined && Math.abs(other.x - x) < (other.wide + wide) / 2 + 4;
    const align = near(after) ? 'right' : near(before) ? 'left' : 'center';
    const aside = align === 'right' ? 3 : align === 'left' ? -3 : 0;
    return { x: x + aside, y: frame.height + 16, text: says, colour: 'soft', align, ...plain };
  });
}

function beneathWords(drawing: Drawing, frame: Frame, layout: Layout): Word[] {
  return drawing.beneath.map(({ from, to, says }) => ({
    x: xOf(drawing, layout, (from + to) / 2),
    y: frame.height + 34,
    text: says,
    colour: 'ink' as const,
    align: 'center' as const,
    ...plain,
  }));
}
