import type { Header } from '../study/header.ts';
import { headerNumber, headerWord } from './headerWords.ts';
import { type Site, siteOf } from './pressure/site.ts';

/** What the header says of the car and of the place where it stands, read once for all rules. */
export interface Car {
  readonly header: Header;
  /** SI units. */
  readonly displacement: number | undefined;
  readonly thermostat: number | undefined;
  readonly fuel: string | undefined;
  /** No compressor: said so, or nothing said. */
  readonly isUnboosted: boolean;
  /** Governed by its throttle: not a diesel, which breathes freely at idle. */
  readonly hasThrottle: boolean;
  /** It draws in at every turn: what is known of four strokes is not its. */
  readonly isTwoStroke: boolean;
  /** What the air is worked out from. By the manifold pressure alone it is no matter what goes round a meter. */
  readonly metering: 'pressure' | 'flow';
  readonly site: Site;
}

export function carOf(header: Header): Car {
  const aspiration = headerWord(header, 'engine.aspiration');
  const fuel = headerWord(header, 'engine.fuel');
  return {
    header,
    displacement: headerNumber(header, 'engine.displacement'),
    thermostat: headerNumber(header, 'engine.thermostat'),
    fuel,
    isUnboosted: aspiration === undefined || aspiration === 'natural',
    hasThrottle: fuel === undefined || !isDiesel(fuel),
    isTwoStroke: headerNumber(header, 'engine.strokes') === 2,
    metering: headerWord(header, 'engine.metering') === 'manifold pressure' ? 'pressure' : 'flow',
    site: siteOf(header),
  };
}

/** Diesel, or a blend with so many percent of biodiesel: B7. */
export const isDiesel = (fuel: string): boolean =>
  'bBdD'.includes(fuel.charAt(0)) && /^(diesel|b\d+)$/i.test(fuel);
