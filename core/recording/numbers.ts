/** The decimal mark of a file's numbers. */
export type Decimal = 'point' | 'comma';

/** What tools write where a channel has no sample. */
const nothing: ReadonlySet<string> = new Set([
  '',
  '-',
  '--',
  '---',
  '----',
  'n/a',
  'na',
  '#n/a',
  'nan',
  'null',
  'none',
  '?',
  '*',
  '***',
  'n.a.',
  'n.d.',
  'no data',
  'nodata',
  // As the C libraries print a NaN.
  '-nan',
  'nan(ind)',
  '-nan(ind)',
  '1.#qnan',
  '-1.#ind',
  '1.#ind',
]);

export function isMissing(text: string): boolean {
  return text.length < 10 && nothing.has(text.trim().toLowerCase());
}

const withPoint = /^[-+]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?$/;
const withComma = /^[-+]?(?:\d+,?\d*|,\d+)(?:[eE][-+]?\d+)?$/;
const groupedByComma = /^[-+]?[1-9]\d{0,2}(?:,\d{3})+(?:\.\d+)?$/;
const groupedByPoint = /^[-+]?[1-9]\d{0,2}(?:\.\d{3})+,\d+$/;
/** By a blank of any width (French, ISO 80000-1) or an apostrophe (Swiss): no decimal mark looks like these. */
const groupedByBlank = /^[-+]?[1-9]\d{0,2}(?:([ \u00a0\u2009\u202f'’])\d{3})(?:\1\d{3})*(?:[.,]\d+)?$/;

/**
 * A number as a file writes it, to the last bit what `Number()` gives for its digits; NaN where there is nothing,
 * undefined for anything else. Thousands may be parted by the other mark, a blank or an apostrophe: `1,234.5`, `1.234,5`, `1 234,5`.
 */
export function numberIn(text: string, decimal: Decimal): number | undefined {
  const written = text.trim().replace(/^−/, '-');
  if (isMissing(written)) return Number.NaN;
  const trimmed = groupedByBlank.test(written) ? written.replace(/[^-+\d.,]/g, '') : written;
  if (decimal === 'point') {
    if (withPoint.test(trimmed)) return finite(trimmed);
    return groupedByComma.test(trimmed) ? finite(trimmed.replaceAll(',', '')) : undefined;
  }
  if (withComma.test(trimmed)) return finite(trimmed.replace(',', '.'));
  return groupedByPoint.test(trimmed) ? finite(trimmed.replaceAll('.', '').replace(',', '.')) : undefined;
}

/** A number beyond what a double holds is none. */
function finite(text: string): number | undefined {
  const value = Number(text);
  return Number.isFinite(value) ? value : undefined;
}

/** Every power of ten that a double holds exactly. */
export const exactTens: Float64Array = Float64Array.from({ length: 23 }, (_, exponent) =>
  Number(`1e${exponent}`),
);
