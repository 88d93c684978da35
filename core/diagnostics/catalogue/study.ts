import { didYouMean, oneOf, type Rows } from '../row.ts';

/** Findings about a case as a whole: readings that do not fit their signal, and checks that prove nothing. */
export interface StudyFacts {
  readonly 'missing-unit': {
    readonly name: string;
    readonly value: string;
    readonly units: readonly string[];
  };
  readonly 'wrong-dimension': {
    readonly name: string;
    readonly meaning: string;
    readonly written: string;
    readonly is: string;
    readonly takes: readonly string[];
    /** A flow by mass as a volume of gasoline. */
    readonly asVolume?: string;
  };
  readonly 'wrong-kind': {
    readonly name: string;
    readonly meaning: string;
    readonly is: string;
    readonly takes: string;
    /** The signal that such a reading is of. */
    readonly signal?: string;
    /** The same angle counted from the other side. */
    readonly same?: string;
  };
  readonly 'too-many-sources': { readonly most: number };
  readonly 'cylinder-in-another-unit': {
    readonly name: string;
    readonly written: string;
    readonly inTheirs: string;
    readonly unit: string;
    readonly offer: string;
  };
  readonly 'wrong-value-shape': { readonly name: string; readonly got: string; readonly takes: string };
  readonly 'unknown-value-word': {
    readonly name: string;
    readonly word: string;
    readonly allowed: readonly string[];
    readonly nearest: readonly string[];
  };
  readonly 'unknown-cylinder': {
    readonly name: string;
    readonly cylinder: string;
    readonly cylinders: number;
  };
  readonly 'not-a-cylinder': { readonly name: string; readonly key: string };
  readonly 'no-barometer': { readonly what: string; readonly among: readonly string[] };
  readonly 'standard-barometer': {
    readonly name: string;
    readonly parameter: string;
    readonly taken: string;
  };
  readonly 'fits-as-well': { readonly name: string; readonly got: string; readonly also: string };
  readonly 'outside-range': {
    readonly name: string;
    /** A parameter; undefined for the result. */
    readonly of: string | undefined;
    readonly got: string;
    readonly limits: string;
    readonly meaning: string;
  };
  readonly 'circular-check': {
    readonly barometer: string;
    /** Both sides were converted with it; otherwise one was, and the other is built on its reading. */
    readonly both: boolean;
  };
  readonly 'fault-not-shown': { readonly title: string };
  readonly 'not-a-statement': { readonly got: string; readonly offer: string };
  readonly 'columns-without-states': { readonly columns: readonly string[] };
  readonly 'state-without-column': { readonly state: string };
  readonly 'unknown-state-column': {
    readonly state: string;
    readonly states: readonly string[];
    readonly nearest: readonly string[];
  };
}

export const studyRows: Rows<StudyFacts> = {
  'missing-unit': {
    severity: 'error',
    title: 'A number without its unit',
    say: ({ name, value, units }) =>
      `\`${name}\` needs a unit: ${value} could be anything. Write ${oneOf(units.map((unit) => `\`${value} ${unit}\``))}.`,
    why: 'Half of all misreadings are a number in one unit read as another. Only what has no unit may be written without one.',
    wrong: 'values:\n  map: 13.1',
    right: 'values:\n  map: 13.1 inHg',
  },
  'wrong-dimension': {
    severity: 'error',
    title: 'A unit that this signal cannot have',
    say: ({ name, meaning, written, is, takes, asVolume }) =>
      `\`${name}\` (${meaning}) is not measured as ${is} (\`${written}\`). It takes ${oneOf(takes)}${asVolume === undefined ? '' : `: of gasoline that is ${asVolume}`}.`,
    why: 'Volts from an air-flow meter are not grams a second, and degrees are not a pressure. A number of the wrong sort must not enter a sum.',
    wrong: 'values:\n  map: 13.1 °C',
    right: 'values:\n  map: 13.1 inHg',
  },
  'wrong-kind': {
    severity: 'error',
    title: 'The wrong kind of pressure or temperature for this signal',
    say: ({ name, meaning, is, takes, signal, same }) =>
      `\`${name}\` (${meaning}) is ${takes}, and this is written as ${is}. ${
        same !== undefined
          ? `Write \`${same}\`.`
          : signal !== undefined
            ? `Record it as \`${signal}\`, or convert it with the barometer.`
            : 'Convert it, or record it under the signal that it is.'
      }`,
    why: 'Fifteen psi gauge and fifteen psi absolute are a barometer apart. A vacuum gauge’s reading is `vacuum`, the sensor’s is `map`.',
    wrong: 'values:\n  map: 16.4 inHg vacuum',
    right: 'values:\n  vacuum: 16.4 inHg',
  },
  'cylinder-in-another-unit': {
    severity: 'warning',
    title: 'One cylinder in another unit than the others',
    say: ({ name, written, inTheirs, unit, offer }) =>
      `\`${name}\` is ${written}, which is ${inTheirs}, and the others are in ${unit}. ${offer} would stand nearer to them: is the unit right?`,
    why: 'One gauge reads all cylinders. A single one in another unit is mostly a slip, and makes a sound cylinder look dead or a dead one sound.',
    wrong: 'compression: {1: 172 psi, 2: 175 psi, 3: 170 psi, 4: 168 kPa}',
    right: 'compression: {1: 172 psi, 2: 175 psi, 3: 170 psi, 4: 168 psi}',
  },
  'wrong-value-shape': {
    severity: 'error',
    title: 'A value of the wrong shape',
    say: ({ name, got, takes }) => `\`${name}\` is written as ${got}, and it takes ${takes}.`,
    why: 'A signal holds one value, or one a cylinder, or one a labelled place; a range or a curve belongs to a reference.',
    wrong: 'values:\n  map: 17 .. 22 inHg',
    right: 'values:\n  map: 19 inHg',
  },
  'unknown-value-word': {
    severity: 'error',
    title: 'A word that this signal does not know',
    say: ({ name, word, allowed, nearest }) =>
      `\`${name}\` is one of ${oneOf(allowed.map((each) => `\`${each}\``))}, not \`${word}\`.${didYouMean(nearest)}`,
    why: 'Checks compare these words, so each must be spelt in one way.',
    wrong: 'values:\n  loop: close',
    right: 'values:\n  loop: closed',
  },
  'unknown-cylinder': {
    severity: 'error',
    title: 'A cylinder that the engine does not have',
    say: ({ name, cylinder, cylinders }) =>
      `\`${name}\` names cylinder ${cylinder}, but the header says ${cylinders} cylinders.`,
    why: 'Either the number is a slip or the header describes another engine; both would spoil every comparison between cylinders.',
    wrong: 'compression: {1: 181 psi, 2: 178 psi, 3: 180 psi, 5: 179 psi}',
    right: 'compression: {1: 181 psi, 2: 178 psi, 3: 180 psi, 4: 179 psi}',
  },
  'not-a-cylinder': {
    severity: 'error',
    title: 'A member that is no cylinder',
    say: ({ name, key }) =>
      `\`${name}\` is read by cylinder, and \`${key}\` is no cylinder number. Write the numbers alone: \`1\`, \`2\` …; an average is computed with \`mean(${name})\`.`,
    why: 'Lowest, highest and balance are looked for among the cylinders. Anything else in the map would spoil them.',
    wrong: 'compression: {1: 181 psi, cyl 2: 178 psi}',
    right: 'compression: {1: 181 psi, 2: 178 psi}',
  },
  'no-barometer': {
    severity: 'warning',
    title: 'No barometer to convert with',
    say: ({ what, among }) =>
      among.length > 0
        ? `${what} converts values that were not all measured under one barometer (${among.map((each) => `\`${each}\``).join(', ')}). Convert each reading by itself.`
        : `${what} needs the barometer, and the case has none that is certain. Record one \`baro\`, a key-on engine-off \`map\`, or the site’s altitude with its sea level pressure.`,
    why: 'Between gauge, vacuum and absolute stands the local barometer. The weather report’s sea-level figure is never it.',
    wrong: 'let:\n  inside: absolute(gauged.vacuum)   # no barometer in the case',
    right: 'values:\n  baro: 29.6 inHg',
  },
  'standard-barometer': {
    severity: 'warning',
    title: 'The standard barometer stands in for the case’s own',
    say: ({ name, parameter, taken }) =>
      `\`${name}\` needs the barometer, and the case has none that is certain: ${taken} was taken. Record one \`baro\`, a key-on engine-off \`map\`, or the site’s altitude with its sea level pressure, or write \`${parameter} = …\`.`,
    why: 'The standard atmosphere is right at the sea on an average day. At 5000 ft the true barometer is a sixth lower.',
    wrong: 'let:\n  across: injector_pressure(300 kPa, 35 kPa)   # no barometer in the case',
    right: 'let:\n  across: injector_pressure(300 kPa, 35 kPa, 84.3 kPa)',
  },
  'fits-as-well': {
    severity: 'warning',
    title: 'A lag that may be a cycle off',
    say: ({ name, got, also }) =>
      `The channels repeat themselves: \`${name}\` comes to ${got}, and ${also} fits nearly as well. Cut out a stretch with one change that does not repeat (\`from … to\`), or trust it only where the lag must be shorter than half a cycle.`,
    why: 'Of a steady rhythm no shift by whole cycles can be told from another. It is said where the next best shift is at least five sixths as alike as the best.',
    wrong: 'let:\n  delay: lag(o2.front, o2.rear)   # both switch once a second all along',
    right:
      'let:\n  delay: lag(o2.front from 10 s to 13 s, o2.rear from 10 s to 13 s)   # where the throttle was opened',
  },
  'outside-range': {
    severity: 'warning',
    title: 'Beyond what a function is made for',
    say: ({ name, of, got, limits, meaning }) =>
      `${of === undefined ? `\`${name}\` comes to ${got}` : `\`${of}\` of \`${name}\` is ${got}`}, outside its range (${limits}). ${meaning}`,
    why: 'A formula goes on giving numbers where it no longer holds. Such a number may show the way, but nothing must be decided by its digits.',
    wrong: 'let:\n  load: calculated_load(120 g/s, 100 g/s, 29.9 inHg, 25 °C)',
    right: 'let:\n  load: calculated_load(80 g/s, 100 g/s, 29.9 inHg, 25 °C)',
  },
  'circular-check': {
    severity: 'warning',
    title: 'A check whose two sides come from one barometer',
    say: ({ barometer, both }) =>
      both
        ? `Both sides of this check are converted with \`${barometer}\`, so it cannot show whether \`${barometer}\` is right. Compare with a reading that needs no conversion, or was converted with another barometer.`
        : `This check sets \`${barometer}\` against a value that was converted with \`${barometer}\` itself, so it cannot show whether \`${barometer}\` is right. Compare with a reading that was taken separately.`,
    why: 'A pressure turned into a vacuum with a barometer and added to itself gives that barometer back, right or wrong. Two pressures that were converted with one barometer are both off by as much as it is.',
    wrong: 'expect:\n  - before.idle.map + vacuum(before.idle.map) within 0.5 inHg of koeo.map',
    right: 'expect:\n  - before.idle.map + gauged.vacuum within 0.5 inHg of koeo.map',
  },
  'fault-not-shown': {
    severity: 'warning',
    title: 'A check that is meant to show the fault, and does not',
    say: ({ title }) =>
      `"${title}" says \`shows: fault\`, but everything in it holds. Is the limit right, or is the fault elsewhere?`,
    why: 'The author expects this check to fail because of the fault. If it holds, the case does not say what its author thinks it says.',
    wrong: 'shows: fault\nexpect:\n  - 4 % between -10 % and 10 %',
    right: 'shows: fault\nexpect:\n  - 25 % between -10 % and 10 %',
  },
  'too-many-sources': {
    severity: 'error',
    title: 'Too many sources of uncertainty',
    say: ({ most }) =>
      `This would have to keep apart more than ${most} sources of uncertainty, or more than the case has room for. Take fewer members, or leave out the ± of some.`,
    why: 'Every ± is a source of its own and is followed into each result, so that a reading that enters twice counts once. Members by the hundred that are each computed with all the others would fill the memory.',
    wrong: 'let:\n  share: drops * mean(drops)   # 200 members, each with its ±',
    right: 'let:\n  share: lowest_to_highest(drops)',
  },
  'not-a-statement': {
    severity: 'error',
    title: 'An expectation that is no statement',
    say: ({ got, offer }) =>
      `This gives ${got}, not something that holds or fails. Compare it with something: \`${offer}\`.`,
    why: 'Only a comparison can hold or fail.',
    wrong: 'expect:\n  - before.idle.map',
    right: 'expect:\n  - before.idle.map < 14 inHg',
  },
  'columns-without-states': {
    severity: 'error',
    title: 'Several columns, and no word of what they are',
    say: ({ columns }) =>
      `The table has the columns ${columns.map((each) => `\`${each}\``).join(', ')}, and the cell does not say in which engine state each was taken. List them under \`states\`, or head them with cylinder numbers.`,
    why: 'Two values of one signal can only be told apart by the state that each was taken in, or by the cylinder.',
    wrong: 'table: |\n  reading  idle  fast  unit\n  map      13.1  9.8   inHg',
    right:
      'states:\n  idle: warm idle\n  fast: 2500 rpm no load\ntable: |\n  reading  idle  fast  unit\n  map      13.1  9.8   inHg',
  },
  'state-without-column': {
    severity: 'warning',
    title: 'A state that the table has no column for',
    say: ({ state }) =>
      `\`${state}\` is listed under \`states\`, and the table has no column of that name. Add the column, or take the state out.`,
    why: 'A state without values is mostly a column under another name, whose values are then missing.',
    wrong:
      'states:\n  idle: warm idle\n  drive: cruise\ntable: |\n  reading  idle  unit\n  map      13.1  inHg',
    right: 'states:\n  idle: warm idle\ntable: |\n  reading  idle  unit\n  map      13.1  inHg',
  },
  'unknown-state-column': {
    severity: 'error',
    title: 'A table column that is no state of this cell',
    say: ({ state, states, nearest }) =>
      `The table has a column \`${state}\`, but \`states\` lists ${oneOf(states.map((each) => `\`${each}\``))}.${didYouMean(nearest)}`,
    why: 'The column says in which state its numbers were taken; without the state they cannot be judged.',
    wrong: 'states:\n  idle: warm idle\ntable: |\n  reading  idel  unit\n  map      13.1  inHg',
    right: 'states:\n  idle: warm idle\ntable: |\n  reading  idle  unit\n  map      13.1  inHg',
  },
};
