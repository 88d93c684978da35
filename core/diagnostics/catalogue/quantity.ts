import type { Rows } from '../row.ts';

// biome-ignore lint/complexity/noBannedTypes: filled by its family
export type QuantityFacts = {};

export const quantityRows: Rows<QuantityFacts> = {};
