import { textWidth } from './textWidth.ts';

/** A text beside a point, in pixels from the frame's corner; `text` hangs at x, y as `align` and a middle line say. */
export interface Placed {
  readonly x: number;
  readonly y: number;
  readonly align: 'left' | 'center' | 'right';
  readonly text: string;
}

interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** A point with its text; the line of its ± reaches so far up and down. */
interface Point {
  readonly x: number;
  readonly y: number;
  readonly reach: number;
  readonly text: string;
}

/** A line on the page, from place to place. */
export type Path = readonly { readonly x: number; readonly y: number }[];

/**
 * Sets each text beside its point where it covers neither a point with its ± nor a text that is set already, nor a
 * line: above, below, right or left of it, the nearer first. Where that cannot be, a line is covered before a text is,
 * and where all is taken, it stands above after all.
 */
export function placeBeside(
  points: readonly Point[],
  frame: { readonly width: number; readonly height: number },
  fontSize: number,
  lines: readonly Path[] = [],
): readonly Placed[] {
  const taken: Box[] = points.map(({ x, y, reach }) => ({
    left: x - 4,
    right: x + 4,
    top: y - Math.max(4, reach),
    bottom: y + Math.max(4, reach),
  }));
  const placed: Placed[] = [];
  for (const { x, y, reach, text } of points) {
    if (text === '') continue;
    const wide = textWidth(text, fontSize);
    const away = Math.max(fontSize, reach + fontSize / 2 + 1);
    const choices: readonly Placed[] = [
      { x, y: y - away, align: 'center', text },
      { x, y: y + away, align: 'center', text },
      { x: x + 8, y, align: 'left', text },
      { x: x - 8, y, align: 'right', text },
      { x: x + 3, y: y - away, align: 'left', text },
      { x: x - 3, y: y - away, align: 'right', text },
      { x: x + 3, y: y + away, align: 'left', text },
      { x: x - 3, y: y + away, align: 'right', text },
      { x, y: y - away - fontSize, align: 'center', text },
      { x, y: y + away + fontSize, align: 'center', text },
    ];
    const boxes = choices.map((each) => boxOf(each, wide, fontSize));
    const isFree = (box: Box): boolean =>
      box.left >= -2 &&
      box.right <= frame.width + 2 &&
      box.top >= 0 &&
      box.bottom <= frame.height &&
      !taken.some((other) => overlap(box, other));
    const beside = boxes.findIndex((box) => isFree(box) && !lines.some((line) => crosses(line, box)));
    const place = beside >= 0 ? beside : Math.max(0, boxes.findIndex(isFree));
    const [choice, box] = [choices[place], boxes[place]];
    if (choice === undefined || box === undefined) continue;
    placed.push(choice);
    taken.push(box);
  }
  return placed;
}

function boxOf({ x, y, align }: Placed, wide: number, fontSize: number): Box {
  const left = align === 'left' ? x : align === 'right' ? x - wide : x - wide / 2;
  return { left, right: left + wide, top: y - fontSize / 2, bottom: y + fontSize / 2 };
}

const overlap = (a: Box, b: Box): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

/** Whether any stretch of a line lies in a box: each side cuts away what is beyond it, and something is left. */
function crosses(line: Path, box: Box): boolean {
  return line.some((to, at) => {
    const from = line[at - 1];
    if (from === undefined || Number.isNaN(from.y + to.y)) return false;
    const [wide, tall] = [to.x - from.x, to.y - from.y];
    let [start, end] = [0, 1];
    for (const [step, room] of [
      [-wide, from.x - box.left],
      [wide, box.right - from.x],
      [-tall, from.y - box.top],
      [tall, box.bottom - from.y],
    ] as const) {
      if (step === 0 && room < 0) return false;
      if (step < 0) start = Math.max(start, room / step);
      if (step > 0) end = Math.min(end, room / step);
    }
    return start < end;
  });
}

/** Heights moved apart so that texts of these sizes stand one below the other, each as near to its own as can be. */
export function moveApart(
  wanted: readonly { readonly y: number; readonly tall: number }[],
  from: number,
  to: number,
): readonly number[] {
  const order = wanted.map((_, at) => at).sort((a, b) => (wanted[a]?.y ?? 0) - (wanted[b]?.y ?? 0) || a - b);
  const set: number[] = wanted.map(({ y }) => y);
  let free = from;
  for (const at of order) {
    const half = (wanted[at]?.tall ?? 0) / 2;
    set[at] = Math.max(set[at] ?? 0, free + half);
    free = (set[at] ?? 0) + half;
  }
  let end = to;
  for (const at of order.toReversed()) {
    const half = (wanted[at]?.tall ?? 0) / 2;
    if ((set[at] ?? 0) <= end - half) break;
    set[at] = end - half;
    end -= 2 * half;
  }
  return set;
}
