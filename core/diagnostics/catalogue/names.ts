import type { Rows } from '../row.ts';

// biome-ignore lint/complexity/noBannedTypes: filled by its family
export type NamesFacts = {};

export const namesRows: Rows<NamesFacts> = {};
