import type { Signal } from '../signals/types.ts';

/**
 * The units of the header's values. Which keys there are, and which of them hold a number, the case file's own table says;
 * a number that is not listed here has no unit.
 */
export const headerUnits: Readonly<Record<string, { readonly unit: string; readonly kind?: HeaderKind }>> = {
  'vehicle.odometer': { unit: 'km' },
  'engine.displacement': { unit: 'L' },
  'engine.bore': { unit: 'mm' },
  'engine.stroke': { unit: 'mm' },
  'engine.rod length': { unit: 'mm' },
  'engine.fuel pressure': { unit: 'kPa', kind: 'gauge' },
  'engine.injector flow': { unit: 'cc/min' },
  'engine.peak air flow': { unit: 'g/s' },
  'engine.idle speed': { unit: 'rpm' },
  'engine.thermostat': { unit: '°C', kind: 'point' },
  'site.altitude': { unit: 'ft' },
  'site.sea level pressure': { unit: 'inHg', kind: 'absolute' },
  'site.temperature': { unit: '°C', kind: 'point' },
  'site.humidity': { unit: '%' },
};

type HeaderKind = 'absolute' | 'gauge' | 'point';

/** The name that expressions use: spaces become underscores. */
export function headerName(section: string, key: string): string {
  return `${section}.${key.replaceAll(' ', '_')}`;
}

/** A header value as a row of the vocabulary, so that it is read and refused like any reading. */
export function headerSignal(section: string, key: string, meaning: string): Signal {
  const { unit, kind } = headerUnits[`${section}.${key}`] ?? { unit: '1' };
  return {
    name: headerName(section, key),
    meaning,
    family: 'header',
    holds: 'quantity',
    forms: [{ unit, physical: '', ...(kind === undefined ? {} : { kind }) }],
  };
}
