import type { Rows } from '../row.ts';

// biome-ignore lint/complexity/noBannedTypes: filled by its family
export type StudyFacts = {};

export const studyRows: Rows<StudyFacts> = {};
