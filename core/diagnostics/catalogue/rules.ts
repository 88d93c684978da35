import { didYouMean, oneOf, type Rows } from '../row.ts';
import { type RulesAgainstFacts, rulesAgainstRows } from './rulesAgainst.ts';
import { type RulesHeaderFacts, rulesHeaderRows } from './rulesHeader.ts';
import { type RulesMixtureFacts, rulesMixtureRows } from './rulesMixture.ts';
import { type RulesPressureFacts, rulesPressureRows } from './rulesPressure.ts';
import { type RulesSetsFacts, rulesSetsRows } from './rulesSets.ts';

/** Findings of the checks that always run, one rule each in `rules/`. */
export interface RulesFacts
  extends RulesHeaderFacts,
    RulesPressureFacts,
    RulesMixtureFacts,
    RulesSetsFacts,
    RulesAgainstFacts {
  readonly 'unit-slip': {
    readonly name: string;
    readonly written: string;
    readonly limit: string;
    readonly offers: readonly string[];
  };
  readonly 'beyond-sensor': {
    readonly name: string;
    readonly written: string;
    readonly range: string;
    readonly source: string;
  };
  readonly 'impossible-value': {
    readonly name: string;
    readonly written: string;
    readonly range: string;
    /** Where it is impossible in this state alone. */
    readonly state?: string;
    /** Volts of a sensor's signal that only the vehicle's supply gives. */
    readonly aboveSupply?: true;
  };
  readonly 'unusual-value': {
    readonly name: string;
    readonly written: string;
    readonly state: string;
    readonly range: string;
    readonly source: string;
    /** The unit in which the same number would be usual. */
    readonly meant?: string;
  };
  readonly 'misspelt-state': { readonly name: string; readonly nearest: readonly string[] };
  readonly 'engine-stands': { readonly name: string; readonly written: string; readonly state: string };
  readonly 'failed-value': { readonly name: string; readonly written: string; readonly means: string };
}

export const rulesRows: Rows<RulesFacts> = {
  'unit-slip': {
    severity: 'error',
    title: 'The right number in the wrong unit',
    say: ({ name, written, limit, offers }) =>
      `\`${name}\` cannot be ${written} (possible: ${limit}). The same number fits in another unit: ${oneOf(offers)}?`,
    why: 'A barometer of 101 is a good reading in kPa and an impossible one in inHg. The number is usually right and the unit a slip.',
    wrong: 'values:\n  map: 101 inHg',
    right: 'values:\n  map: 101 kPa',
  },
  'beyond-sensor': {
    severity: 'warning',
    title: 'More than the data can carry',
    say: ({ name, written, range, source }) =>
      `${written} cannot have come over generic data: \`${name}\` carries ${range} there (${source}). Check the number and its unit, or say with \`tool\` which instrument measured it.`,
    why: 'Generic data carry each value in one or two bytes. What does not fit in them was not read from them.',
    wrong: 'tool: scan\nvalues:\n  vss: 280 km/h',
    right: 'tool: scan\nvalues:\n  vss: 80 km/h',
  },
  'impossible-value': {
    severity: 'error',
    title: 'A value that cannot be',
    say: ({ name, written, range, state, aboveSupply }) =>
      aboveSupply
        ? `\`${name}\` cannot be ${written}: that is more than a sensor’s supply of about 5 V gives (possible: ${range}). Look whether battery voltage reaches the signal’s wire, and where the meter is connected, before the sensor.`
        : state === undefined
          ? `\`${name}\` cannot be ${written}: possible is ${range}. Read it again, and look at the unit and the instrument before the car.`
          : `\`${name}\` cannot be ${written} at ${state}: the manifold holds the barometer then, ${range}. Was the engine running? If not, look at the unit and the sensor.`,
    why: 'A number outside what the part or the physics allows is a reading error, not a finding.',
    wrong: 'values:\n  battery: 126 V',
    right: 'values:\n  battery: 12.6 V',
  },
  'unusual-value': {
    severity: 'info',
    title: 'Outside what is usual in this state',
    say: ({ name, written, state, range, source, meant }) =>
      `\`${name}\` at ${state} is usually ${range} (${source}); here ${written}.${
        meant === undefined ? '' : ` The same number in ${meant} would be usual: is the unit right?`
      }`,
    why: 'Unusual is not wrong: a fault is what one looks for. The maker’s figures for this engine come first.',
    wrong: 'state: warm idle\nvalues:\n  vacuum: 9 inHg',
    right: 'state: warm idle\nvalues:\n  vacuum: 19 inHg',
  },
  'misspelt-state': {
    severity: 'info',
    title: 'Nearly an engine state',
    say: ({ name, nearest }) =>
      `\`${name}\` is taken as free words, of which nothing is known to be usual.${didYouMean(nearest)}`,
    why: 'A state may be said in free words. One that is nearly a known state is mostly a slip, and the checks for that state would silently not run.',
    wrong: 'state: warm idel',
    right: 'state: warm idle',
  },
  'engine-stands': {
    severity: 'warning',
    title: 'Speed or vacuum of an engine that stands',
    say: ({ name, written, state }) =>
      name === 'rpm'
        ? `\`${name}\` is ${written} at ${state}, and the engine stands then. Write the state that it was read in; if it did stand, look for noise on the speed sensor's signal.`
        : `\`${name}\` is ${written} at ${state}, and the manifold holds the barometer then. Write the state that it was read in; if the engine did stand, set the gauge to zero against the open air.`,
    why: 'A reading under the wrong state is compared with the wrong figures: what is taken key on, engine off, serves as the barometer of the whole case.',
    wrong: 'state: key on engine off\nvalues:\n  rpm: 720 rpm',
    right: 'state: warm idle\nvalues:\n  rpm: 720 rpm',
  },
  'failed-value': {
    severity: 'warning',
    title: 'A value that says "failed", not "measured"',
    say: ({ name, written, means }) =>
      `\`${name}\` at ${written} is what ${means} looks like. Measure the circuit before you believe the number.`,
    why: 'A module shows the end of its scale, or a substitute, when the sensor’s circuit is open or shorted. Nothing computed from it means anything.',
    wrong: 'values:\n  ect: -40 °C',
    right: 'values:\n  ect: 88 °C',
  },
  ...rulesHeaderRows,
  ...rulesPressureRows,
  ...rulesMixtureRows,
  ...rulesSetsRows,
  ...rulesAgainstRows,
};
