import { formatNumber } from '../quantity/format.ts';
import type { Axis, Drawing, Frame, Layer } from './drawing.ts';
import { roundStep } from './measure.ts';
import { inLines, textWidth } from './textWidth.ts';

/** Pixels: a column of text. */
const columnWidth = 680;
export const fontSize = 11;
export const titleSize = 13;
export const lineHeight = 13;
const mostMargin = 170;

/** Where things stand, in pixels. */
export interface Layout {
  readonly width: number;
  readonly height: number;
  readonly plotWidth: number;
  readonly padding: {
    readonly left: number;
    readonly right: number;
    readonly top: number;
    readonly bottom: number;
  };
  /** From one frame's foot to the next one's head. */
  readonly spacing: number;
  /** The frames' heads, from the first one's. */
  readonly tops: readonly number[];
  readonly titleLines: readonly string[];
}

export function layoutOf(drawing: Drawing): Layout {
  const { frames, width = columnWidth } = drawing;
  const left = Math.ceil(Math.max(...frames.map(({ y }) => ticksWidth(y)))) + 16;
  const said = frames.flatMap((frame) => frame.layers.flatMap(marginLines));
  const right = Math.ceil(Math.max(16, ...said.map((line) => textWidth(line, fontSize) + 14)));
  const titleLines = inLines(titleOf(drawing), titleSize, width - 10);
  const top = 12 + titleLines.length * (titleSize + 4) + 22;
  const bottom = 42 + (drawing.beneath.length > 0 ? lineHeight + 4 : 0);
  const spacing = 34;
  const tops: number[] = [];
  let at = 0;
  for (const { height } of frames) {
    tops.push(at);
    at += height + spacing;
  }
  return {
    width,
    height: top + at - spacing + bottom,
    plotWidth: width - left - right,
    padding: { left, right, top, bottom },
    spacing,
    tops,
    titleLines,
  };
}

/** What is drawn, and where it was taken. */
export function titleOf({ title, taken }: Pick<Drawing, 'title' | 'taken'>): string {
  const whole = taken === '' ? title : `${title}: ${taken}`;
  return whole.slice(0, 1).toUpperCase() + whole.slice(1);
}

/** What stands in the margin at the right: names of lines, limits and notes. */
function marginWords(layer: Layer): string {
  switch (layer.kind) {
    case 'line':
    case 'note':
      return layer.says;
    case 'dots':
      return layer.says;
    case 'band':
    case 'rule':
      return layer.along === 'y' ? layer.says : '';
    case 'marks':
      return '';
  }
}

export function marginLines(layer: Layer): readonly string[] {
  const words = marginWords(layer);
  return words === '' ? [] : inLines(words, fontSize, mostMargin - 14);
}

/** The widest of the numbers that the axis will show. */
function ticksWidth({ from, to, ticks }: Axis): number {
  if (ticks !== undefined) return Math.max(0, ...ticks.map(({ says }) => textWidth(says, fontSize)));
  const step = roundStep((to - from) / 5);
  const first = Math.ceil(from / step) * step;
  let wide = 0;
  for (let k = 0; k < 12 && first + k * step <= to; k++) {
    wide = Math.max(wide, textWidth(formatNumber(first + k * step), fontSize));
  }
  return wide;
}

export function xOf(drawing: Drawing, { plotWidth }: Layout, x: number): number {
  const { from, to } = drawing.x;
  return to === from ? 0 : ((x - from) / (to - from)) * plotWidth;
}

export function yOf({ y: { from, to }, height }: Frame, y: number): number {
  return to === from ? height : height - ((y - from) / (to - from)) * height;
}
