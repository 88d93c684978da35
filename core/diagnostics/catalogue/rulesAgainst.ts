import type { Rows } from '../row.ts';

/** Findings of the rules about readings that physics ties together and that cannot stand beside each other. */
export interface RulesAgainstFacts {
  readonly 'pressures-out-of-order': {
    readonly lower: string;
    readonly lowerWritten: string;
    readonly upper: string;
    readonly upperWritten: string;
    readonly pair: 'running' | 'wet' | 'puffs' | 'dead head';
  };
  readonly 'leakage-against-compression': {
    readonly leakage: string;
    readonly written: string;
    readonly compression: string;
    readonly compressionWritten: string;
  };
  readonly 'gas-balance': {
    readonly gases: string;
    readonly fuel: string;
    /** Share of oxygen, as written, that is there and should not be, or the other way round. */
    readonly off: string;
    readonly sign: 'too much' | 'too little';
  };
  readonly 'sensor-against-gas': {
    readonly name: string;
    readonly written: string;
    readonly gas: string;
    readonly sign: 'leaner' | 'richer';
  };
  readonly 'egr-not-commanded': {
    readonly name: string;
    readonly written: string;
    readonly command: string;
    readonly state: string;
  };
  readonly 'pulse-too-long': {
    readonly name: string;
    readonly written: string;
    readonly rpm: string;
    readonly cycle: string;
  };
  readonly 'state-contradicted': {
    readonly name: string;
    readonly written: string;
    readonly state: string;
    readonly because: string;
    readonly next: string;
  };
  readonly 'counters-contradict': {
    readonly name: string;
    readonly written: string;
    readonly other: string;
    readonly otherWritten: string;
    readonly because: string;
  };
  readonly 'odometer-runs-back': {
    readonly written: string;
    readonly before: string;
    readonly where: string;
  };
  readonly 'charge-colder-than-outside': {
    readonly charge: string;
    readonly written: string;
    readonly outside: string;
    readonly outsideWritten: string;
  };
  readonly 'cranking-without-dip': {
    readonly name: string;
    readonly written: string;
    readonly rested: string;
    readonly restedWritten: string;
    /** The starter's current, where it was measured and what it must at least pull down. */
    readonly current?: { readonly written: string; readonly least: string };
  };
  readonly 'acid-against-volts': {
    readonly name: string;
    readonly written: string;
    readonly acid: string;
    readonly means: string;
  };
}

export const rulesAgainstRows: Rows<RulesAgainstFacts> = {
  'pressures-out-of-order': {
    severity: 'warning',
    title: 'A pressure above one that it cannot pass',
    say: ({ lower, lowerWritten, upper, upperWritten, pair }) =>
      `\`${lower}\` is ${lowerWritten} and \`${upper}\` ${upperWritten}: ${pressureOrder[pair]}`,
    why: 'An idling engine fills its cylinders less than half, so its running compression stays far below what an open throttle gives while cranking. Oil in a cylinder seals and never leaks, a gauge that holds its reading never falls from puff to puff, and a pump against a shut line makes the most that it can.',
    wrong:
      'values:\n  compression: {1: 110 psi, 2: 178 psi, 3: 176 psi, 4: 179 psi}\n  wet_compression: {1: 85 psi}',
    right:
      'values:\n  compression: {1: 110 psi, 2: 178 psi, 3: 176 psi, 4: 179 psi}\n  wet_compression: {1: 165 psi}',
  },
  'leakage-against-compression': {
    severity: 'warning',
    title: 'A cylinder that leaks most of its air and compresses as well as the best',
    say: ({ leakage, written, compression, compressionWritten }) =>
      `\`${leakage}\` is ${written}, and \`${compression}\` with ${compressionWritten} is as good as the best. Was the piston at the top of the compression stroke, and not of the overlap? Turn the engine once round, lock it, and take the leak-down again.`,
    why: 'What lets out most of the air of a tester cannot hold a full compression. On the wrong stroke a valve is open, and any cylinder leaks (common practice).',
    wrong: 'values:\n  compression: {1: 180 psi, 2: 179 psi}\n  leakdown: {1: 8 %, 2: 78 %}',
    right: 'values:\n  compression: {1: 180 psi, 2: 60 psi}\n  leakdown: {1: 8 %, 2: 78 %}',
  },
  'gas-balance': {
    severity: 'warning',
    title: 'Exhaust gases that cannot stand together',
    say: ({ gases, fuel, off, sign }) =>
      `${gases} do not add up: burning ${fuel} in air leaves ${off} ${sign === 'too much' ? 'less' : 'more'} oxygen in them, bound and free. Zero the analyser in clean air, look at its filter and water trap, span it, and check that the right fuel stands in the header.`,
    why: 'Air brings a fixed share of nitrogen with its oxygen, and the fuel’s carbon and hydrogen take that oxygen up. So of CO2, CO and O2 two decide the third, whatever the engine does: a misfire, a rich mixture or air in the pipe change all of them together.',
    wrong: 'engine:\n  fuel: E10\n# …\nvalues:\n  co2: 15.2 %\n  co: 5.1 %\n  o2_gas: 0.4 %\n  hc: 90 ppm',
    right: 'engine:\n  fuel: E10\n# …\nvalues:\n  co2: 12.1 %\n  co: 5.1 %\n  o2_gas: 0.4 %\n  hc: 90 ppm',
  },
  'sensor-against-gas': {
    severity: 'warning',
    title: 'A wide-range sensor and the exhaust gas that say different things',
    say: ({ name, written, gas, sign }) =>
      `\`${name}\` is ${written}, and the gas makes lambda ${gas}. ${
        sign === 'leaner'
          ? 'Air joins behind the sensor (a leak in the pipe, secondary air, the probe not deep enough), or the sensor reads rich.'
          : 'No air can make gas richer: the sensor reads lean, as it does with an exhaust leak or a misfire before it.'
      } Take the gas before the catalyst, shut off secondary air, and look for leaks with smoke.`,
    why: 'Lambda is the same before and behind the catalyst. Sensor and analyser look at one gas: where they differ by a tenth, something joins between them or one of them is wrong.',
    wrong:
      'engine:\n  fuel: E10\n# …\nvalues:\n  lambda_b1: 0.86\n  co2: 12.2 %\n  co: 0.1 %\n  o2_gas: 3.9 %\n  hc: 30 ppm',
    right:
      'engine:\n  fuel: E10\n# …\nvalues:\n  lambda_b1: 1.00\n  co2: 14.9 %\n  co: 0.1 %\n  o2_gas: 0.2 %\n  hc: 30 ppm',
  },
  'egr-not-commanded': {
    severity: 'warning',
    title: 'Recirculation that is open without a command',
    say: ({ name, written, command, state }) =>
      `\`${name}\` is ${written} at ${state} with a command of ${command}: the valve does not shut, or its sensor says so wrongly. With the engine off and cool, look where the valve stands, and read its sensor’s voltage shut and open.`,
    why: 'A valve follows its command within a second. In a state that holds still a quarter open against a command to shut is stuck, or misread.',
    wrong: 'state: cruise\nvalues:\n  egr_cmd: 0 %\n  egr_actual: 45 %',
    right: 'state: cruise\nvalues:\n  egr_cmd: 44 %\n  egr_actual: 45 %',
  },
  'pulse-too-long': {
    severity: 'warning',
    title: 'An injector pulse that does not fit into an engine cycle',
    say: ({ name, written, rpm, cycle }) =>
      `\`${name}\` is ${written}, and at ${rpm} a whole cycle lasts ${cycle}: the injector would never close. Was the speed read at another moment, or is this the sum of several pulses? Read both at one moment, or measure the pulse on a scope.`,
    why: 'Each cylinder takes its fuel once in two turns. A pulse longer than that is no pulse.',
    wrong: 'values:\n  rpm: 6000 rpm\n  pulse_width: 26 ms',
    right: 'values:\n  rpm: 6000 rpm\n  pulse_width: 13 ms',
  },
  'state-contradicted': {
    severity: 'warning',
    title: 'A reading that the engine state contradicts',
    say: ({ name, written, state, because, next }) =>
      `\`${name}\` is ${written} at ${state}, where ${because}. Either the state is another, or the signal is wrong: ${next}`,
    why: 'The state says what the engine did. A reading that cannot be then belongs to another moment, or shows a signal that is missing or stuck.',
    wrong: 'state: warm idle\nvalues:\n  rpm: 0 rpm\n  map: 35 kPa',
    right: 'state: warm idle\nvalues:\n  rpm: 750 rpm\n  map: 35 kPa',
  },
  'counters-contradict': {
    severity: 'warning',
    title: 'Counters of a controller that contradict each other',
    say: ({ name, written, other, otherWritten, because }) =>
      `\`${name}\` is ${written} and \`${other}\` ${otherWritten}: ${because} Are they of one controller and one moment? Ask the controller again.`,
    why: 'Lamp, codes, monitors and distances are counted by one controller and hang together (SAE J1979). Where they do not, they were read from several controllers or at different times, or one was misread.',
    wrong: 'values:\n  mil: on\n  dtc_count: 0',
    right: 'values:\n  mil: on\n  dtc_count: 1',
  },
  'odometer-runs-back': {
    severity: 'warning',
    title: 'An odometer that runs backwards',
    say: ({ written, before, where }) =>
      `The odometer is ${written} here, after the repair, and was ${before} ${where}. Check both figures and their units.`,
    why: 'What was measured after a repair was measured later. An odometer that shows less was misread, or its unit was, or the cells belong to two cars.',
    wrong: 'vehicle:\n  odometer: 128400 km\n# …\nwhen: after\nodometer: 121400 km\nvalues:\n  rpm: 750 rpm',
    right: 'vehicle:\n  odometer: 128400 km\n# …\nwhen: after\nodometer: 128410 km\nvalues:\n  rpm: 750 rpm',
  },
  'charge-colder-than-outside': {
    severity: 'warning',
    title: 'Intake air colder than the air outside',
    say: ({ charge, written, outside, outsideWritten }) =>
      `\`${charge}\` is ${written} and \`${outside}\` ${outsideWritten}: on its way in the air is warmed and never cooled. Compare both with a thermometer, and measure the sensor that is off.`,
    why: 'Intake air comes from outside and takes up heat under the hood. On the road the sensor of the outside air is not warmed by standing, so the intake cannot be far below it.',
    wrong: 'state: cruise\nvalues:\n  iat: -5 °C\n  ambient: 24 °C',
    right: 'state: cruise\nvalues:\n  iat: 31 °C\n  ambient: 24 °C',
  },
  'cranking-without-dip': {
    severity: 'warning',
    title: 'A starter that does not pull the battery down',
    say: ({ name, written, rested, restedWritten, current }) =>
      current === undefined
        ? `\`${name}\` is ${written} while cranking, above the ${restedWritten} of \`${rested}\`: a starter always pulls the battery down. Was a charger or another battery connected, or are the two swapped? Measure both at the same posts.`
        : `\`${name}\` is ${written} while the starter draws ${current.written}, and \`${rested}\` is ${restedWritten}: such a current costs any 12 V battery ${current.least} and more. Check where the leads and the clamp sit, the clamp’s zero, and that nothing else feeds the battery.`,
    why: 'A battery has a resistance inside, 2 mΩ at the least for one of a car (common practice), and a starter draws a hundred amperes and more through it.',
    wrong: 'values:\n  resting_voltage: 12.1 V\n  cranking_voltage: 12.9 V',
    right: 'values:\n  resting_voltage: 12.6 V\n  cranking_voltage: 10.8 V',
  },
  'acid-against-volts': {
    severity: 'warning',
    title: 'A battery’s voltage and its acid that contradict each other',
    say: ({ name, written, acid, means }) =>
      `\`${name}\` is ${written}, and \`${acid}\` means ${means} at rest. Take off a surface charge (lights on for a minute), let it rest, stir no fresh water in, and measure both again.`,
    why: 'At rest each cell has 0.845 V and the specific gravity of its acid (handbooks of lead-acid batteries). A charge that has not settled, water that was just filled up, or a hydrometer that is off make the two part.',
    wrong:
      'state: key off\nvalues:\n  resting_voltage: 12.65 V\n  specific_gravity: {1: 1.120, 2: 1.125, 3: 1.120, 4: 1.120, 5: 1.125, 6: 1.120}',
    right:
      'state: key off\nvalues:\n  resting_voltage: 12.65 V\n  specific_gravity: {1: 1.265, 2: 1.260, 3: 1.265, 4: 1.265, 5: 1.260, 6: 1.265}',
  },
};

/** What of two pressures the upper one does, and what to do when it is the lower. */
const pressureOrder: Readonly<Record<RulesAgainstFacts['pressures-out-of-order']['pair'], string>> = {
  running:
    'at idle the throttle lets in less than half of what cranking with an open throttle does. Did the cylinder fire, or did the gauge hold an older reading? Take its plug’s lead and fuel away, let the gauge down, and measure both again.',
  wet: 'oil seals a cylinder and never lowers it. Are the two figures swapped, or was the battery weaker the second time? Crank as many turns on a charged battery, and measure both again.',
  puffs:
    'a gauge that holds its reading does not fall from the first puff to the fifth. Are the two figures swapped, or does its valve leak?',
  'dead head':
    'against a shut line a pump makes the most that it can. Are the two figures swapped, or was the return open at the second? Measure both on one gauge.',
};
