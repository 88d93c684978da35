import type { Caution } from './blocks.ts';

/** What a cell does that may call for caution. */
export interface Work {
  /** Names of the signals that it reads. */
  readonly signals: readonly string[];
  /** What is said about the work: title, what was done, where. */
  readonly words: string;
  /** Names of the engine states that it is done in. */
  readonly states: readonly string[];
}

interface CautionRow {
  readonly id: string;
  readonly title: string;
  readonly text: string;
  readonly signals?: RegExp;
  readonly words?: RegExp;
  readonly states?: RegExp;
}

/** Said with every caution: a page is not the maker's instructions and not a licence. */
export const deference = 'The maker’s service information, local rules and licensed practice come first.';

/**
 * The usual cautions of the trade, by the readings, the work and the states that bring them.
 * All of it is common practice, kept short; none of it replaces the maker's own instructions.
 */
export const cautionRows: readonly CautionRow[] = [
  {
    id: 'running-engine',
    title: 'Running engine',
    text: 'Draw the exhaust off or work in the open: carbon monoxide kills without a smell. Set the brake, chock the wheels, and keep hands, leads, sleeves and hair away from belts, fans and hot parts; an electric fan may start by itself.',
    states:
      /\b(idle|no load|rpm|cold start|snap throttle|tip-in|deceleration|running compression|hot soak)\b/,
  },
  {
    id: 'road-test',
    title: 'Road test',
    text: 'One person drives, another reads and writes. Secure every lead and instrument, and keep them clear of pedals and wheels. Full load belongs on a dynamometer or a closed course.',
    states: /\b(cruise|heavy load|wide open throttle|road test)\b/,
  },
  {
    id: 'cranking',
    title: 'Compression, a plug out',
    text: 'Stop fuel and spark in the way that the maker gives, for all cylinders when cranking: fuel mist from an open plug hole burns at a spark. Keep clear of belts, of the plug holes and of what turns, and give the starter time to cool.',
    signals: /(^|_)compression$|^(first|fifth)_puff$|^cylinder_pressure$/,
    words: /\b(compression test|wet test|cranking compression)\b/,
  },
  {
    id: 'leak-down',
    title: 'Air pressure in a cylinder',
    text: 'Air pressure can turn the engine with force. Take tools off the crankshaft, stand clear, and let the pressure go before the hose comes off. Take the pressure cap off a cold engine only.',
    signals: /^(leakdown|leak_down)/,
    words: /\bleak-?down\b/,
  },
  {
    id: 'fuel-pressure',
    title: 'Fuel under pressure',
    text: 'Let the pressure off before a line is opened, wrap the joint, wear eye protection, and catch what runs out. No flame, no sparks, no hot exhaust below; air moving, an extinguisher in reach. Look for leaks before and after the engine runs.',
    signals:
      /^(fuel_pressure|residual_pressure|dead_head_pressure|low_side_pressure|fuel_volume|injector_drop|gas_(rail|tank)_pressure)/,
    words: /\b(fuel (line|hose|rail|filter|pump|pressure|regulator)|injectors? (out|off|removed))\b/,
  },
  {
    id: 'high-pressure-fuel',
    title: 'Fuel at injection pressure',
    text: 'A jet of fuel goes through gloves and skin, and such a wound is an emergency even if it looks small: to hospital at once. Never loosen a line of a running engine or feel for a leak by hand; wait after switching off for as long as the maker says.',
    signals: /^(rail_pressure|return_flow|injection_oil_pressure)/,
    words:
      /\b(common rail|high[- ]pressure (fuel|pump|line)|direct injection|diesel injector|return flow|leak-?off)\b/,
  },
  {
    id: 'exhaust',
    title: 'Hot exhaust and exhaust gas',
    text: 'Exhaust parts burn long after the engine is off, and a sensor’s thread comes loose hot or not at all. Draw the gas off: what a gas analyser or a back-pressure gauge is connected to leaks as well.',
    signals:
      /^(back_pressure|co|co2|hc|nox|o2_gas|opacity|analyser_lambda|egt|egrt|nox_in|nox_out)$|^(cat_temp|dpf_|turbine_|scr_in)/,
    words: /\b(catalyst|exhaust|back pressure|particulate filter|regeneration)\b/,
  },
  {
    id: 'ignition',
    title: 'Ignition voltage',
    text: 'Tens of thousands of volts: never pull a lead or a coil of a running engine by hand, never let a coil fire into the open, and use an adjustable, grounded tester. Keep away with a pacemaker.',
    signals: /^(firing_|burn_|available_voltage|dwell|primary_|secondary_)/,
    words: /\b(spark tester|firing voltage|coils?|spark plugs? (out|off|lead))\b/,
  },
  {
    id: 'driven-injectors',
    title: 'Injectors driven from a capacitor',
    text: 'Direct and piezo injectors are driven at 60 V and far more, stored in the module after it is switched off. Do not open or probe their circuit bare-handed, and use probes rated for it.',
    signals: /^injector_current$/,
    words: /\b(piezo|injector (current|voltage|driver))\b/,
  },
  {
    id: 'high-voltage',
    title: 'High-voltage vehicle',
    text: 'Deadly. Only people trained and authorised for it work on it: switch off, disconnect and secure, wait, prove that no voltage is left with a proven tester, and wear rated gloves. Orange means stay away.',
    signals:
      /^(pack_(voltage|current)|block_(volts|spread|resistance)|isolation_|contactor_|interlock|precharge_|capacitor_voltage|winding_resistance|converter_|inverter_)/,
    words: /\b(hybrid|traction battery|high[- ]voltage|orange cable)\b/,
  },
  {
    id: 'battery',
    title: 'Battery and heavy current',
    text: 'A battery gives off gas that explodes and acid that blinds: eye protection, no sparks, rings and watch off. Ground lead off first and on last. A load test or a cranking test heats cables and clamps.',
    signals:
      /^(battery|resting_voltage|specific_gravity|cold_cranking|cranking_voltage|charging_|alternator_|starter_current|parasitic_draw|drops$|drop_current|glow_)/,
    words: /\b(battery|jump(er)? lead|starter (cable|stud)|load test|parasitic)\b/,
  },
  {
    id: 'coolant',
    title: 'Hot coolant under pressure',
    text: 'Never open the system hot: it boils over the moment the pressure goes. Let it cool, open the cap in steps under a rag, and keep a pressure tester below the cap’s own rating.',
    signals: /^(cooling_|cap_pressure|block_test|coolant_(hc|freeze))/,
    words: /\b(radiator|coolant|thermostat|block test|cooling system)\b/,
  },
  {
    id: 'smoke',
    title: 'Smoke into a system',
    text: 'Low pressure only, never more than the maker allows for that system, and inert gas where fuel vapour can be. Not near a hot exhaust, and not with the engine running.',
    signals: /^(smoke_|tank_pressure|tank_decay|leak_size)/,
    words: /\bsmoke(d)? (into|through|test|machine|in)\b|\bsmoke\b.*\b(hose|port|tank|intake)\b/,
  },
  {
    id: 'flammable-gas',
    title: 'Gas or spray to find a leak',
    text: 'Propane and cleaner find a leak and a spark alike. A metered hose, small amounts, an extinguisher in reach, never near a hot exhaust or a firing lead.',
    words: /\b(propane|carb(urettor)? cleaner|brake cleaner|spray(ed)?|enrichment)\b/,
  },
  {
    id: 'oil',
    title: 'Hot oil',
    text: 'Oil from a running engine burns and sprays when a sender or a plug comes out. Fit the gauge with the engine off, look for leaks before the engine warms up, and wear eye protection.',
    signals: /^(oil_pressure|crankcase_|transmission_pressure)/,
    words: /\b(oil (pressure|sender|change|drain))\b/,
  },
  {
    id: 'lifting',
    title: 'Under a vehicle',
    text: 'Lift at the maker’s points, set it on stands or lock the lift before anyone is beneath it, and never trust a jack.',
    words: /\b(lift(ed)?|jack(ed)?|stands?|from below|under the (car|van|vehicle|body))\b/,
  },
  {
    id: 'refrigerant',
    title: 'Refrigerant',
    text: 'It freezes skin and eyes, some kinds burn, and letting it out is against the law in most places. Opening the circuit takes recovery equipment and the licence for it.',
    signals: /^(refrigerant_|ac_(high|low)_pressure)/,
    words: /\b(refrigerant|air[- ]conditioning (line|hose|circuit))\b/,
  },
  {
    id: 'rotating-swap',
    title: 'Wiggling and swapping live parts',
    text: 'Ignition off before a connector comes apart, unless the maker asks for it live; then keep clear of everything that turns, fires or is hot. A stopped engine may start again when a circuit is wiggled.',
    words: /\b(wiggl\w+|swapp?\w*)\b/,
  },
];

/** The cautions that this work brings, in the table's order, without those already given. */
export function cautionsFor(
  work: Work,
  given: ReadonlySet<string>,
): readonly (Caution & { readonly id: string })[] {
  const words = work.words.toLowerCase();
  return cautionRows
    .filter((row) => !given.has(row.id))
    .filter(
      ({ signals, words: said, states }) =>
        (signals !== undefined && work.signals.some((name) => signals.test(name))) ||
        (said?.test(words) ?? false) ||
        (states !== undefined && work.states.some((state) => states.test(state))),
    )
    .map(({ id, title, text }) => ({ kind: 'caution', id, title, text: `${text} ${deference}` }));
}
