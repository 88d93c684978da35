import type { Series } from '../expression/value.ts';
import type { ChartTable } from './drawing.ts';
import { numberFigure, said, shown, unitWords } from './measure.ts';

/** What a channel comes to over the whole record: the same figures that `min`, `max` and `mean` give a check. */
export interface SeriesFigures {
  readonly least: number;
  readonly greatest: number;
  readonly mean: number;
  readonly samples: number;
}

const known = new WeakMap<Float64Array, Omit<SeriesFigures, 'samples'>>();

/** On the chart's scale. One pass over the samples, once for each record. */
export function figuresOf({ samples, type }: Series): SeriesFigures {
  let si = known.get(samples);
  if (si === undefined) {
    si = pass(samples);
    known.set(samples, si);
  }
  return {
    least: shown(si.least, type),
    greatest: shown(si.greatest, type),
    mean: shown(si.mean, type),
    samples: samples.length,
  };
}

function pass(samples: Float64Array): Omit<SeriesFigures, 'samples'> {
  let least = Number.POSITIVE_INFINITY;
  let greatest = Number.NEGATIVE_INFINITY;
  let sum = 0;
  let count = 0;
  for (let i = 0; i < samples.length; i++) {
    const sample = samples[i] ?? Number.NaN;
    if (sample < least) least = sample;
    if (sample > greatest) greatest = sample;
    if (!Number.isNaN(sample)) {
      sum += sample;
      count++;
    }
  }
  if (count === 0) return { least: Number.NaN, greatest: Number.NaN, mean: Number.NaN };
  return { least, greatest, mean: sum / count };
}

export interface NamedSeries {
  readonly label: string;
  readonly value: Series;
}

export function seriesTable(items: readonly NamedSeries[], rowsAre: string): ChartTable {
  return {
    rowsAre,
    columns: ['least', 'greatest', 'mean', 'samples'],
    rows: items.map(({ label, value }) => {
      const { least, greatest, mean, samples } = figuresOf(value);
      return {
        name: label,
        figures: [least, greatest, mean, samples].map((each) => numberFigure(each)),
        unit: unitWords(value.type),
      };
    }),
  };
}

export function seriesSentence({ label, value }: NamedSeries): string {
  const { least, greatest, mean } = figuresOf(value);
  const unit = unitWords(value.type);
  if (Number.isNaN(least)) return `${label}: no sample is there.`;
  return least === greatest
    ? `${label}: ${said(least, unit)} throughout.`
    : `${label}: from ${said(least, unit)} to ${said(greatest, unit)}, mean ${said(mean, unit)}.`;
}
