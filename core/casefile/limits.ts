/**
 * How much of anything a case may hold. A case is written by hand: the longest that a person reads is a hundredth
 * of these. They keep a damaged or hostile file from stopping the editor.
 */
export const limits = {
  /**
   * UTF-16 units of a whole file. A long case has ten thousand; a million that are wrong from end to end are still
   * told so in a few seconds. Sampled data of that size belongs in a capture file.
   */
  fileLength: 1024 * 1024,
  /** UTF-16 units of one cell: two of the longest texts. */
  cellLength: 512 * 1024,
  cells: 2000,
  /** Lists and maps inside each other; the deepest that any kind of cell needs is 6. */
  depth: 32,
  /** Items of one list, entries of one map. */
  entries: 10_000,
  /** Members of one value that is a map, by cylinder or label: every cable of a vehicle is fewer. */
  members: 200,
  /** UTF-16 units of one value: a table of 10,000 rows of 26 characters. */
  textLength: 256 * 1024,
  /** Rows of a table, the heading not counted. */
  tableRows: 10_000,
  tableColumns: 200,
  /** Sources of uncertainty that one computed value keeps apart, over its members: 64 members of 64 sources each. */
  sources: 4096,
  /** The same over all computed names of a case, about 60 bytes each. */
  sourcesOfCase: 500_000,
  /** Samples of a computed series times its sources of uncertainty: 32 megabytes. */
  sampledSources: 4_000_000,
  /** UTF-16 units that are read again, over a whole case, to find out which trap of handwriting explains an error. */
  patience: 1024 * 1024,
} as const;
