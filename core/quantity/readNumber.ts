const dot = 46;

export function isDigit(code: number): boolean {
  return code >= 48 && code <= 57;
}

/**
 * The offset after the unsigned decimal number at `at`: `12`, `12.5`, `.5`; `at` itself when none stands there.
 * A dot belongs to it only when a digit follows, so that `17..22` is two numbers.
 */
export function numberEnd(text: string, at: number): number {
  const whole = digitsEnd(text, at);
  if (text.charCodeAt(whole) !== dot) return whole;
  const end = digitsEnd(text, whole + 1);
  return end === whole + 1 ? whole : end;
}

function digitsEnd(text: string, at: number): number {
  const { length } = text;
  let i = at;
  while (i < length && isDigit(text.charCodeAt(i))) i++;
  return i;
}

/** Every power of ten that a double holds exactly. */
const tens = Array.from({ length: 23 }, (_, exponent) => Number(`1e${exponent}`));

/**
 * The value of the number that `numberEnd` found, bit for bit what `Number()` gives.
 * Up to 15 digits the digits and the power of ten are exact, so one division rounds once (Clinger, PLDI 1990).
 */
export function numberValue(text: string, start: number, end: number): number {
  if (end - start > 15) return Number(text.slice(start, end));
  let digits = 0;
  let decimals = 0;
  for (let i = start; i < end; i++) {
    const code = text.charCodeAt(i);
    if (code === dot) decimals = end - i - 1;
    else digits = digits * 10 + (code - 48);
  }
  return decimals === 0 ? digits : digits / (tens[decimals] ?? 1);
}
