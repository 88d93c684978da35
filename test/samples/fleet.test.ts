import { expect, it } from 'vitest';
import { samples } from '../support/samples.ts';

/** A vehicle of the fleet by its number, and what cannot change from one case to the next. */
const built = [...samples].map(([file, text]) => {
  const [, vehicle = ''] = /^ {2}description: island rental fleet, (\w+ \d+)/m.exec(text) ?? [];
  const known = (key: string): string | undefined => new RegExp(`^ {2}${key}: (.+)$`, 'm').exec(text)?.[1];
  return {
    file,
    vehicle,
    facts: ['year', 'displacement', 'cylinders', 'compression ratio', 'metering'].map(known),
  };
});

it('a number of the fleet is one vehicle in every case', () => {
  const first = new Map<string, (string | undefined)[]>();
  for (const { file, vehicle, facts } of built) {
    expect(vehicle, file).not.toBe('');
    const before = first.get(vehicle);
    // What one case leaves out, another may say.
    facts.forEach((each, at) => {
      if (each !== undefined && before?.[at] !== undefined)
        expect(each, `${file}, ${vehicle}`).toBe(before[at]);
    });
    first.set(
      vehicle,
      facts.map((each, at) => each ?? before?.[at]),
    );
  }
  expect(first.size).toBeGreaterThan(15);
});
