import { siOf } from './siOf.ts';

/** Values as the sentences of `NoAnswer` name them: SI in, two units of the trade out. */

/** Up to five significant digits, no trailing zeros. */
export function sayNumber(value: number): string {
  return String(Number(value.toPrecision(5)));
}

/** Pa → "84.3 kPa (24.894 inHg)" */
export function sayPressure(pascal: number): string {
  return `${sayNumber(pascal / 1000)} kPa (${sayNumber(pascal / siOf('inHg'))} inHg)`;
}

/** m → "1609.3 m (5280 ft)" */
export function sayAltitude(metres: number): string {
  return `${sayNumber(metres)} m (${sayNumber(metres / siOf('ft'))} ft)`;
}

/** K → "25 °C (77 °F)" */
export function sayTemperature(kelvin: number): string {
  const celsius = kelvin - 273.15;
  return `${degrees(celsius)} °C (${degrees(celsius * 1.8 + 32)} °F)`;
}

/** Without what counting from absolute zero leaves behind: 0 °F is no 6e-14 °F. */
const degrees = (value: number): string => sayNumber(Number(value.toFixed(6)));

/** A share → "45 %" */
export function sayPercent(share: number): string {
  return `${sayNumber(share * 100)} %`;
}
