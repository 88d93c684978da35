/* Cells that are as long as what shall be written in them needs. */

export const values = `readings: G
as: g
values:
  vacuum: 16 inHg
  map: 13 inHg
  baro: 29 inHg
  ect: 80 °C
  stft_b1: 5 %
  spark: 12 °BTDC
---
`;
export const expecting = (expression: string): string => `${values}check: A\nexpect:\n  - ${expression}\n`;
export const found = (words: string): string => `test: A\nfound: ${words}\n`;
export const withValues = (words: string): string => `readings: A\nvalues:\n  ${words}\n`;
export const known = (words: string): string => `reference: A\nvalues:\n  ${words}\n`;
