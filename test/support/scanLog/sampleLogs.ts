import { type RoadLeg, roadTest, type ScanLogRow, trimForHole, trimForRail } from './scanLog.ts';

/** kPa of one inHg (conventional, 0 °C) and of one psi. */
const inHg = 3.386389;
const psi = 6.894757;

/** Van 14 at the coast: a hole of one gram a second behind the meter, or none. Loads are those of the case's tables. */
function van14(hole: number, fixed: boolean): readonly RoadLeg[] {
  const barometer = 29.8 * inHg;
  const leg = (
    seconds: number,
    rpm: number,
    map: number,
    maf: number,
    speed: number,
    learned: number,
    more: Partial<RoadLeg> = {},
  ): RoadLeg => {
    const kPa = map * inHg;
    return {
      seconds,
      rpm,
      map: kPa,
      maf,
      speed,
      learned,
      needed: trimForHole(hole, kPa, barometer, maf) + 0.005,
      ...more,
    };
  };
  const idle = fixed ? leg(45, 700, 10.0, 3.5, 0, 0.02) : leg(45, 780, 13.0, 4.4, 0, 0.17, { hunts: 80 });
  const fast = fixed ? leg(30, 2500, 9.2, 12.0, 0, 0.02) : leg(30, 2500, 9.7, 12.0, 0, 0.06);
  const learned = fixed ? 0.01 : 0.03;
  const cruise = leg(75, 2240, 17.1, 22.4, 52, learned);
  const hill = leg(40, 2700, 24.0, 40.5, 48, learned);
  const overrun = leg(15, 1900, 7.0, 6.4, 40, learned, { open: true });
  return [idle, fast, cruise, hill, overrun, cruise, overrun, { ...idle, seconds: 40 }];
}

/** Pickup 5: a pump that runs short, its rail pressures those of the case at each load; 50 psi are due. */
function pickup5(): readonly RoadLeg[] {
  const barometer = 101;
  const leg = (
    seconds: number,
    rpm: number,
    map: number,
    maf: number,
    speed: number,
    learned: number,
    rail: number,
    more: Partial<RoadLeg> = {},
  ): RoadLeg => ({
    ...{ seconds, rpm, map, maf, speed, learned },
    needed: trimForRail(rail * psi, 50 * psi, map, barometer),
    ...more,
  });
  const idle = leg(40, 680, 34, 4.2, 0, 0, 49);
  const fast = leg(25, 2500, 31, 13.7, 0, 0.03, 46);
  const cruise = leg(70, 2100, 55, 22.9, 50, 0.07, 41);
  const climb = leg(45, 2600, 80, 44.6, 45, 0.1, 37);
  const full = leg(8, 3500, 100, 75.9, 55, 0.07, 32, { open: true });
  const overrun = leg(15, 1900, 24, 7.6, 42, 0.07, 47, { open: true });
  return [idle, fast, cruise, climb, full, overrun, cruise, { ...idle, seconds: 35 }];
}

const headings = [
  'Time (s)',
  'Engine speed (rpm)',
  'MAP (kPa)',
  'MAF (g/s)',
  'Vehicle speed (mph)',
  'Coolant (°F)',
  'STFT B1 (%)',
  'LTFT B1 (%)',
  'Fuel system status',
];

function commaText(rows: readonly ScanLogRow[]): string {
  const lines = rows.map((each) => fieldsOf(each).join(','));
  return [
    '# Synthetic road test, made by test/support/scanLog from a seed. No vehicle was measured.',
    headings.join(','),
    ...lines,
    '',
  ].join('\n');
}

/** As a machine writes it that is set to decimal commas: units in a row of their own. */
function semicolonText(rows: readonly ScanLogRow[]): string {
  const lines = rows.map((each) => fieldsOf(each).join(';').replaceAll('.', ','));
  const split = headings.map((each) => /^(.*?)(?: \((.*)\))?$/.exec(each) ?? []);
  return [
    '# Synthetic road test, made by test/support/scanLog from a seed. No vehicle was measured.',
    split.map((each) => each[1] ?? '').join(';'),
    split.map((each) => each[2] ?? '').join(';'),
    ...lines,
    '',
  ].join('\r\n');
}

function fieldsOf({
  time,
  rpm,
  map,
  maf,
  speed,
  coolant,
  stft,
  ltft,
  status,
}: ScanLogRow): readonly string[] {
  return [
    String(time),
    rpm.toFixed(2),
    map.toFixed(0),
    maf.toFixed(2),
    speed.toFixed(0),
    coolant.toFixed(0),
    (100 * stft).toFixed(1),
    (100 * ltft).toFixed(1),
    String(status),
  ];
}

/** The scan logs of the samples, by their names under `samples/captures`. */
export const sampleLogs: ReadonlyMap<string, () => string> = new Map([
  ['van-14-before.csv', () => commaText(roadTest(van14(1.05, false), 195, 1401))],
  ['van-14-after.csv', () => commaText(roadTest(van14(0, true), 195, 1402))],
  ['pickup-5-climb.csv', () => semicolonText(roadTest(pickup5(), 198, 501))],
]);
