import type { Rows } from '../row.ts';

type Sign = 'adds' | 'takes';

/** What tells the control how much air comes in. */
type Metering = 'pressure' | 'flow';

/** Findings of the rules about air, fuel and the exhaust. */
export interface RulesMixtureFacts {
  readonly 'filling-unlikely': {
    readonly name: string;
    readonly written: string;
    readonly percent: number;
    readonly low: number;
    readonly high: number;
    readonly state: string;
    readonly isFull: boolean;
    readonly from: 'manifold pressure' | 'barometer';
    /** The intake-air sensor that shows more than such air has. */
    readonly doubted?: { readonly name: string; readonly written: string };
    /** The other columns of its row that cannot be either. */
    readonly more: readonly string[];
    /** The same number in the unit in which it would fit. */
    readonly meant?: string;
    /** The manifold pressure that would fit as a gauge pressure, and what it then is. */
    readonly gauge?: { readonly name: string; readonly written: string; readonly absolute: string };
  };
  readonly 'egr-at-idle': {
    readonly name: string;
    readonly written: string;
    /** Undefined where it was not read. */
    readonly command?: string;
  };
  readonly 'idle-air-shut': {
    readonly written: string;
    readonly trim: string;
    readonly bank: 1 | 2;
    readonly rpm?: string;
    readonly metering: Metering;
  };
  readonly 'trim-by-load': {
    readonly bank: 1 | 2 | 'both';
    /** The other bank was measured, too, and is far from it at both loads. */
    readonly alone: boolean;
    readonly shape: 'falls' | 'same' | 'rises';
    readonly sign: Sign;
    readonly low: string;
    readonly high: string;
    readonly at: string;
    readonly to: string;
    readonly metering: Metering;
  };
  readonly 'banks-apart': {
    readonly state: string;
    readonly first: string;
    readonly second: string;
    readonly bank: 1 | 2;
    readonly sign: Sign;
  };
  readonly 'code-of-other-bank': {
    readonly code: string;
    readonly bank: 1 | 2;
    readonly own: string;
    readonly other: string;
    readonly state: string;
    readonly meant: string;
  };
  readonly 'banks-together': {
    readonly state: string;
    readonly first: string;
    readonly second: string;
    readonly sign: Sign;
    readonly metering: Metering;
  };
  readonly 'trim-against-gas': {
    readonly trim: string;
    readonly lambda: string;
    readonly from: string;
    readonly sign: Sign;
  };
  readonly 'ethanol-unfit': {
    readonly name: string;
    readonly written: string;
    readonly fuel: string;
    /** The fuel as it would be called by the reading. */
    readonly meant: string;
  };
  readonly 'rear-copies-front': {
    readonly bank: 1 | 2;
    readonly front: string;
    readonly rear: string;
    readonly frontSwing: string;
    readonly rearSwing: string;
    readonly ratio: string;
    readonly later: string;
    readonly correlation: string;
  };
}

export const rulesMixtureRows: Rows<RulesMixtureFacts> = {
  'filling-unlikely': {
    severity: 'warning',
    title: 'An air flow that this engine cannot have',
    say: ({ name, written, percent, low, high, state, isFull, from, doubted, more, meant, gauge }) =>
      `\`${name}\` at ${written} means a volumetric efficiency of ${percent} % (by the ${from}${
        doubted === undefined
          ? ''
          : `, with air of 40 °C, since \`${doubted.name}\` at ${doubted.written} is hotter than intake air gets here`
      }); at ${state} engines have ${low} to ${high} %.${
        more.length === 0 ? '' : ` So it is with ${more.map((each) => `\`${each}\``).join(', ')}.`
      }${
        gauge === undefined
          ? ''
          : ` Is \`${gauge.name}\`, ${gauge.written}, counted from the barometer? Then it is ${gauge.absolute} absolute, which fits.`
      }${meant === undefined ? '' : ` Is it ${meant}?`} ${nextForFilling(percent > high, isFull)}`,
    why: 'Speed, displacement and the density in the manifold say how much air four-stroke cylinders draw in (Heywood, Internal Combustion Engine Fundamentals, equation 2.27). A metered flow far from that is a wrong number, a meter that lies, air that is not metered, or an engine that cannot breathe.',
    wrong:
      'engine:\n  displacement: 2.4 L\n# …\nstate: warm idle\nvalues:\n  rpm: 700 rpm\n  map: 34 kPa\n  iat: 98 °F\n  maf: 35 g/s',
    right:
      'engine:\n  displacement: 2.4 L\n# …\nstate: warm idle\nvalues:\n  rpm: 700 rpm\n  map: 34 kPa\n  iat: 98 °F\n  maf: 3.5 g/s',
  },
  'egr-at-idle': {
    severity: 'warning',
    title: 'Exhaust gas flows back at idle',
    say: ({ name, written, command }) =>
      command === undefined
        ? `\`${name}\` is ${written} at idle, where the recirculation valve of a petrol engine is shut (common practice): it stands open, or its sensor says so wrongly. Read \`egr_cmd\`, then close the valve by hand with the engine off and cool, and look at the idle.`
        : `\`${name}\` is ${written} at idle with a command of ${command}: the recirculation valve is not shut, or its sensor says so wrongly. With the engine off and cool, look whether it is shut; then block its passage for a test, and watch idle speed and manifold pressure.`,
    why: 'At idle a petrol engine takes no exhaust gas back: it would shake or stall. What is open without a command is stuck, carboned up, or misread.',
    wrong: 'state: warm idle\nvalues:\n  egr_cmd: 0 %\n  egr_actual: 18 %',
    right: 'state: warm idle\nvalues:\n  egr_cmd: 0 %\n  egr_actual: 0 %',
  },
  'idle-air-shut': {
    severity: 'info',
    title: 'Idle air nearly shut while fuel is added',
    say: ({ written, trim, bank, rpm, metering }) =>
      `The idle valve is at ${written}${rpm === undefined ? '' : ` (${rpm})`} and bank ${bank} has ${trim} of trim: air seems to come in another way${
        metering === 'flow'
          ? ', and not through the meter. Smoke the intake, or clamp its hoses one by one.'
          : '. Where the manifold pressure meters, that alone needs no trim: smoke the intake, then look at the fuel pressure and at the exhaust joints before the sensor.'
      }`,
    why: 'The control closes the idle valve when too much air comes in. That it also adds fuel says that the air was not metered (common practice).',
    wrong: 'state: warm idle\nvalues:\n  iac: 3 %\n  ltft_b1: +17 %',
    right: 'state: warm idle\nvalues:\n  iac: 24 %\n  ltft_b1: +2 %',
  },
  'trim-by-load': {
    severity: 'info',
    title: 'How the trim goes with the load',
    say: ({ bank, alone, shape, sign, low, high, at, to, metering }) =>
      `The trim ${bank === 'both' ? 'of both banks' : `of bank ${bank}`} is ${low} at ${at} and ${high} at ${to}. ${alone ? nextForOneBank(shape, sign) : nextForTrim(shape, sign, metering)}`,
    why: 'What adds or takes the same grams at every load is a large share of little air and a small share of much. The same share everywhere is a meter, a pressure or the fuel itself. A share that grows with the load is a supply that cannot keep up (common practice).',
    wrong:
      'states:\n  idle: warm idle\n  drive: cruise\ntable: |\n  reading  idle  drive  unit\n  ltft_b1  +25   +3     %',
    right:
      'states:\n  idle: warm idle\n  drive: cruise\ntable: |\n  reading  idle  drive  unit\n  ltft_b1  +2    +1     %',
  },
  'banks-apart': {
    severity: 'info',
    title: 'One bank trimmed otherwise than the other',
    say: ({ state, first, second, bank, sign }) =>
      `At ${state} bank 1 has ${first} and bank 2 ${second}. What both banks share is hardly the cause: look at bank ${bank} alone, its ${
        sign === 'adds'
          ? 'intake gasket, injectors, exhaust joints before the sensor and sensor'
          : 'injectors and sensor'
      }.`,
    why: 'Fuel pressure, meter and fuel act on both banks alike. A difference of 10 % or more is in what only one of them has (common practice).',
    wrong: 'state: cruise\nvalues:\n  ltft_b1: +2 %\n  ltft_b2: +16 %',
    right: 'state: cruise\nvalues:\n  ltft_b1: +2 %\n  ltft_b2: +3 %',
  },
  'code-of-other-bank': {
    severity: 'warning',
    title: 'A code of one bank, and the trim of the other',
    say: ({ code, bank, own, other, state, meant }) =>
      `${code} is of bank ${bank}, and at ${state} bank ${bank} has ${own} and bank ${bank === 1 ? 2 : 1} ${other}. Is ${meant} meant, or are the trims in each other’s rows? If both are right, find out which bank has cylinder 1, and whether the front sensors’ plugs are crossed.`,
    why: 'P0171 and P0172 are of bank 1, P0174 and P0175 of bank 2 (SAE J2012); bank 1 is the one with cylinder 1. A bank that is mixed up sends the search, and the parts, to the sound side of the engine.',
    wrong: 'codes:\n  - P0171\n# …\nstate: warm idle\nvalues:\n  ltft_b1: +2 %\n  ltft_b2: +18 %',
    right: 'codes:\n  - P0174\n# …\nstate: warm idle\nvalues:\n  ltft_b1: +2 %\n  ltft_b2: +18 %',
  },
  'banks-together': {
    severity: 'info',
    title: 'Both banks trimmed alike',
    say: ({ state, first, second, sign, metering }) =>
      `At ${state} bank 1 has ${first} and bank 2 ${second}: a cause that both share, ${
        sign === 'adds'
          ? `${metering === 'flow' ? 'air past the meter, the meter' : 'the sensor of the manifold pressure'}, the fuel pressure`
          : `too much fuel pressure, purge, the ${metering === 'flow' ? 'meter' : 'sensor of the manifold pressure'}`
      }. Read the trims at idle, at 2500 rpm and at cruise to tell which.`,
    why: 'Two banks with their own sensors that agree are right about the mixture. What makes it lies before they part (common practice).',
    wrong: 'state: cruise\nvalues:\n  ltft_b1: +18 %\n  ltft_b2: +17 %',
    right: 'state: cruise\nvalues:\n  ltft_b1: +2 %\n  ltft_b2: +3 %',
  },
  'trim-against-gas': {
    severity: 'warning',
    title: 'The trim and the exhaust contradict each other',
    say: ({ trim, lambda, from, sign }) =>
      `The trim is ${trim}, and lambda is ${lambda} by ${from}: fuel is ${
        sign === 'adds' ? 'added to a mixture that is rich' : 'taken from a mixture that is lean'
      }. The sensor that steers sees something else than the gas: look for ${
        sign === 'adds' ? 'a leak in the exhaust before it' : 'a signal held high, or air in the sampled gas'
      }, and test the sensor itself.`,
    why: 'In closed loop the trim adds fuel until the front sensor sees lambda 1. A gas that is rich while fuel is added means that the sensor is wrong, not the mixture.',
    wrong: 'state: warm idle\nvalues:\n  ltft_b1: +16 %\n  analyser_lambda: 0.88',
    right: 'state: warm idle\nvalues:\n  ltft_b1: +16 %\n  analyser_lambda: 1.00',
  },
  'ethanol-unfit': {
    severity: 'warning',
    title: 'Another share of ethanol than the fuel in the header has',
    say: ({ name, written, fuel, meant }) =>
      `\`${name}\` is ${written}, and the header’s fuel is ${fuel}. Lambda, air-fuel ratio and the air for a pulse are computed with the header’s. If ${meant} is in the tank, write \`fuel: ${meant}\`; otherwise shake a sample with water in a measuring glass, and test the sensor: a control that believes it injects for the wrong fuel.`,
    why: 'By mass E85 needs about two fifths more fuel for the same air than E10 does. A control that learned the wrong share after a fill shows it as a trim, on both banks and at every load.',
    wrong: 'engine:\n  fuel: E10\n# …\nvalues:\n  ethanol: 82 %',
    right: 'engine:\n  fuel: E85\n# …\nvalues:\n  ethanol: 82 %',
  },
  'rear-copies-front': {
    severity: 'warning',
    title: 'The rear oxygen sensor copies the front one',
    say: ({ bank, front, rear, frontSwing, rearSwing, ratio, later, correlation }) =>
      `\`${rear}\` swings ${rearSwing} and \`${front}\` ${frontSwing}, a ratio of ${ratio}, and follows it ${later} later (correlation ${correlation}): the catalyst of bank ${bank} passes the swings on. Make sure that it is hot and that no plug is on the wrong sensor, then read \`catalyst(front, rear)\` at a steady 2500 rpm.`,
    why: 'A catalyst that stores oxygen smooths what the front sensor sees (two-sensor method: SAE 900062, SAE 910561). The limits of 0.7 for ratio and correlation are common practice; the maker’s comes first.',
    wrong:
      'channels:\n  front: {column: front, unit: V, signal: o2_b1s1}   # 0.1 to 0.8 V\n  rear: {column: rear, unit: V, signal: o2_b1s2}     # 0.15 to 0.75 V',
    right:
      'channels:\n  front: {column: front, unit: V, signal: o2_b1s1}   # 0.1 to 0.8 V\n  rear: {column: rear, unit: V, signal: o2_b1s2}     # 0.62 to 0.70 V',
  },
};

function nextForFilling(isHigh: boolean, isFull: boolean): string {
  if (isHigh) return 'Check the decimal point and the units, the displacement and the meter.';
  return isFull
    ? 'If the numbers are right, the engine cannot breathe or its meter reads low: the trims tell the two apart, then the pressure in the exhaust.'
    : 'Check the decimal point and the units, the displacement and the meter; then look for air that goes round the meter.';
}

/** What the banks share is out of question. */
function nextForOneBank(shape: 'falls' | 'same' | 'rises', sign: Sign): string {
  if (shape === 'falls')
    return sign === 'adds'
      ? 'It looks like a fixed amount of air that only this bank gets: its intake gasket and injector seals, or a leak in its exhaust before the sensor.'
      : 'It looks like a fixed amount of fuel that only this bank gets: look for an injector of it that drips.';
  if (shape === 'same')
    return sign === 'adds'
      ? 'The same share at every load on one bank alone: its injectors are restricted, or its sensor reads lean. Compare the injectors by a balance test, and the sensor with the gas.'
      : 'The same share at every load on one bank alone: its injectors give too much, its sensor reads rich, or it fills less than the other: compare valve timing and compression.';
  return sign === 'adds'
    ? 'It grows with the air on one bank alone: its injectors do not keep up, or the other bank’s exhaust is blocked and this one takes its air. Compare the pressure in both exhausts.'
    : 'It grows with the air on one bank alone: this one breathes too little. Measure the pressure in its exhaust, then its valve timing.';
}

function nextForTrim(shape: 'falls' | 'same' | 'rises', sign: Sign, metering: Metering): string {
  if (shape === 'same') return sameShare(sign, metering);
  if (shape === 'rises') return growingShare(sign, metering);
  if (sign === 'takes') {
    return 'It looks like a fixed amount of fuel that no injector was told to give: purge, the crankcase, a dripping injector.';
  }
  return metering === 'flow'
    ? 'It looks like a fixed amount of air past the meter: smoke the intake; a leak in the exhaust before the front sensor can look alike.'
    : 'That looks like a fixed amount missing at little air: with metering by manifold pressure look at the sensor’s zero, at a leak in the exhaust before the front sensor and at the injectors, before the intake.';
}

function sameShare(sign: Sign, metering: Metering): string {
  const meter = metering === 'flow' ? 'a meter' : 'a sensor of the manifold pressure';
  const wrong = sign === 'adds' ? 'low, low fuel pressure or another fuel' : 'high or too much fuel pressure';
  const next =
    metering === 'flow'
      ? 'compare the air flow with the volumetric efficiency'
      : 'compare the sensor with the barometer, key on, engine off';
  return `The same share at every load is ${meter} that reads ${wrong}: measure the fuel pressure, then ${next}.`;
}

function growingShare(sign: Sign, metering: Metering): string {
  const first = 'It grows with the air: measure the fuel pressure under load';
  if (metering === 'pressure') {
    return sign === 'adds'
      ? `${first}, then compare the sensor of the manifold pressure with a gauge there.`
      : `${first}, then the pressure in the exhaust: spent gas that cannot leave takes the place of air, and the manifold pressure does not show it.`;
  }
  return sign === 'adds'
    ? `${first}, then compare the air flow with the volumetric efficiency.`
    : `${first}, and look whether the meter reads high.`;
}
