import type { Rows } from '../row.ts';

/** Findings of the rules that set pressures against the barometer. */
export interface RulesPressureFacts {
  readonly 'barometers-apart': {
    readonly name: string;
    readonly written: string;
    readonly other: string;
    readonly otherWritten: string;
    readonly apart: string;
  };
  readonly 'barometer-unfit': {
    readonly name: string;
    readonly written: string;
    readonly about: string;
    readonly from: string;
    /** Well above what the place has: the weather report's figure may have been written down. */
    readonly isHigh: boolean;
  };
  readonly 'sea-level-for-station': {
    readonly name: string;
    readonly written: string;
    readonly about: string;
    readonly where: 'reading' | 'header';
  };
  /** Without a manifold pressure the vacuum alone is deeper than the barometer. */
  readonly 'pressure-and-vacuum': {
    readonly map?: string;
    readonly mapWritten?: string;
    readonly vacuum: string;
    readonly vacuumWritten: string;
    readonly sum?: string;
    readonly barometer: string;
    readonly from: string;
  };
  readonly 'above-barometer': {
    readonly name: string;
    readonly written: string;
    readonly barometer: string;
    readonly from: string;
    readonly meant?: string;
  };
  readonly 'vacuum-for-absolute': {
    readonly name: string;
    readonly written: string;
    readonly because: 'gauge' | 'load';
    readonly absolute: string;
  };
  readonly 'manifold-at-barometer': {
    readonly name: string;
    readonly written: string;
    readonly state: string;
    readonly barometer: string;
    readonly from: string;
  };
}

export const rulesPressureRows: Rows<RulesPressureFacts> = {
  'barometers-apart': {
    severity: 'warning',
    title: 'Two barometers of one visit that differ',
    say: ({ name, written, other, otherWritten, apart }) =>
      `\`${name}\` says ${written} and \`${other}\` ${otherWritten}: ${apart} apart, and both are the barometer. Read a third, or the weather report with the altitude, before you believe either.`,
    why: 'With the key on and the engine still, the manifold holds the air of the place. It and the barometric sensor must agree within what two sensors may be off, about 4.5 kPa (common practice).',
    wrong: 'state: key on engine off\nvalues:\n  baro: 88 kPa\n  map: 101 kPa',
    right: 'state: key on engine off\nvalues:\n  baro: 101 kPa\n  map: 101 kPa',
  },
  'barometer-unfit': {
    severity: 'warning',
    title: 'A barometer that does not fit the place',
    say: ({ name, written, about, from, isHigh }) =>
      `\`${name}\` at ${written} is not the barometer here: ${from} gives about ${about}.${
        isHigh ? ' Is it the weather report’s figure for the sea level?' : ''
      } Check the altitude, the weather report and the sensor.`,
    why: 'The air’s pressure follows from the altitude and the weather (U.S. Standard Atmosphere, 1976). A sensor, a unit or an altitude that is wrong shows up here before it spoils every vacuum and every volumetric efficiency.',
    wrong: 'site:\n  altitude: 40 ft\n  sea level pressure: 29.90 inHg\n# …\nvalues:\n  baro: 88 kPa',
    right: 'site:\n  altitude: 40 ft\n  sea level pressure: 29.90 inHg\n# …\nvalues:\n  baro: 101 kPa',
  },
  'sea-level-for-station': {
    severity: 'warning',
    title: 'The weather report’s figure where the barometer belongs',
    say: ({ name, written, about, where }) =>
      where === 'reading'
        ? `\`${name}\` at ${written} is what the weather report says for the sea level; at this altitude the air has about ${about}. Read the barometer at the car, or leave it out: it is computed from \`site\`.`
        : `A sea-level pressure of ${written} is no weather. It looks like the barometer at this altitude, about ${about}: write it as a reading, \`baro\`, and leave \`sea level pressure\` to the weather report.`,
    why: 'Weather reports (altimeter setting, QNH) are counted down to the sea, so that maps can be drawn. An engine breathes the air that is there, about 1 inHg less for each 1000 ft.',
    wrong: 'site:\n  altitude: 5000 ft\n  sea level pressure: 30.01 inHg\n# …\nvalues:\n  baro: 30.0 inHg',
    right: 'site:\n  altitude: 5000 ft\n  sea level pressure: 30.01 inHg\n# …\nvalues:\n  baro: 24.9 inHg',
  },
  'pressure-and-vacuum': {
    severity: 'warning',
    title: 'Manifold pressure and vacuum that do not add up',
    say: ({ map, mapWritten, vacuum, vacuumWritten, sum, barometer, from }) =>
      map === undefined
        ? `\`${vacuum}\` at ${vacuumWritten} is deeper than the barometer (${barometer}, ${from}): less than nothing would be left. Read the gauge again, and set it to zero against the open air.`
        : `\`${map}\` (${mapWritten}) and \`${vacuum}\` (${vacuumWritten}) add up to ${sum}, and the barometer is ${barometer} (${from}). One of the three is wrong: set gauge and sensor to zero against the open air, key on, engine off.`,
    why: 'Manifold pressure is counted up from nothing, vacuum down from the air outside: together they are the barometer. Sensor, gauge and a wandering idle explain about 6 kPa (1.8 inHg, common practice).',
    wrong:
      'site:\n  altitude: 40 ft\n  sea level pressure: 29.90 inHg\n# …\nstate: warm idle\nvalues:\n  map: 10.2 inHg\n  vacuum: 14.0 inHg',
    right:
      'site:\n  altitude: 40 ft\n  sea level pressure: 29.90 inHg\n# …\nstate: warm idle\nvalues:\n  map: 10.2 inHg\n  vacuum: 19.5 inHg',
  },
  'above-barometer': {
    severity: 'warning',
    title: 'More than the barometer without a compressor',
    say: ({ name, written, barometer, from, meant }) =>
      `\`${name}\` at ${written} is above the barometer (${barometer}, ${from}), and nothing blows into this engine.${
        meant === undefined ? '' : ` Is it ${meant}?`
      } Check the unit and the sensor; a compressor belongs into \`engine: aspiration\`.`,
    why: 'An engine that draws its own air cannot have more pressure in the manifold than there is outside.',
    wrong: 'engine:\n  aspiration: natural\n# …\nstate: wide open throttle\nvalues:\n  map: 99 inHg',
    right: 'engine:\n  aspiration: natural\n# …\nstate: wide open throttle\nvalues:\n  map: 99 kPa',
  },
  'vacuum-for-absolute': {
    severity: 'warning',
    title: 'A vacuum where the pressure belongs',
    say: ({ name, written, because, absolute }) =>
      `\`${name}\` at ${written} looks like the vacuum: ${
        because === 'gauge'
          ? 'the vacuum gauge reads the same'
          : 'it is nearly nothing at wide open throttle, where the manifold is filled'
      }. Write it as \`vacuum\`, or as the pressure, ${absolute}.`,
    why: 'A gauge that starts at 0 in the open air shows a vacuum; a sensor shows the absolute pressure. Mistaken for each other they turn every judgement round.',
    wrong:
      'site:\n  altitude: 40 ft\n  sea level pressure: 29.90 inHg\n# …\nstate: warm idle\nvalues:\n  map: 19.5 inHg\n  vacuum: 19.5 inHg',
    right:
      'site:\n  altitude: 40 ft\n  sea level pressure: 29.90 inHg\n# …\nstate: warm idle\nvalues:\n  map: 10.3 inHg\n  vacuum: 19.5 inHg',
  },
  'manifold-at-barometer': {
    severity: 'warning',
    title: 'No vacuum behind a closed throttle',
    say: ({ name, written, state, barometer, from }) =>
      `\`${name}\` at ${written} is the barometer (${barometer}, ${from}), and at ${state} the throttle is nearly closed. Look at the sensor’s hose and connector, and put a vacuum gauge beside it.`,
    why: 'An engine that idles draws its manifold down to a third of the barometer. A sensor whose hose is off, or that is stuck, goes on showing the barometer. An engine that meters its air with its valves does idle so.',
    wrong: 'state: warm idle\nvalues:\n  map: 100 kPa',
    right: 'state: warm idle\nvalues:\n  map: 34 kPa',
  },
};
