import type { Rows } from '../row.ts';

// biome-ignore lint/complexity/noBannedTypes: filled by its family
export type ExpressionFacts = {};

export const expressionRows: Rows<ExpressionFacts> = {};
