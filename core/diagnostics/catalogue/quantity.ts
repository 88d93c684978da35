import { didYouMean, oneOf, type Rows } from '../row.ts';

export interface QuantityFacts {
  'unknown-unit': { readonly word: string; readonly nearest: readonly string[] };
  'unit-of-count': { readonly word: string };
  'decimal-comma': { readonly text: string; readonly offers: readonly string[] };
  'digit-groups': { readonly text: string; readonly offer: string };
  'number-form': { readonly text: string; readonly offer?: string };
  'number-beyond': { readonly digits: number; readonly isLarge: boolean };
  'number-signs': { readonly text: string; readonly offers: readonly string[] };
  'plus-minus-number': { readonly text: string };
  'plus-minus-unit': { readonly text: string; readonly offer: string };
  'plus-minus-twice': { readonly text: string };
  'qualifier-misplaced': {
    readonly word: string;
    readonly unit: string;
    readonly allowed: readonly string[];
  };
  'unknown-qualifier': { readonly word: string; readonly nearest: readonly string[] };
  'quantity-expected': { readonly text: string; readonly offers: readonly string[] };
  'quantity-trailing': { readonly text: string; readonly quantity: string };
  'range-end-missing': { readonly text: string };
  'range-in-other-words': { readonly text: string; readonly offer: string };
  'range-in-reading': { readonly text: string; readonly offer?: string };
  'range-ends-differ': { readonly low: string; readonly high: string };
  'range-upside-down': { readonly low: string; readonly high: string };
  'curve-too-short': { readonly points: number };
  'curve-units-differ': { readonly first: string; readonly other: string };
  'curve-point-twice': { readonly x: string };
  'curve-point-uncertain': { readonly text: string; readonly offer: string };
  'kinds-in-sum': {
    readonly left: string;
    readonly right: string;
    readonly operator: string;
    readonly because: NoSum;
    readonly offers: readonly string[];
  };
  'kinds-in-sum-unusual': { readonly left: string; readonly right: string; readonly operator: string };
  'kind-undecided': { readonly text: string; readonly offers: readonly string[] };
  'kinds-compared': { readonly left: string; readonly right: string; readonly offers: readonly string[] };
  'kinds-in-quotient': { readonly left: string; readonly right: string; readonly offers: readonly string[] };
  'kind-unfit': { readonly got: string; readonly wanted: string; readonly offers: readonly string[] };
  'temperature-point-product': { readonly text: string };
  'crank-marks-differ': { readonly left: string; readonly right: string; readonly offer?: string };
  'percent-beside-number': { readonly number: string; readonly offer: string };
  'dimensions-differ': {
    readonly left: string;
    readonly right: string;
    readonly verb: string;
    readonly offers: readonly string[];
  };
  'power-of-unit': { readonly text: string; readonly exponent: string };
}

/** Why two kinds have no sum. */
export type NoSum =
  | 'two absolute'
  | 'two from the barometer'
  | 'two points'
  | 'two positions'
  | 'up and down'
  | 'from a difference'
  | 'different zeros';

function sayNoSum(because: NoSum): string {
  switch (because) {
    case 'two absolute':
      return 'each counts from no pressure at all, and one of them must be a difference';
    case 'two from the barometer':
      return 'both count from the barometer, and one of them must be a difference';
    case 'two points':
      return 'both are points on a scale, and one of them must be a difference';
    case 'two positions':
      return 'both are positions of the crank, and one of them must be a difference';
    case 'up and down':
      return 'one counts up from the barometer and the other down';
    case 'from a difference':
      return 'only a difference can be taken from a difference';
    case 'different zeros':
      return 'these are counted from different zeros';
  }
}

function offered(offers: readonly string[]): string {
  return offers.length === 0 ? '' : ` Write ${oneOf(offers.map((offer) => `\`${offer}\``))}.`;
}

export const quantityRows: Rows<QuantityFacts> = {
  'unknown-unit': {
    severity: 'error',
    title: 'Unknown unit',
    say: ({ word, nearest }) =>
      `\`${word}\` is no unit here.${didYouMean(nearest)}${word.endsWith('/') ? ' A division needs a space on both sides of its `/`.' : ''}${
        /^(?!O2$)[OolI]+[.\d]/.test(word)
          ? ' A number is written in digits: is this letter an O for 0, or an l for 1?'
          : /^(?:AWG|awg|gauge|ga)$/.test(word)
            ? ' A wire’s size is a text in quotes: `"4 AWG"`.'
            : ''
      }`,
    why: 'A number with a unit that is not understood cannot be checked against anything. A unit is never guessed.',
    wrong: 'fuel_pressure: 45 psig',
    right: 'fuel_pressure: 45 psi gauge',
  },
  'unit-of-count': {
    severity: 'error',
    title: 'A count with a unit',
    say: ({ word }) => `\`${word}\` is no unit: a count or a ratio stands alone. Leave the word out.`,
    why: 'Steps, teeth and ratios are plain numbers; a word behind them would look like a unit that can be converted.',
    wrong: 'iac: 11 steps',
    right: 'iac: 11',
  },
  'decimal-comma': {
    severity: 'error',
    title: 'Comma in a number',
    say: ({ text, offers }) =>
      offers.length === 0
        ? `\`${text}\` cannot be read: a number is written with a point and without commas.`
        : `\`${text}\` has a comma. A number is written with a point and without commas.${offered(offers)}`,
    why: 'A comma marks decimals in some countries and thousands in others: 1,000 may be one or a thousand.',
    wrong: 'map: 13,1 inHg',
    right: 'map: 13.1 inHg',
  },
  'digit-groups': {
    severity: 'error',
    title: 'Digits in groups',
    say: ({ text, offer }) => `\`${text}\` has its digits in groups. Write \`${offer}\`.`,
    why: 'A number is one run of digits, so that it cannot be taken for two numbers.',
    wrong: 'rpm: 2 500 rpm',
    right: 'rpm: 2500 rpm',
  },
  'number-form': {
    severity: 'error',
    title: 'Number that cannot be read',
    say: ({ text, offer }) =>
      `\`${text}\` is not a plain decimal number.${offer === undefined ? ' Write it with digits and one point.' : ` Write \`${offer}\`.`}`,
    why: 'Powers of ten, hexadecimal digits and fractions are easily misread in a case. A reading is a plain decimal number.',
    wrong: 'rpm: 2.5e3 rpm',
    right: 'rpm: 2500 rpm',
  },
  'number-beyond': {
    severity: 'error',
    title: 'Number beyond all measure',
    say: ({ digits, isLarge }) =>
      `This number has ${digits} digits and is ${isLarge ? 'larger' : 'smaller'} than anything on a vehicle. Count its digits and look at its unit: from 10⁻³⁰ to 10³⁰ is read.`,
    why: 'A key that was held down makes a number that no instrument gave. What is computed from it would be infinite, or nothing.',
    wrong: 'rpm: 7000000000000000000000000000000000 rpm',
    right: 'rpm: 700 rpm',
  },
  'number-signs': {
    severity: 'error',
    title: 'Sign that does not touch its number',
    say: ({ text, offers }) => `\`${text}\`: one sign stands directly before a number.${offered(offers)}`,
    why: 'Two signs, or a sign with a space behind it, may be a slip of the hand, and a wrong sign turns a finding round.',
    wrong: 'stft_b1: --5 %',
    right: 'stft_b1: -5 %',
  },
  'plus-minus-number': {
    severity: 'error',
    title: 'No number after ±',
    say: ({ text }) => `\`${text}\` needs a positive number after the ±: \`13.1 ± 0.2 inHg\`.`,
    why: 'The half-width behind ± is how far the reading may be off, to both sides; it has no sign of its own.',
    wrong: 'map: 13.1 ± -0.2 inHg',
    right: 'map: 13.1 ± 0.2 inHg',
  },
  'plus-minus-unit': {
    severity: 'error',
    title: '± without its unit',
    say: ({ text, offer }) =>
      `\`${text}\` does not say what the ± counts. Write \`${offer}\`, or a share as in \`± 2 %\`.`,
    why: 'Before the unit, ± counts in that unit. Behind it, it needs a % or a unit of its own.',
    wrong: 'map: 13.1 inHg ± 0.2',
    right: 'map: 13.1 ± 0.2 inHg',
  },
  'plus-minus-twice': {
    severity: 'error',
    title: 'Two half-widths',
    say: ({ text }) => `\`${text}\` states ± twice. Keep one.`,
    why: 'A reading has one half-width. How an instrument’s parts add up is said at the tool.',
    wrong: 'map: 13.1 ± 0.2 inHg ± 2 %',
    right: 'map: 13.1 ± 0.2 inHg',
  },
  'qualifier-misplaced': {
    severity: 'error',
    title: 'Qualifier that does not fit',
    say: ({ word, unit, allowed }) =>
      `\`${word}\` does not go with ${unit}. ${allowed.length === 0 ? 'Leave it out.' : `There it can be ${oneOf(allowed)}.`}`,
    why: 'Absolute, gauge and vacuum say where a pressure is counted from; a point is a temperature; a difference is either.',
    wrong: 'ect: 195 °F gauge',
    right: 'ect: 195 °F',
  },
  'unknown-qualifier': {
    severity: 'error',
    title: 'Unknown word behind a unit',
    say: ({ word, nearest }) => `\`${word}\` says nothing about a quantity.${didYouMean(nearest)}`,
    why: 'Behind a unit may stand where it is counted from: absolute, gauge, vacuum, difference or point.',
    wrong: 'fuel_pressure: 45 psi gage',
    right: 'fuel_pressure: 45 psi gauge',
  },
  'quantity-expected': {
    severity: 'error',
    title: 'No quantity',
    say: ({ text, offers }) =>
      text === ''
        ? 'A value is missing here. Write a number with its unit, or `not taken`.'
        : `\`${text}\` is not a quantity. Write a number with its unit, as in \`13.1 inHg\`.${didYouMean(offers)}`,
    why: 'A reading is a number with its unit, a range, or words that say why there is none.',
    wrong: 'map: about 13',
    right: 'map: 13 ± 1 inHg',
  },
  'quantity-trailing': {
    severity: 'error',
    title: 'Text behind a quantity',
    say: ({ text, quantity }) =>
      `\`${text}\` stands behind \`${quantity}\` and cannot be read. Leave it out, or put it under \`saw\`.`,
    why: 'What follows a quantity would be lost in every computation, so it is not passed over in silence.',
    wrong: 'vacuum: 16.4 inHg steady',
    right: 'vacuum: {value: 16.4 inHg, saw: steady}',
  },
  'range-end-missing': {
    severity: 'error',
    title: 'Range with one end',
    say: ({ text }) =>
      `\`${text}\` has one end only. Write both, as in \`17 .. 22 inHg\`, or \`at least\` or \`at most\`.`,
    why: 'A range has two ends. A limit to one side is said in words, so that nobody looks for the other number.',
    wrong: 'compression: 142 .. psi',
    right: 'compression: at least 142 psi',
  },
  'range-in-other-words': {
    severity: 'error',
    title: 'Range in other words',
    say: ({ text, offer }) => `\`${text}\` looks like a range. Write \`${offer}\`.`,
    why: 'A dash may be a minus: 5 - -2. A range is written with two dots.',
    wrong: 'vacuum: 17-22 inHg',
    right: 'vacuum: 17 .. 22 inHg',
  },
  'range-in-reading': {
    severity: 'error',
    title: 'Reading with two values or a limit',
    say: ({ text, offer }) =>
      `\`${text}\` is no reading: a reading is one value.${
        offer === undefined
          ? ' Write the number that was read, or put what limits it in a `reference`.'
          : ` Write \`${offer}\` for a needle that swung, or put the limits in a \`reference\`.`
      }`,
    why: 'An instrument shows one value, and how far it swung is its ±. What a value should be is known beforehand and belongs to a reference.',
    wrong: 'fuel_pressure: 50-55 psi',
    right: 'fuel_pressure: 52.5 ± 2.5 psi',
  },
  'range-ends-differ': {
    severity: 'error',
    title: 'Range between unlike quantities',
    say: ({ low, high }) => `The ends of this range do not go together: ${low} and ${high}.`,
    why: 'Both ends of a range measure the same thing.',
    wrong: 'vacuum: 17 V .. 22 inHg',
    right: 'vacuum: 17 .. 22 inHg',
  },
  'range-upside-down': {
    severity: 'error',
    title: 'Range upside down',
    say: ({ low, high }) => `This range starts at ${low}, above its end ${high}. Write the lower one first.`,
    why: 'Nothing lies in a range whose lower end is above its upper end.',
    wrong: 'vacuum: 22 .. 17 inHg',
    right: 'vacuum: 17 .. 22 inHg',
  },
  'curve-too-short': {
    severity: 'error',
    title: 'Curve of fewer than two points',
    say: ({ points }) => `A curve needs at least two points; this one has ${points}.`,
    why: 'Values are read between the points of a curve.',
    wrong: 'maf_curve: [[0.4 V, 2 g/s]]',
    right: 'maf_curve: [[0.4 V, 2 g/s], [1.1 V, 9 g/s]]',
  },
  'curve-units-differ': {
    severity: 'error',
    title: 'Curve with mixed quantities',
    say: ({ first, other }) => `This curve starts in ${first}; ${other} is another kind of quantity.`,
    why: 'All points of a curve measure the same two things.',
    wrong: 'maf_curve: [[0.4 V, 2 g/s], [1.1 Hz, 9 g/s]]',
    right: 'maf_curve: [[0.4 V, 2 g/s], [1.1 V, 9 g/s]]',
  },
  'curve-point-twice': {
    severity: 'error',
    title: 'Curve with a point twice',
    say: ({ x }) => `This curve has two points at ${x}. Keep one.`,
    why: 'At one place a curve has one value.',
    wrong: 'maf_curve: [[0.4 V, 2 g/s], [0.4 V, 3 g/s]]',
    right: 'maf_curve: [[0.4 V, 2 g/s], [1.1 V, 9 g/s]]',
  },
  'curve-point-uncertain': {
    severity: 'warning',
    title: 'Curve with a point that has a ±',
    say: ({ text, offer }) =>
      `The ± of \`${text}\` is not used: a curve counts as exact. Write \`${offer}\`, and add a ± to what is read off the curve where it matters.`,
    why: 'What is read off a curve has the ± of the reading that it is entered with, and none of the curve’s own. A ± that nobody counts would make a result look surer than it is.',
    wrong: 'maf_curve: [[0.4 V, 2 ± 0.1 g/s], [1.1 V, 9 g/s]]',
    right: 'maf_curve: [[0.4 V, 2 g/s], [1.1 V, 9 g/s]]',
  },
  'kinds-in-sum': {
    severity: 'error',
    title: 'Sum of kinds that do not add',
    say: ({ left, right, operator, because, offers }) =>
      `${left} ${operator} ${right} has no meaning: ${sayNoSum(because)}.${offered(offers)}`,
    why: 'Two absolute pressures, two temperatures or two crank positions do not add up to a third. A difference adds to each.',
    wrong: 'map + map',
    right: 'map + 5 kPa difference',
  },
  'kinds-in-sum-unusual': {
    severity: 'warning',
    title: 'Unusual sum of pressures',
    say: ({ left, right, operator }) =>
      `${left} ${operator} ${right} is taken as an absolute pressure. Usual are barometer + gauge, barometer − vacuum and manifold pressure + vacuum: check that this is meant.`,
    why: 'Gauge and vacuum count from the barometer of the place and the day; added to any other absolute pressure they give a number that no gauge shows.',
    wrong: 'map + fuel_pressure',
    right: 'baro + fuel_pressure',
  },
  'kind-undecided': {
    severity: 'error',
    title: 'Pressure that may be counted from two zeros',
    say: ({ text, offers }) =>
      `${text} may be absolute, a gauge pressure or a difference here.${offered(offers)}`,
    why: 'A pressure without a word takes its kind from its place. Where the place allows two, the author says which.',
    wrong: '14.7 psi + fuel_pressure',
    right: '14.7 psi absolute + fuel_pressure',
  },
  'kinds-compared': {
    severity: 'error',
    title: 'Comparison of different kinds',
    say: ({ left, right, offers }) =>
      `${left} and ${right} are counted from different zeros.${offered(offers)}`,
    why: 'Twenty inches of vacuum and twenty inches absolute are different pressures. Bring both to one kind first.',
    wrong: 'map < vacuum',
    right: 'map < absolute(vacuum)',
  },
  'kinds-in-quotient': {
    severity: 'error',
    title: 'Quotient of different kinds',
    say: ({ left, right, offers }) =>
      `${left} divided by ${right} has no meaning: they are counted from different zeros.${offered(offers)}`,
    why: 'A ratio of pressures needs both counted from the same zero.',
    wrong: 'map / vacuum',
    right: 'map / absolute(vacuum)',
  },
  'kind-unfit': {
    severity: 'error',
    title: 'Another kind is wanted here',
    say: ({ got, wanted, offers }) => `${got} stands where ${wanted} is wanted.${offered(offers)}`,
    why: 'Each place says from where its pressure or temperature is counted.',
    wrong: 'air_density(vacuum, iat)',
    right: 'air_density(absolute(vacuum), iat)',
  },
  'temperature-point-product': {
    severity: 'error',
    title: 'Temperature in a product',
    say: ({ text }) =>
      `${text} is a point on a scale: twice 20 °C is not 40 °C. Write \`kelvin(…)\`, or say that it is a \`difference\`.`,
    why: 'Degrees count from an arbitrary zero. Only a thermodynamic temperature or a difference can be multiplied or divided.',
    wrong: 'ect / iat',
    right: 'kelvin(ect) / kelvin(iat)',
  },
  'crank-marks-differ': {
    severity: 'error',
    title: 'Crank positions from different marks',
    say: ({ left, right, offer }) =>
      `${left} and ${right} count from different marks or in different directions.${offer === undefined ? '' : ` ${offer}`}`,
    why: '10 °BTDC is −10 °ATDC. The tool does not turn one into the other by itself, since a sign is easily overlooked.',
    wrong: 'spark > 5 °ATDC',
    right: 'spark > -5 °BTDC',
  },
  'percent-beside-number': {
    severity: 'error',
    title: 'Percent beside a plain number',
    say: ({ number, offer }) => `\`${number}\` stands beside a percentage. Write \`${offer}\`.`,
    why: 'Ten is a thousand percent. Beside a percentage only 0 and 1 can be meant as they stand.',
    wrong: 'ltft_b1 < 10',
    right: 'ltft_b1 < 10 %',
  },
  'dimensions-differ': {
    severity: 'error',
    title: 'Different quantities',
    say: ({ left, right, verb, offers }) =>
      `${left} and ${right} cannot be ${verb}: they measure different things.${offered(offers)}`,
    why: 'A pressure and a voltage have no sum and no order.',
    wrong: 'map + battery',
    right: 'map + vacuum',
  },
  'power-of-unit': {
    severity: 'error',
    title: 'Power that cannot be taken',
    say: ({ text, exponent }) =>
      `${text} cannot be raised to ${exponent}: a quantity with a unit takes a whole power from -9 to 9.`,
    why: 'Units are raised exactly. A fractional power of a unit measures nothing.',
    wrong: '(engine.displacement) ^ 0.5',
    right: '(engine.displacement) ^ 2',
  },
};
