import type { Rows } from '../row.ts';
import { type FileAccessFacts, fileAccessRows } from './fileAccess.ts';
import { type FileShapeFacts, fileShapeRows } from './fileShape.ts';
import { type FileTablesFacts, fileTablesRows } from './fileTables.ts';
import { type FileTrapsFacts, fileTrapsRows } from './fileTraps.ts';
import { type FileYamlFacts, fileYamlRows } from './fileYaml.ts';

/** Findings about the file itself: its bytes, its cells, how it is written. */
export type FileFacts = FileAccessFacts & FileYamlFacts & FileTrapsFacts & FileShapeFacts & FileTablesFacts;

export const fileRows: Rows<FileFacts> = {
  ...fileAccessRows,
  ...fileYamlRows,
  ...fileTrapsRows,
  ...fileShapeRows,
  ...fileTablesRows,
};
