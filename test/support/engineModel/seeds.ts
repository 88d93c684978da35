/*
 * Seeds are kept apart: rules were built and their limits chosen on the first list, and are judged on the second,
 * which nobody looked at while building.
 */
const judgingStart = 7_000_001;

export const buildingSeeds = (count: number): readonly number[] =>
  Array.from({ length: count }, (_, n) => n + 1);

export const judgingSeeds = (count: number, from = 0): readonly number[] =>
  Array.from({ length: count }, (_, n) => judgingStart + from + n);
