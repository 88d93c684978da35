import type { Header } from '../study/header.ts';

/** A word of the header by its full name: `engine.metering`. */
export function headerWord({ values }: Header, name: string): string | undefined {
  const value = values.get(name)?.value;
  return value?.kind === 'words' ? value.text : undefined;
}

/** A number of the header in SI: `engine.displacement`, `site.altitude`. */
export function headerNumber({ values }: Header, name: string): number | undefined {
  const value = values.get(name)?.value;
  return value?.kind === 'one' ? value.amount.si : undefined;
}
