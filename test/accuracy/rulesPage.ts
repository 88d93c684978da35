import { hear, type Judged, judgeFaults, mustBeTold } from '../support/engineModel/judge.ts';
import { judgingSeeds } from '../support/engineModel/seeds.ts';
import { unjudged } from '../support/engineModel/unjudged.ts';

/** Where the page of the rules is written, from the repository's root. */
export const rulesPage = 'core/rules/ACCURACY.md';

/** Engines: sound ones, and those that each fault of each size is put into. */
export const sound = 1000;
export const faulty = 100;

/** How many of the sound engines were warned about. */
export function warnedSound(count: number): number {
  return judgingSeeds(count).filter((seed) => hear(seed).warnings.length > 0).length;
}

/** Faults are put into other engines than those that were judged sound. */
export function judged(count: number): readonly Judged[] {
  return judgeFaults(judgingSeeds(count, sound));
}

/** The page: what was generated, how often it was told, and how often another rule warned. */
export function rulesPageText(falseAlarms: number, rows: readonly Judged[]): string {
  const lines = rows.map(rowText);
  return `${head}
## Sound engines

${sound} sound engines, warned about: ${falseAlarms}.

## Engines with one fault or slip

Sizes from which on a fault must be told are in bold.
"Told" is by a rule that is right about the fault; "otherwise" is a warning of another rule that is not true of it.

| fault or slip | size | told | otherwise |
| --- | ---: | ---: | ---: |
${lines.join('\n')}

${summary(rows)}

## Rules without a fault of their own

They look at writing alone, or give information only; the cases in \`test/rules/spec\` say what they tell.

| rule | what it looks at |
| --- | --- |
${Object.entries(unjudged)
  .map(([code, why]) => `| \`${code}\` | ${why} |`)
  .join('\n')}
`;
}

export function rowText(row: Judged): string {
  const { fault, size, engines, told, otherwise } = row;
  const share = (count: number): string => `${Math.round((100 * count) / engines)} %`;
  const written = fault.unit === '' ? '–' : `${size} ${fault.unit}`;
  const sized = mustBeTold(row) ? `**${written}**` : written;
  return `| ${fault.name} | ${sized} | ${share(told)} | ${share(otherwise)} |`;
}

function summary(rows: readonly Judged[]): string {
  const tellable = rows.filter(mustBeTold);
  const sum = (list: readonly Judged[], of: (row: Judged) => number): number =>
    list.reduce((total, row) => total + of(row), 0);
  const engines = sum(tellable, (row) => row.engines);
  const told = (100 * sum(tellable, (row) => row.told)) / engines;
  const otherwise = (100 * sum(rows, (row) => row.otherwise)) / sum(rows, (row) => row.engines);
  return `Of the sizes that must be told, ${told.toFixed(1)} % were; of all engines with a fault, ${otherwise.toFixed(1)} % were warned about otherwise.`;
}

const head = `# How the rules were judged

A small physical model of an engine (\`test/support/engineModel\`) writes cases of synthetic engines; no car was measured.
It draws displacement, cylinders and banks, altitude, weather and temperature, metering by air flow, by manifold pressure or both, switching and wideband front sensors, with and without a compressor.
Beside the scan data stands what a workshop measures: vacuum, cylinders by gauge, the battery, oil and fuel pressure, the gas at the tailpipe, a look on the road, what a controller counts, the odometer of two visits, and what is read in two ways at one look.
Sensors are off by their tolerances and show the steps of SAE J1979.
The rules' limits were chosen on other engines than these: \`test/support/engineModel/seeds.ts\` keeps the seeds apart.
\`npm run accuracy\` writes this page; nothing here is written by hand.
What the model does not have, the numbers do not speak of: two faults at once, a worn engine, a careless author.
`;
