import type { Axis, Band, Dot, Dots, Drawing, Frame, Layer, Line, Rule } from './drawing.ts';
import { frameWords } from './frameWords.ts';
import { fontSize, type Layout, layoutOf } from './layout.ts';
import { said } from './measure.ts';
import { colourOf, dashes } from './palette.ts';
import type { ChartSpec, Json, Points, VegaLiteSpec } from './spec.ts';

/** For Vega-Lite: the same drawing gives the same text, wherever it is made. */
export function vegaLiteOf(drawing: Drawing): ChartSpec {
  const layout = layoutOf(drawing);
  const data: Record<string, Points> = {};
  const frames = drawing.frames.map((frame, at): VegaLiteSpec => {
    const isLast = at === drawing.frames.length - 1;
    const setting: Setting = { drawing, frame, layout, at, isLast, data };
    return {
      width: layout.plotWidth,
      height: frame.height,
      layer: [
        ...frame.layers.flatMap((layer, place) => layersOf(layer, place, setting)),
        ...wordsLayers(setting),
      ],
    };
  });
  const { width, height, padding } = layout;
  return {
    width,
    height,
    data,
    x: { name: drawing.x.name, unit: drawing.x.unit, from: drawing.x.from, to: drawing.x.to },
    secondsInOne: drawing.secondsInOne,
    reads: readsOf(drawing),
    plot: {
      left: padding.left,
      width: layout.plotWidth,
      frames: drawing.frames.map((frame, at) => ({
        top: padding.top + (layout.tops[at] ?? 0),
        height: frame.height,
      })),
    },
    spec: {
      $schema: 'https://vega.github.io/schema/vega-lite/v6.json',
      autosize: 'none',
      background: null,
      padding: { ...padding },
      params: [
        { name: 'from', value: drawing.x.from },
        { name: 'to', value: drawing.x.to },
      ],
      config: look,
      bounds: 'flush',
      spacing: layout.spacing,
      vconcat: frames,
    },
  };
}

/** What a cursor reads: the lines at its place, or the dots one by one. */
function readsOf({ frames, x }: Drawing): ChartSpec['reads'] {
  const lines = frames.flatMap(({ y, layers }, at) =>
    layers.flatMap((layer, place) =>
      layer.kind === 'line' && layer.of !== ''
        ? [{ data: nameOf(at, place), name: layer.of, unit: y.unit }]
        : [],
    ),
  );
  const dots = frames.flatMap(({ y, layers }) =>
    layers.flatMap((layer) =>
      layer.kind === 'dots'
        ? layer.dots.map((dot) => ({ x: dot.x, says: dotWords(dot, layer.says, x, y) }))
        : [],
    ),
  );
  return { lines, dots: dots.toSorted((a, b) => a.x - b.x) };
}

function dotWords(dot: Dot, says: string, x: Axis, y: Axis): string {
  const value = said(dot.y, y.unit, dot.plusMinus);
  const at = x.ticks?.reduce((near, tick) =>
    Math.abs(tick.at - dot.x) < Math.abs(near.at - dot.x) ? tick : near,
  ).says;
  const place =
    at === undefined ? `at ${said(dot.x, x.unit, dot.plusMinusX)}` : `${x.name.split(',')[0]} ${at}`;
  const own = at === undefined && dot.says !== '' ? `${dot.says}: ` : says === '' ? '' : `${says}: `;
  return `${own}${value}, ${place}`;
}

const nameOf = (frame: number, layer: number): string => `line-${frame}-${layer}`;

interface Setting {
  readonly drawing: Drawing;
  readonly frame: Frame;
  readonly layout: Layout;
  readonly at: number;
  readonly isLast: boolean;
  /** Filled with the lines' points. */
  readonly data: Record<string, Points>;
}

/** Thin lines, no grid, no frame. Fonts are the page's own. */
const look: Json = {
  font: 'inherit',
  view: { stroke: null },
  axis: {
    grid: false,
    title: null,
    domainColor: colourOf('soft'),
    domainWidth: 0.75,
    tickColor: colourOf('soft'),
    tickWidth: 0.75,
    tickSize: 4,
    labelColor: colourOf('soft'),
    labelFontSize: fontSize,
    labelPadding: 3,
  },
};

function layersOf(layer: Layer, place: number, setting: Setting): readonly Json[] {
  switch (layer.kind) {
    case 'line':
      return [lineLayer(layer, nameOf(setting.at, place), setting)];
    case 'dots':
      return dotsLayers(layer, setting);
    case 'band':
      return [bandLayer(layer, setting)];
    case 'rule':
      return [ruleLayer(layer, setting)];
    case 'marks':
      return [
        {
          data: { values: layer.at.map((x) => ({ x, y: layer.y })) },
          mark: {
            type: 'point',
            shape: 'circle',
            size: 16,
            stroke: colourOf('second'),
            strokeWidth: 1.25,
            fill: 'none',
            opacity: 1,
            clip: true,
          },
          encoding: encoding(setting),
        },
      ];
    case 'note':
      return [];
  }
}

function lineLayer({ tone, x, y, quiet }: Line, name: string, setting: Setting): Json {
  setting.data[name] = pointsOf(x, y);
  return {
    data: { name },
    mark: {
      type: 'line',
      stroke: colourOf(tone),
      strokeWidth: quiet ? 1 : 1.25,
      strokeJoin: 'round',
      invalid: 'break-paths-show-domains',
      ...(dashes[tone].length === 0 ? {} : { strokeDash: [...dashes[tone]] }),
      ...clipped(setting),
    },
    encoding: { ...encoding(setting), order: { value: null } },
  };
}

/** Six digits are more than a screen shows. */
function pointsOf(x: Float64Array, y: Float64Array): Points {
  const short = (value: number): number => Number(value.toPrecision(6));
  return {
    x: Array.from(x, (value) => Number(value.toPrecision(9))),
    y: Array.from(y, (value) => (Number.isFinite(value) ? short(value) : null)),
  };
}

function dotsLayers({ tone, shape, dots }: Dots, setting: Setting): readonly Json[] {
  const colour = colourOf(tone);
  const values = dots.map(({ x, y }) => ({ x, y }));
  const whiskers = dots.flatMap(({ x, y, plusMinus, plusMinusX }) => [
    ...(plusMinus > 0 ? [{ x, x2: x, y: y - plusMinus, y2: y + plusMinus }] : []),
    ...(plusMinusX > 0 ? [{ x: x - plusMinusX, x2: x + plusMinusX, y, y2: y }] : []),
  ]);
  const clip = clipped(setting);
  return [
    ...(whiskers.length === 0
      ? []
      : [
          {
            data: { values: whiskers },
            mark: { type: 'rule', stroke: colour, strokeWidth: 1, ...clip },
            encoding: { ...encoding(setting), x2: { field: 'x2' }, y2: { field: 'y2' } },
          },
        ]),
    {
      data: { values },
      mark: {
        type: 'point',
        shape: shape === 'square' ? 'square' : 'circle',
        size: shape === 'cloud' ? 9 : 38,
        stroke: colour,
        strokeWidth: shape === 'cloud' ? 0.6 : 1.25,
        fill: shape === 'filled' ? colour : 'none',
        opacity: 1,
        ...clip,
      },
      encoding: encoding(setting),
    },
  ];
}

function bandLayer({ along, from, to }: Band, setting: Setting): Json {
  const axis = along === 'y' ? setting.frame.y : setting.drawing.x;
  const ends = { from: from ?? axis.from, to: to ?? axis.to };
  const low = Math.max(axis.from, Math.min(axis.to, ends.from));
  const high = Math.max(axis.from, Math.min(axis.to, ends.to));
  const mark = { type: 'rect', fill: colourOf('shade'), ...clipped(setting) };
  const { x, y } = encoding(setting);
  return along === 'y'
    ? {
        data: { values: [{ y: low, y2: high }] },
        mark: { ...mark, x: 0, x2: 'width' },
        encoding: { y: y ?? null, y2: { field: 'y2' } },
      }
    : {
        data: { values: [{ x: low, x2: high }] },
        mark: { ...mark, y: 0, y2: 'height' },
        encoding: { x: x ?? null, x2: { field: 'x2' } },
      };
}

function ruleLayer({ along, at }: Rule, setting: Setting): Json {
  const { x, y } = encoding(setting);
  const mark = {
    type: 'rule',
    stroke: colourOf('hair'),
    strokeWidth: 0.75,
    ...clipped(setting),
  };
  return along === 'y'
    ? { data: { values: [{ y: at }] }, mark: { ...mark, x: 0, x2: 'width' }, encoding: { y: y ?? null } }
    : { data: { values: [{ x: at }] }, mark: { ...mark, y: 0, y2: 'height' }, encoding: { x: x ?? null } };
}

/** Where one looks closer, what lies outside ends at the frame. */
const clipped = ({ drawing }: Setting): { readonly clip?: true } =>
  drawing.secondsInOne === undefined ? {} : { clip: true };

/** All layers of a frame speak of the same axes. */
function encoding({ drawing, frame, isLast, layout }: Setting): { readonly [channel: string]: Json } {
  const { x } = drawing;
  return {
    x: {
      field: 'x',
      type: 'quantitative',
      scale: { domainMin: { expr: 'from' }, domainMax: { expr: 'to' }, nice: false, zero: false },
      axis: {
        ...ticksOf(x, Math.round(layout.plotWidth / 80)),
        labels: isLast,
        labelOverlap: x.ticks === undefined,
        labelFlush: false,
        offset: 4,
      },
    },
    y: {
      field: 'y',
      type: 'quantitative',
      scale: { domain: [frame.y.from, frame.y.to], nice: false, zero: false },
      axis: { ...ticksOf(frame.y, Math.max(2, Math.round(frame.height / 44))), offset: 6 },
    },
  };
}

function ticksOf({ ticks }: Axis, count: number): { readonly [key: string]: Json } {
  if (ticks === undefined) return { tickCount: count, labelExpr: "format(datum.value, '.6~g')" };
  // Their words are set with the others, so that none covers another.
  return { values: ticks.map(({ at }) => at), labelExpr: "''" };
}

/** Everything that is said in and around a frame, in as few layers as there are colours. */
function wordsLayers({ drawing, frame, layout, at, isLast }: Setting): readonly Json[] {
  const words = frameWords(drawing, frame, layout, at, isLast);
  return words.length === 0
    ? []
    : [
        {
          data: {
            values: words.map(({ x, y, text, colour, align, size, weight, moves }) => ({
              x: Math.round(x * 10) / 10,
              y: Math.round(y * 10) / 10,
              text,
              colour: colourOf(colour),
              align,
              size,
              weight,
              ...(moves === true ? { moves } : {}),
            })),
          },
          mark: {
            type: 'text',
            baseline: 'middle',
            align: { expr: 'datum.align' },
            fontSize: { expr: 'datum.size' },
            fontWeight: { expr: 'datum.weight' },
          },
          encoding: {
            x: { field: 'x', type: 'quantitative', scale: null, axis: null },
            y: { field: 'y', type: 'quantitative', scale: null, axis: null },
            text: { field: 'text', type: 'nominal' },
            fill: { field: 'colour', type: 'nominal', scale: null, legend: null },
          },
        },
      ];
}
