import type { ChartSpec } from '../../../core/chart/spec.ts';
import type { ChartBlock } from '../../../core/report/blocks.ts';
import { chartWords } from '../../../core/report/markup/chart.ts';
import { element } from '../../../core/report/markup/markup.ts';
import type { AskCloser } from '../askCloser.ts';
import { makeNode } from '../makeNode.ts';
import type { ShownCharts } from '../showCharts.ts';
import { chartStyle } from './chartStyle.ts';
import { placesIn, readingsAt, spoken, stepFrom } from './reading.ts';
import { drawWindow } from './vega.ts';
import { isWhole, movedTo, type Window, zoomed } from './window.ts';

let made: CSSStyleSheet | undefined;

/** One style sheet for all charts of a notebook. */
export function chartSheet(): CSSStyleSheet {
  if (made === undefined) {
    made = new CSSStyleSheet();
    made.replaceSync(chartStyle);
  }
  return made;
}

let drawings = 0;

/**
 * Makes a chart of a figure that holds it in words: a drawing whose cursor is moved by pointer and arrows, a table of
 * the values there, and, where the axis is time, a closer look by dragging, by + and −, and by buttons; Home shows all.
 */
export function showChart(figure: HTMLElement, block: ChartBlock, ask: AskCloser | undefined): ShownCharts {
  const { spec: whole, title, cell } = block;
  const name = `cut-${++drawings}`;
  let chart: ChartSpec = whole;
  let window: Window = whole.x;
  let place: number | undefined;
  let isGone = false;
  /** Until someone points at the chart or comes to it by keyboard, no line crosses what is drawn. */
  let isLookedAt = false;
  let dragged: { readonly from: number; to: number } | undefined;
  let asked = 0;

  const plot = make('div', {
    class: 'plot',
    role: 'slider',
    tabindex: '0',
    'aria-label': `${title}: cursor`,
    'aria-valuemin': String(window.from),
    'aria-valuemax': String(window.to),
  });
  const beside = make('div', { class: 'beside' });
  const buttons = whole.secondsInOne === undefined ? undefined : makeButtons();
  const look = make('div', { class: 'look' });
  look.append(plot, beside);
  const parts = [look, ...(buttons === undefined ? [] : [buttons.row]), makeNode(chartWords(block))];
  plot.style.minHeight = '1px';
  plot.style.width = `${whole.width}px`;
  plot.style.aspectRatio = `${whole.width} / ${whole.height}`;

  figure.replaceChildren(...parts);
  redraw();
  moveTo(placesIn(chart, window)[0]);

  plot.addEventListener('focus', lookedAt);
  plot.addEventListener('keydown', onKey);
  plot.addEventListener('pointermove', onPointer);
  plot.addEventListener('pointerdown', onPointer);
  plot.addEventListener('pointerup', onPointer);
  plot.addEventListener('pointercancel', () => chosen(undefined));

  return {
    dispose() {
      isGone = true;
      for (const each of parts) each.remove();
    },
  };

  function redraw(): void {
    const svg = makeNode(drawWindow(chart, window, name)) as Element;
    svg.setAttribute('aria-hidden', 'true');
    plot.replaceChildren(svg);
    drawCursor();
    buttons?.show(isWhole(window, whole.x));
  }

  function moveTo(to: number | undefined): void {
    if (to === undefined) return;
    place = to;
    const seen = movedTo(window, to, whole.x);
    if (seen.from !== window.from) lookAt(seen);
    drawCursor();
    const words = spoken(chart, to);
    plot.setAttribute('aria-valuenow', String(to));
    plot.setAttribute('aria-valuetext', words);
    beside.replaceChildren(readings(chart, to, words));
  }

  function lookAt(to: Window): void {
    window = to;
    plot.setAttribute('aria-valuemin', String(to.from));
    plot.setAttribute('aria-valuemax', String(to.to));
    if (isWhole(to, whole.x)) chart = whole;
    redraw();
    const mine = ++asked;
    if (ask === undefined || cell === undefined || (chart === whole && isWhole(to, whole.x))) return;
    ask({ cell, from: to.from, to: to.to }).then((closer) => {
      // What was asked for before is late.
      if (isGone || mine !== asked || closer === null) return;
      chart = closer;
      redraw();
      if (place !== undefined) moveTo(place);
    });
  }

  function drawCursor(): void {
    const svg = plot.querySelector('svg');
    svg?.querySelector('.cursor')?.remove();
    const frames = chart.plot.frames;
    const [first, last] = [frames[0], frames.at(-1)];
    if (svg == null || place === undefined || first === undefined || last === undefined) return;
    if (!isLookedAt) return;
    if (place < window.from || place > window.to) return;
    const x = pixels(place);
    const line = { class: 'cursor', x1: x, x2: x, y1: String(first.top), y2: String(last.top + last.height) };
    svg.append(makeNode(element('line', line)));
  }

  function lookedAt(): void {
    if (isLookedAt) return;
    isLookedAt = true;
    drawCursor();
  }

  function pixels(at: number): string {
    const { left, width } = chart.plot;
    return (left + ((at - window.from) / (window.to - window.from || 1)) * width).toFixed(1);
  }

  function placeAt({ clientX }: PointerEvent): number {
    const { left, width } = plot.getBoundingClientRect();
    const x = ((clientX - left) / (width || 1)) * chart.width;
    const share = (x - chart.plot.left) / chart.plot.width;
    return window.from + Math.min(1, Math.max(0, share)) * (window.to - window.from);
  }

  function onPointer(event: PointerEvent): void {
    lookedAt();
    const at = placeAt(event);
    if (event.type === 'pointerdown' && event.button === 0 && whole.secondsInOne !== undefined) {
      plot.setPointerCapture(event.pointerId);
      dragged = { from: at, to: at };
    }
    if (dragged !== undefined) chosen({ from: dragged.from, to: at });
    moveTo(nearestPlace(at));
    if (event.type !== 'pointerup' || dragged === undefined) return;
    const { from, to } = { from: Math.min(dragged.from, at), to: Math.max(dragged.from, at) };
    chosen(undefined);
    if (to - from > (window.to - window.from) / 100) lookAt({ from, to });
  }

  /** The stretch that a drag has chosen so far. */
  function chosen(stretch: { readonly from: number; to: number } | undefined): void {
    dragged = stretch;
    const svg = plot.querySelector('svg');
    svg?.querySelector('.chosen')?.remove();
    if (svg == null || stretch === undefined) return;
    const [a, b] = [Number(pixels(stretch.from)), Number(pixels(stretch.to))];
    const last = chart.plot.frames.at(-1);
    const top = chart.plot.frames[0]?.top ?? 0;
    const size = {
      width: String(Math.abs(b - a)),
      height: String((last?.top ?? 0) + (last?.height ?? 0) - top),
    };
    svg.append(
      makeNode(element('rect', { class: 'chosen', x: String(Math.min(a, b)), y: String(top), ...size })),
    );
  }

  function nearestPlace(at: number): number | undefined {
    return placesIn(chart, window).reduce<number | undefined>(
      (best, each) => (best === undefined || Math.abs(each - at) < Math.abs(best - at) ? each : best),
      undefined,
    );
  }

  function onKey(event: KeyboardEvent): void {
    if (event.altKey || event.ctrlKey || event.metaKey) return;
    const step = (window.to - window.from) * (event.shiftKey ? 0.1 : 0.01);
    const least = chart.reads.lines.length === 0 ? 0 : step;
    switch (event.key) {
      case 'ArrowRight':
      case 'ArrowUp':
        moveTo(next(1, least));
        break;
      case 'ArrowLeft':
      case 'ArrowDown':
        moveTo(next(-1, least));
        break;
      case 'PageUp':
        moveTo(next(1, (window.to - window.from) * 0.1));
        break;
      case 'PageDown':
        moveTo(next(-1, (window.to - window.from) * 0.1));
        break;
      case '+':
      case '=':
        zoom(0.5);
        break;
      case '-':
        zoom(2);
        break;
      case 'Home':
        lookAt(whole.x);
        break;
      case 'End':
        moveTo(placesIn(chart, window).at(-1));
        break;
      default:
        return;
    }
    // The notebook has keys of its own, which go from cell to cell.
    event.preventDefault();
    event.stopPropagation();
  }

  /** Beyond the window's edge the chart moves on with the cursor. */
  function next(direction: 1 | -1, least: number): number | undefined {
    const places = placesIn(chart, whole.x);
    return stepFrom(places, place ?? window.from, direction, least);
  }

  function zoom(by: number): void {
    if (whole.secondsInOne === undefined) return;
    const about = place !== undefined && place >= window.from && place <= window.to ? place : middle();
    lookAt(zoomed(window, about, by, whole.x));
  }

  function middle(): number {
    return (window.from + window.to) / 2;
  }

  function makeButtons() {
    const row = make('div', { class: 'closer', role: 'group', 'aria-label': `${title}: stretch shown` });
    const button = (words: string, act: () => void): HTMLButtonElement => {
      const made = document.createElement('button');
      made.type = 'button';
      made.textContent = words;
      made.addEventListener('click', act);
      row.append(made);
      return made;
    };
    button('Closer', () => zoom(0.5));
    const wider = button('Wider', () => zoom(2));
    const all = button('All', () => lookAt(whole.x));
    const show = (isAll: boolean): void => {
      wider.disabled = isAll;
      all.disabled = isAll;
    };
    return { row, show };
  }
}

function readings(chart: ChartSpec, place: number, words: string): ChildNode {
  if (chart.reads.lines.length === 0) return makeNode(element('p', {}, words));
  const rows = readingsAt(chart, place).map(({ name, value, unit }) =>
    element(
      'tr',
      {},
      element('th', { scope: 'row' }, name),
      element('td', {}, value),
      element('td', {}, unit),
    ),
  );
  return makeNode(element('table', { 'aria-label': 'At the cursor' }, element('tbody', {}, ...rows)));
}

function make(tag: string, attributes: Readonly<Record<string, string>>): HTMLElement {
  const node = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) node.setAttribute(name, value);
  return node;
}
