import type { Rows } from '../row.ts';

/** Findings that only an editor of cells can make: the file itself is in order. */
export interface EditingFacts {
  readonly 'separator-in-cell': Record<never, never>;
}

export const editingRows: Rows<EditingFacts> = {
  'separator-in-cell': {
    severity: 'warning',
    title: 'A separator inside a cell',
    say: () =>
      'A line `---` starts a new cell: what stands below it is a cell of its own in the file. Split this cell here, or take the line out.',
    why: 'A cell shows one document of the file. Results and findings of the second one would stand under the first.',
    wrong: 'readings: Idle\nvalues:\n  map: 13.1 inHg\n---\nnote: Rain',
    right: 'readings: Idle\nvalues:\n  map: 13.1 inHg',
  },
};
