import { captureRows } from './catalogue/captures.ts';
import { chartsRows } from './catalogue/charts.ts';
import { editingRows } from './catalogue/editing.ts';
import { expressionRows } from './catalogue/expression.ts';
import { fileRows } from './catalogue/file.ts';
import { namesRows } from './catalogue/names.ts';
import { obdRows } from './catalogue/obd.ts';
import { obdReadingRows } from './catalogue/obdReadings.ts';
import { quantityRows } from './catalogue/quantity.ts';
import { rulesRows } from './catalogue/rules.ts';
import { studyRows } from './catalogue/study.ts';
import type { Facts } from './diagnostic.ts';
import type { Rows } from './row.ts';

/** The one place that words them. */
export const catalogue: Rows<Facts> = {
  ...fileRows,
  ...quantityRows,
  ...expressionRows,
  ...namesRows,
  ...studyRows,
  ...captureRows,
  ...rulesRows,
  ...obdRows,
  ...obdReadingRows,
  ...chartsRows,
  ...editingRows,
};
