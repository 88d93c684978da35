import { celsius } from './instruments.ts';

/** How this author writes: units, and what is written in one cell. */
export interface Hand {
  readonly pressure: 'kPa' | 'inHg';
  readonly temperature: '°C' | '°F';
  readonly statesGauge: boolean;
}

const pascals = { kPa: 1000, inHg: 3386.389 } as const;

export function pressure(pascal: number, hand: Hand): string {
  return `${pressureNumber(pascal, hand)} ${hand.pressure}`;
}

/** What came over generic data was whole kilopascals before anyone turned it into inches. */
export function scanPressure(pascal: number, hand: Hand): string {
  return pressure(1000 * Math.round(pascal / 1000), hand);
}

export function pressureNumber(pascal: number, { pressure: unit }: Hand): string {
  return (pascal / pascals[unit]).toFixed(unit === 'kPa' ? 0 : 1);
}

/** What came over generic data was whole degrees, and ends where a byte ends. */
export function scanTemperature(kelvin: number, hand: Hand): string {
  return `${temperatureNumber(273.15 + celsius(kelvin), hand)} ${hand.temperature}`;
}

export function temperatureNumber(kelvin: number, { temperature: unit }: Hand): string {
  const whole = Math.round(kelvin - 273.15);
  return String(unit === '°C' ? whole : Math.round(whole * 1.8 + 32));
}
