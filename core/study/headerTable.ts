import type { Form, Signal } from '../signals/types.ts';

/**
 * The units of the header's numbers, and what is possible: wide enough for anything on the road, from a moped to a lorry.
 * Which keys there are, and which of them hold a number, the case file's own table says; a number that is not listed here has no unit.
 */
export const headerUnits: Readonly<Record<string, HeaderRow>> = {
  'vehicle.odometer': { unit: 'km', possible: '0 .. 10000000 km' },
  'engine.displacement': { unit: 'L', offered: ['L', 'cc', 'inch³'], possible: '0.03 .. 30 L' },
  'engine.cylinders': { unit: '1', possible: '1 .. 24' },
  'engine.strokes': { unit: '1', possible: '2 .. 4' },
  'engine.bore': { unit: 'mm', possible: '25 .. 250 mm' },
  'engine.stroke': { unit: 'mm', possible: '20 .. 300 mm' },
  'engine.rod length': { unit: 'mm', possible: '30 .. 600 mm' },
  'engine.compression ratio': { unit: '1', possible: '3 .. 30' },
  'engine.cam drive teeth': { unit: '1', possible: '8 .. 200' },
  'engine.fuel pressure': { unit: 'kPa', kind: 'gauge', possible: '0 .. 350000 kPa' },
  'engine.injector flow': { unit: 'cc/min', possible: '5 .. 10000 cc/min' },
  'engine.peak air flow': { unit: 'g/s', possible: '1 .. 3000 g/s' },
  'engine.idle speed': { unit: 'rpm', possible: '200 .. 3000 rpm' },
  'engine.thermostat': { unit: '°C', kind: 'point', possible: '30 .. 130 °C' },
  'site.altitude': { unit: 'ft', possible: '-500 .. 6000 m' },
  'site.sea level pressure': { unit: 'inHg', kind: 'absolute', possible: '850 .. 1100 hPa' },
  'site.temperature': { unit: '°C', kind: 'point', possible: '-70 .. 60 °C' },
  'site.humidity': { unit: '%', possible: '0 .. 100 %' },
};

interface HeaderRow {
  readonly unit: string;
  readonly kind?: HeaderKind;
  /** The units offered for a number without one, where they are others than the unit and the other system's. */
  readonly offered?: readonly string[];
  /** As the ranges of signals are written. */
  readonly possible: string;
}

type HeaderKind = 'absolute' | 'gauge' | 'point';

/** The name that expressions use: spaces become underscores. */
export function headerName(section: string, key: string): string {
  return `${section}.${key.replaceAll(' ', '_')}`;
}

/** A header value as a row of the vocabulary, so that it is read and refused like any reading. */
export function headerSignal(section: string, key: string, meaning: string): Signal {
  const row = headerUnits[`${section}.${key}`];
  return {
    name: headerName(section, key),
    meaning,
    family: 'header',
    holds: 'quantity',
    forms: [row === undefined ? noUnit : formOf(row)],
  };
}

const noUnit: Form = { unit: '1', physical: '' };

/** Made once for each row: its range is read once. */
function formOf(row: HeaderRow): Form {
  let form = forms.get(row);
  if (form === undefined) {
    const { unit, kind, offered, possible } = row;
    form = {
      unit,
      physical: possible,
      ...(kind === undefined ? {} : { kind }),
      ...(offered === undefined ? {} : { offered }),
    };
    forms.set(row, form);
  }
  return form;
}

const forms = new WeakMap<HeaderRow, Form>();

/** What a header value's form is, by the name that expressions use. */
export function headerForm(fullName: string): Form | undefined {
  byName ??= new Map(
    Object.entries(headerUnits).map(([key, row]) => [key.replaceAll(' ', '_'), formOf(row)] as const),
  );
  return byName.get(fullName);
}

/** By the names that expressions use; made when the first is asked for. */
let byName: ReadonlyMap<string, Form> | undefined;
