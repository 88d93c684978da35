import type { Header } from '../study/header.ts';

/** A word of the header: `metering`, `aspiration`. */
export function engineWord({ values }: Header, key: string): string | undefined {
  const value = values.get(`engine.${key}`)?.value;
  return value?.kind === 'words' ? value.text : undefined;
}

/** A number of the header in SI: `engine.displacement`, `site.altitude`. */
export function headerNumber({ values }: Header, name: string): number | undefined {
  const value = values.get(name)?.value;
  return value?.kind === 'one' ? value.amount.si : undefined;
}

/** No compressor: said so, or nothing said. */
export function isUnboosted(header: Header): boolean {
  const aspiration = engineWord(header, 'aspiration');
  return aspiration === undefined || aspiration === 'natural';
}

/** An engine that is governed by its throttle: not a diesel, which breathes freely at idle. */
export function hasThrottle(header: Header): boolean {
  return !/^(diesel|b\d+)$/i.test(engineWord(header, 'fuel') ?? '');
}
