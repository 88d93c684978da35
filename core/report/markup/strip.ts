import type { Strip } from '../blocks.ts';
import { type Attributes, element, type Markup } from './markup.ts';

const width = 150;
const height = 16;
const edge = 6;

/**
 * The usual range shaded on a line and the reading as a tick with its uncertainty.
 * An open end of the range runs to the edge of the drawing. Who hears the page hears on which side the reading lies.
 */
export function stripMarkup(strip: Strip): Markup {
  const { low, high, value, plusMinus } = strip;
  const known = [low, high, value - plusMinus, value + plusMinus].filter((each) => each !== undefined);
  const least = Math.min(...known);
  const most = Math.max(...known);
  const room = most > least ? (most - least) * 0.12 : 1;
  const from = least - room;
  const scale = (width - 2 * edge) / (most + room - from);
  const place = (at: number): string => (edge + (at - from) * scale).toFixed(1);
  const bandStart = low === undefined ? edge.toFixed(1) : place(low);
  const bandEnd = high === undefined ? (width - edge).toFixed(1) : place(high);
  const middle = height / 2;
  const whisker = `M${place(value - plusMinus)} ${middle}H${place(value + plusMinus)}`;
  return element(
    'svg',
    {
      class: 'strip',
      role: 'img',
      'aria-label': side(strip),
      width: String(width),
      height: String(height),
      viewBox: `0 0 ${width} ${height}`,
      fill: 'none',
    },
    line(`M${edge} ${middle}H${width - edge}`, { 'stroke-width': '.75' }),
    line(`M${bandStart} ${middle}H${bandEnd}`, { 'stroke-opacity': '.3', 'stroke-width': '8' }),
    ...(plusMinus > 0 ? [line(whisker, { 'stroke-width': '2' })] : []),
    line(`M${place(value)} 1V${height - 1}`, { 'stroke-width': '1.5' }),
  );
}

const line = (d: string, stroke: Attributes): Markup =>
  element('path', { d, stroke: 'currentColor', ...stroke });

function side({ low, high, value }: Strip): string {
  if (low !== undefined && value < low) return 'The reading lies below the usual range.';
  if (high !== undefined && value > high) return 'The reading lies above the usual range.';
  return 'The reading lies in the usual range.';
}
