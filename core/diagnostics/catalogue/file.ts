import type { Rows } from '../row.ts';

// biome-ignore lint/complexity/noBannedTypes: filled by its family
export type FileFacts = {};

export const fileRows: Rows<FileFacts> = {};
