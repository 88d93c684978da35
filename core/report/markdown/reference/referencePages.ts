import { engineFunctions } from '../../../engine/engineFunctions.ts';
import { seriesFunctions } from '../../../expression/functions/series.ts';
import { valueFunctions } from '../../../expression/functions/values.ts';
import { waveformFunctions } from '../../../waveform/waveformFunctions.ts';
import { findingsReference, rulesReference } from './findingsReference.ts';
import { functionsReference } from './functionsReference.ts';
import { parametersReference } from './parametersReference.ts';
import { signalsReference } from './signalsReference.ts';
import { unitsReference } from './unitsReference.ts';

/** A generated page and where it stands: beside what it documents. */
export interface ReferencePage {
  /** From the repository's root, with `/`. */
  readonly path: string;
  readonly text: string;
}

/** The reference, every page made from the tables that the program itself reads. */
export function referencePages(): ReferencePage[] {
  const pages = [
    {
      path: 'core/engine/FUNCTIONS.md',
      about: 'air, fuel and exhaust gas, sensors, compression and timing, the electrical system',
      text: functionsReference(
        'Functions about the engine',
        'Each takes what it lacks from the case’s header where the table says so.\nWhat a pattern in words means is common practice: a reason to measure next, never a proof.',
        engineFunctions(),
      ),
    },
    {
      path: 'core/waveform/FUNCTIONS.md',
      about: 'captures: levels, edges, cycles, oxygen sensors, trims over a drive',
      text: functionsReference(
        'Functions of captures',
        'They take samples over time, as a `capture` holds them.',
        waveformFunctions(),
      ),
    },
    {
      path: 'core/expression/FUNCTIONS.md',
      about: 'plain values, values by cylinder, and samples as such',
      text: functionsReference('Functions of values', 'They take any quantity.', [
        ...valueFunctions,
        ...seriesFunctions,
      ]),
    },
    {
      path: 'core/signals/SIGNALS.md',
      about: 'what a case may measure, and the engine states',
      text: signalsReference(),
    },
    {
      path: 'core/engine/obd/PARAMETERS.md',
      about: 'generic data of the diagnostic link: parameters, their bytes and their scales',
      text: parametersReference(),
    },
    { path: 'core/quantity/UNITS.md', about: 'every unit with its exact factor', text: unitsReference() },
    { path: 'core/rules/RULES.md', about: 'the checks that always run', text: rulesReference() },
    {
      path: 'core/diagnostics/FINDINGS.md',
      about: 'everything else that can be found in a file',
      text: findingsReference(),
    },
  ];
  const list = pages.map(
    ({ path, about }) => `- [${path.slice('core/'.length)}](${path.slice('core/'.length)}): ${about}`,
  );
  const index = `# Reference

These pages are written by \`npm run build\` from the tables that the program reads, and a test holds them to it.
\`casebook explain NAME\` prints the same of one name; [the language in one page](../samples/README.md) has the cells and keys.

${list.join('\n')}
`;
  return [{ path: 'core/REFERENCE.md', text: index }, ...pages.map(({ path, text }) => ({ path, text }))];
}
