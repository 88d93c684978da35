import { type Diagnostic, diagnose } from '../../diagnostics/diagnostic.ts';
import type { YamlProblem } from '../readYaml.ts';
import { shortened } from '../shortened.ts';

export function trapsInText(text: string, errors: readonly YamlProblem[]): Diagnostic[] {
  return errors.map((error) =>
    diagnose('unreadable', error.span, { text: shortened(text.slice(error.span.start)) }),
  );
}
