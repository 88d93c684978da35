import type { Parameter } from '../expression/functionRow.ts';
import type { Kind } from '../quantity/types.ts';
import { standardPressure } from './air/standardAtmosphere.ts';
import type { Answer } from './answer.ts';

/** What may be said of a parameter beside what it takes. */
type More = Pick<
  Parameter,
  'header' | 'otherwise' | 'otherwiseBy' | 'optional' | 'repeats' | 'barometer' | 'within'
> & {
  readonly kind?: Exclude<Kind, 'open'>;
};

/** A parameter that takes a quantity of this unit's dimension. */
export function quantity(
  name: string,
  unit: string,
  meaning: string,
  { kind, ...more }: More = {},
): Parameter {
  return {
    name,
    takes: { what: 'quantity', unit, ...(kind === undefined ? {} : { kind }) },
    meaning,
    ...more,
  };
}

export function absolutePressure(name: string, meaning: string, more: More = {}): Parameter {
  return quantity(name, 'kPa', meaning, { kind: 'absolute', ...more });
}

export function temperaturePoint(name: string, meaning: string, more: More = {}): Parameter {
  return quantity(name, '°C', meaning, { kind: 'point', ...more });
}

/** A parameter that takes samples over time of this unit's dimension. */
export function series(name: string, unit: string, meaning: string, kind?: Exclude<Kind, 'open'>): Parameter {
  return { name, takes: { what: 'series', unit, ...(kind === undefined ? {} : { kind }) }, meaning };
}

/** A transfer curve; `unit` is that of its second quantity where only one makes sense. */
export function curve(name: string, meaning: string): Parameter {
  return { name, takes: { what: 'curve' }, meaning };
}

export function text(name: string, meaning: string, more: Omit<More, 'kind'> = {}): Parameter {
  return { name, takes: { what: 'text' }, meaning, ...more };
}

/** A barometer that is left out: the case's own, or else the standard atmosphere's at the site, or else that at the sea. */
export function caseBarometer(name: string, meaning: string): Parameter {
  return absolutePressure(name, meaning, {
    within: { above: '0 kPa' },
    barometer: true,
    otherwise: '101.325 kPa',
    otherwiseBy: { header: 'site.altitude', of: (altitude) => numberOrNone(standardPressure(altitude)) },
  });
}

const numberOrNone = (answer: Answer): number | undefined =>
  typeof answer === 'number' ? answer : undefined;

export const airFlow = quantity('maf', 'g/s', 'air mass flow', { within: { from: '0 g/s' } });
export const engineSpeed = quantity('rpm', 'rpm', 'engine speed', { within: { above: '0 rpm' } });
/** Where an engine that stands still has an answer too. */
export const anySpeed = quantity('rpm', 'rpm', 'engine speed', { within: { from: '0 rpm' } });
export const displacement = quantity('displacement', 'L', 'displacement of the whole engine', {
  header: 'engine.displacement',
  within: { above: '0 L' },
});
export const cylinders = quantity('cylinders', '1', 'number of cylinders', {
  header: 'engine.cylinders',
  within: { from: '1' },
});
export const fuelName = text('fuel', 'the fuel’s name, "E10"', { header: 'engine.fuel', otherwise: 'E0' });
