import { didYouMean, type Rows } from '../row.ts';

/** Findings of the rules about temperatures, sets of readings and the header. */
export interface RulesSetsFacts {
  readonly 'cold-soak-apart': {
    readonly name: string;
    readonly written: string;
    readonly others: readonly string[];
    readonly about: string;
  };
  readonly 'thermostat-early': {
    readonly name: string;
    readonly written: string;
    readonly rating: string;
    readonly state: string;
  };
  readonly 'charge-hotter-than-coolant': {
    readonly charge: string;
    readonly written: string;
    readonly coolant: string;
    readonly coolantWritten: string;
  };
  readonly 'missing-cylinder': {
    readonly name: string;
    readonly cylinders: number;
    readonly missing: readonly string[];
  };
  readonly 'frozen-reading': {
    readonly name: string;
    readonly other: string;
    readonly written: string;
    readonly states: readonly [string, string];
  };
  readonly 'readings-differ': { readonly name: string; readonly written: string; readonly says: string };
  readonly 'instruments-differ': {
    readonly name: string;
    readonly written: string;
    readonly other: string;
    readonly otherWritten: string;
    readonly tools: readonly [string, string];
  };
  readonly 'suspect-twice': { readonly name: string };
  readonly 'firing-order-unfit': {
    readonly order: string;
    readonly cylinders: number;
    readonly missing: readonly number[];
    readonly twice: readonly number[];
    readonly beyond: readonly number[];
  };
  readonly 'code-form': {
    readonly code: string;
    readonly offers: readonly string[];
    /** Sound codes that stand in the place of one. */
    readonly several?: readonly string[];
  };
}

export const rulesSetsRows: Rows<RulesSetsFacts> = {
  'cold-soak-apart': {
    severity: 'warning',
    title: 'One temperature far from the others after a cold soak',
    say: ({ name, written, others, about }) =>
      others.length === 1
        ? `After a cold soak \`${others[0]}\` is about ${about}, and \`${name}\` says ${written}: one of them is wrong, or substituted. Measure with a thermometer of your own, then the circuit of the sensor that is off.`
        : `After a cold soak ${others.map((each) => `\`${each}\``).join(' and ')} agree at about ${about}, and \`${name}\` says ${written}. Measure that sensor and its circuit.`,
    why: 'A car that has stood for a night has one temperature everywhere. A sensor that says otherwise is wrong, or something was warm: a block heater, the sun, a car that was moved. Modules may show a substitute for a sensor that failed.',
    wrong: 'state: cold soak\nvalues:\n  ect: 60 °F\n  iat: 62 °F\n  eot: 110 °F',
    right: 'state: cold soak\nvalues:\n  ect: 60 °F\n  iat: 62 °F\n  eot: 61 °F',
  },
  'thermostat-early': {
    severity: 'info',
    title: 'Coolant that stays below its thermostat',
    say: ({ name, written, rating, state }) =>
      `\`${name}\` is ${written} at ${state}, and the thermostat begins to open at ${rating}. Is the engine warm? Then feel the upper hose from a cold start: it must stay cold until the thermostat opens.`,
    why: 'A thermostat stays shut below its rating. Coolant more than 11 °C (20 °F) below it after ten to fifteen minutes means that it opens early or stays open (common practice), or that the sensor reads low.',
    wrong: 'engine:\n  thermostat: 195 °F\n# …\nstate: cruise\nvalues:\n  ect: 156 °F',
    right: 'engine:\n  thermostat: 195 °F\n# …\nstate: cruise\nvalues:\n  ect: 197 °F',
  },
  'charge-hotter-than-coolant': {
    severity: 'warning',
    title: 'Intake air hotter than the coolant',
    say: ({ charge, written, coolant, coolantWritten }) =>
      `\`${charge}\` is ${written} and \`${coolant}\` ${coolantWritten}: without a compressor nothing heats the air above the coolant. Compare both with a thermometer, and measure the sensor that is off.`,
    why: 'Intake air takes its heat from the engine, so it stays below the coolant while the engine runs. Boost and the minutes after a hot stop are exceptions. A sensor or a connector that is wrong spoils the computed air and the ignition timing.',
    wrong: 'state: cruise\nvalues:\n  ect: 192 °F\n  iat: 228 °F',
    right: 'state: cruise\nvalues:\n  ect: 192 °F\n  iat: 95 °F',
  },
  'missing-cylinder': {
    severity: 'info',
    title: 'A cylinder is missing',
    say: ({ name, cylinders, missing }) =>
      `\`${name}\` has no cylinder ${missing.join(', ')} of ${cylinders}. Measure it, or say so: \`${missing[0]}: not taken\`.`,
    why: 'Cylinders are judged by each other. One that was left out may be the one that matters, and what was not measured is a fact of its own.',
    wrong: 'values:\n  compression:\n    1: 174 psi\n    2: 176 psi\n    3: 172 psi',
    right: 'values:\n  compression:\n    1: 174 psi\n    2: 176 psi\n    3: 172 psi\n    4: not taken',
  },
  'frozen-reading': {
    severity: 'warning',
    title: 'The same number at closed and at open throttle',
    say: ({ name, other, written, states }) =>
      `\`${name}\` and \`${other}\` are both exactly ${written}, at ${states[1]} and at ${states[0]}. Was a column copied? If not, the sensor does not follow: watch it while the throttle moves.`,
    why: 'Pressure, air flow, throttle and load must differ between a closed and an open throttle. A value that stays is stuck, substituted, or was written down twice.',
    wrong:
      'states:\n  idle: warm idle\n  full: wide open throttle\ntable: |\n  reading  idle  full  unit\n  map      34    34    kPa',
    right:
      'states:\n  idle: warm idle\n  full: wide open throttle\ntable: |\n  reading  idle  full  unit\n  map      34    98    kPa',
  },
  'readings-differ': {
    severity: 'warning',
    title: 'Two readings of one thing that differ',
    say: ({ name, written, says }) =>
      `\`${name}\` is ${written}, and ${says}. They are one thing read twice at one moment: check both numbers and their units, then the instruments.`,
    why: 'Some readings are another in a different form: absolute load is the air flow for speed and displacement (SAE J1979), an air-fuel ratio is lambda for the fuel. Where they differ, one was misread or belongs to another moment.',
    wrong: 'values:\n  battery: 14.1 V\n  charging_voltage: 12.4 V',
    right: 'values:\n  battery: 14.1 V\n  charging_voltage: 14.2 V',
  },
  'instruments-differ': {
    severity: 'warning',
    title: 'Two instruments that read one thing differently',
    say: ({ name, written, other, otherWritten, tools: [one, two] }) =>
      `\`${name}\` is ${written}, and \`${other}\` in the same state ${otherWritten}: more than the accuracy of \`${one}\` and \`${two}\` and the time between them explain. Read both again side by side, then against a third.`,
    why: 'A sensor is proven by an instrument that does not share its circuit. What the accuracies do not explain is a fault of one of them, or the readings are of two moments.',
    wrong:
      'tools:\n  scan:\n    description: generic scan data\n  gauge:\n    description: pressure gauge\n    accuracy: 1 psi\n…\nstate: warm idle\ntool: scan\nvalues:\n  fuel_pressure: 300 kPa\n…\nstate: warm idle\ntool: gauge\nvalues:\n  fuel_pressure: 30 psi',
    right:
      'tools:\n  scan:\n    description: generic scan data\n  gauge:\n    description: pressure gauge\n    accuracy: 1 psi\n…\nstate: warm idle\ntool: scan\nvalues:\n  fuel_pressure: 300 kPa\n…\nstate: warm idle\ntool: gauge\nvalues:\n  fuel_pressure: 43 psi',
  },
  'suspect-twice': {
    severity: 'warning',
    title: 'A suspect that stands twice',
    say: ({ name }) =>
      `The suspect \`${name}\` stands twice, and each is weighed by what both predict. Put their predictions together, or give each a name of its own.`,
    why: 'A suspect is weighed by its name. Under one name two different faults would prove, or rule out, each other.',
    wrong:
      'suspects: Lean at idle\nconsider:\n  - name: leak\n    predicts:\n      - smoke.result is yes\n  - name: leak\n    predicts:\n      - pinched.result is yes',
    right:
      'suspects: Lean at idle\nconsider:\n  - name: leak at the plenum\n    predicts:\n      - smoke.result is yes\n  - name: leak in the booster\n    predicts:\n      - pinched.result is yes',
  },
  'firing-order-unfit': {
    severity: 'warning',
    title: 'A firing order that does not fit the cylinders',
    say: ({ order, cylinders, missing, twice, beyond }) =>
      `The firing order ${order} does not fit ${cylinders} cylinders: ${[
        ...of(missing, 'missing'),
        ...of(twice, 'twice'),
        ...of(beyond, 'not there'),
      ].join(', ')}. Write each cylinder once.`,
    why: 'Companion cylinders, misfire patterns and cylinder captures are read with the firing order. Each cylinder fires once in it.',
    wrong: 'engine:\n  cylinders: 4\n  firing order: 1-3-3-2',
    right: 'engine:\n  cylinders: 4\n  firing order: 1-3-4-2',
  },
  'code-form': {
    severity: 'warning',
    title: 'A code of no known form',
    say: ({ code, offers, several }) =>
      several !== undefined
        ? `\`${code}\` are ${several.length} codes. Each is an entry of its own: \`- ${several[0]}\` on one line, \`- ${several[1]}\` on the next.`
        : `\`${code}\` has not the form of a trouble code: P, C, B or U, a digit from 0 to 3, then three of 0 to 9 and A to F.${didYouMean(offers)} A maker’s own number belongs into \`history\` or a note.`,
    why: 'SAE J2012 and ISO 15031-6 give codes this form, and the library finds cases by it.',
    wrong: 'codes:\n  - PO171',
    right: 'codes:\n  - P0171',
  },
};

/** "3 twice", or nothing. */
function of(cylinders: readonly number[], what: string): readonly string[] {
  return cylinders.length === 0 ? [] : [`${cylinders.join(' and ')} ${what}`];
}
