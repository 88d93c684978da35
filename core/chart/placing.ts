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

/**
 * Sets each text beside its point where it covers neither a point with its ± nor a text that is set already: above,
 * below, right or left of it, the nearer first. Where all is taken, it stands above after all.
 */
export function placeBeside(
  points: readonly Point[],
  frame: { readonly width: number; readonly height: number },
  fontSize: number,
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
      { x, y: y - away - fontSize, align: 'center', text },
      { x, y: y + away + fontSize, align: 'center', text },
    ];
    const boxes = choices.map((each) => boxOf(each, wide, fontSize));
    const at = boxes.findIndex(
      (box) =>
        box.left >= -2 &&
        box.right <= frame.width + 2 &&
        box.top >= 0 &&
        box.bottom <= frame.height &&
        !taken.some((other) => overlap(box, other)),
    );
    const place = Math.max(at, 0);
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
