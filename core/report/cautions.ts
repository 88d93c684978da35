import type { Caution } from './blocks.ts';

/** What a cell does that may call for caution. */
export interface Work {
  /** Names of the signals that it reads. */
  readonly signals: readonly string[];
  /** What is said about the work: title, what was done, where. */
  readonly words: string;
  /** What readings are called: of it counts only what was opened, taken out or off for them. */
  readonly called?: string;
  /** Names of the engine states that it is done in. */
  readonly states: readonly string[];
  /** The functions that a check calls: what they read was taken somehow, even where no signal says how. */
  readonly functions?: readonly string[];
}

interface CautionRow {
  readonly id: string;
  readonly title: string;
  readonly text: string;
  /** Readings that are not taken without the danger. */
  readonly signals?: RegExp;
  /** Words that mean the work itself, wherever they stand. */
  readonly words?: RegExp;
  /** Things that are dangerous to handle: the caution comes when a verb stands near, of handling unless it has its own. */
  readonly things?: RegExp;
  readonly verbs?: RegExp;
  readonly states?: RegExp;
  readonly functions?: RegExp;
  /** The caution that says it too: where that one is called, this one is not. */
  readonly saidBy?: string;
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
    words:
      /\b(at|warm|hot|fast) idle\b|\bidling\b|\b\d{3,4} rpm\b|\bengine running\b|\bwarm-up\b|\bcold start\b/,
  },
  {
    id: 'road-test',
    title: 'Road test',
    text: 'One person drives, another reads and writes. Secure every lead and instrument, and keep them clear of pedals and wheels. Full load belongs on a dynamometer or a closed course.',
    states: /\b(cruise|heavy load|wide open throttle|road test)\b/,
    words: /\b(drove|test drive|road test|one drive)\b|\bdriven (for|again|under|with|until)\b/,
  },
  {
    id: 'cranking',
    title: 'Compression, a plug out',
    text: 'Out of gear or in park, brake set. Stop fuel and spark in the way that the maker gives, for all cylinders when cranking: fuel mist from an open plug hole burns at a spark. Keep clear of belts, of the plug holes and of what turns, and give the starter time to cool.',
    signals: /(^|_)compression$|^(first|fifth)_puff$|^cylinder_pressure$/,
    words: /\b(compression test|wet test|cranking compression)\b/,
    functions: /^(compression_pattern|puff_pattern|wet_pattern|valve_events|crank_angle)$/,
  },
  {
    id: 'starter',
    title: 'Cranking',
    text: 'Out of gear or in park, brake set: the car may jump and the engine may start. Keep hands, leads, sleeves and hair clear of belts and fans, and give the starter time to cool. Where it is not to start, stop fuel and spark in the way that the maker gives.',
    states: /\bcranking\b/,
    functions: /^(relative_compression|hump_balance|cranking_speed|cranking_pattern|start_voltage)$/,
    saidBy: 'cranking',
  },
  {
    id: 'leak-down',
    title: 'Air pressure in a cylinder',
    text: 'Air pressure can turn the engine with force. Take tools off the crankshaft, stand clear, and let the pressure go before the hose comes off. Take the pressure cap off a cold engine only.',
    signals: /^(leakdown|leak_down)/,
    words: /\bleak-?down\b/,
    functions: /^leakage_pattern$/,
  },
  {
    id: 'fuel-pressure',
    title: 'Fuel under pressure',
    text: 'Let the pressure off before a line is opened, wrap the joint, wear eye protection, and catch what runs out. No flame, no sparks, no hot exhaust below; air moving, an extinguisher in reach. Look for leaks before and after the engine runs.',
    signals:
      /^(fuel_pressure|residual_pressure|dead_head_pressure|low_side_pressure|fuel_volume|injector_drop|gas_(rail|tank)_pressure)/,
    things:
      /\b(fuel (line|hose|rail|filter)s?|injectors?|the rail|pressure regulator|(?<!(vacuum|water|coolant|oil|steering|air|hand)[ -])pump|(?<!(expansion|header|coolant|vacuum|surge)[ -])tank)\b/g,
  },
  {
    id: 'high-pressure-fuel',
    title: 'Fuel at injection pressure',
    text: 'A jet of fuel goes through gloves and skin, and such a wound is an emergency even if it looks small: to hospital at once. Never loosen a line of a running engine or feel for a leak by hand; wait after switching off for as long as the maker says.',
    signals: /^(rail_pressure|return_flow|injection_oil_pressure)/,
    things:
      /\b(common rail|high[- ]pressure (fuel|pump|line)s?|direct injection|diesel injectors?|return flow|leak-?off)\b/g,
  },
  {
    id: 'exhaust',
    title: 'Hot exhaust and exhaust gas',
    text: 'Exhaust parts burn long after the engine is off, and a sensor’s thread comes loose hot or not at all. Draw the gas off: what a gas analyser or a back-pressure gauge is connected to leaks as well.',
    signals:
      /^(back_pressure\w*|co|co2|hc|nox|o2_gas|opacity|analyser_lambda|egt|egrt|nox_in|nox_out)$|^(cat_temp|dpf_|turbine_|scr_in)/,
    words: /\b(forced|started|ran) (a )?regeneration\b/,
    functions:
      /^(gas_pattern|lambda_from_gas|lambda_from_composition|exhaust_air|unburnt_fuel|back_pressure_pattern)$/,
    things:
      /\b(catalysts?|catalytic converter|exhaust(?! (valve|lobe|cam|lift|stroke|side|gas))|muffler|tail ?pipe|particulate filter|(front|rear|oxygen) sensors?)\b/g,
  },
  {
    id: 'ignition',
    title: 'Ignition voltage',
    text: 'Tens of thousands of volts: never pull a lead or a coil of a running engine by hand, never let a coil fire into the open, and use an adjustable, grounded tester. Keep away with a pacemaker.',
    signals: /^(firing_|burn_|available_voltage|dwell|primary_|secondary_)/,
    words: /\bspark tester\b/,
    functions: /^dwell_(angle|time)$/,
    things: /\b(coils?|spark plugs?|plug (lead|wire)s?|ignition leads?)\b/g,
  },
  {
    id: 'driven-injectors',
    title: 'Injectors driven from a capacitor',
    text: 'Direct and piezo injectors are driven at 60 V and far more, stored in the module after it is switched off. Do not open or probe their circuit bare-handed, and use probes rated for it.',
    signals: /^injector_current$/,
    things: /\b(piezo\w*|injector (current|voltage|driver)s?)\b/g,
  },
  {
    id: 'high-voltage',
    title: 'High-voltage vehicle',
    text: 'Deadly. Only people trained and authorised for it work on it: switch off, disconnect and secure, wait, prove that no voltage is left with a proven tester, and wear rated gloves. Orange means stay away.',
    signals:
      /^(pack_(voltage|current)|block_(volts|spread|resistance)|isolation_|contactor_|interlock|precharge_|capacitor_voltage|winding_resistance|converter_|inverter_)/,
    words:
      /\b(hybrid|traction battery|high[- ]voltage (battery|cable|system|circuit|vehicle)|orange cables?)\b/,
  },
  {
    id: 'battery',
    title: 'Battery and heavy current',
    text: 'A battery gives off gas that explodes and acid that blinds: eye protection, no sparks, rings and watch off. Ground lead off first and on last. A load test or a cranking test heats cables and clamps.',
    signals:
      /^(battery_(current|conductance|resistance|charge)|resting_voltage|specific_gravity|cold_cranking|cranking_voltage|charging_|alternator_|starter_current|parasitic_draw|drops$|drop_current|glow_)/,
    words: /\b(battery load test|load test of the battery|parasitic|(from|across) the battery)\b/,
    functions:
      /^(relative_compression|hump_balance|start_voltage|internal_resistance|load_test_limit|charging_\w+|ripple_pattern|cranking_pattern|draw_pattern)$/,
    things: /\b(battery|jump(er)? (lead|cable)s?|starter|alternator|(ground )?strap|ground cable)\b/g,
  },
  {
    id: 'coolant',
    title: 'Hot coolant under pressure',
    text: 'Never open the system hot: it boils over the moment the pressure goes. Let it cool, open the cap in steps under a rag, and keep a pressure tester below the cap’s own rating.',
    signals: /^(cooling_|cap_pressure|block_test|coolant_(hc|freeze))/,
    words: /\b(block test|cooling[- ]system pressure)\b/,
    things:
      /\b(radiator|coolant(?! (temperature )?sensor)|thermostat|pressure cap|(upper|lower|heater) hose)\b/g,
  },
  {
    id: 'smoke',
    title: 'Smoke into a system',
    text: 'Low pressure only, never more than the maker allows for that system, and inert gas where fuel vapour can be. Not near a hot exhaust, and not with the engine running.',
    signals: /^(smoke_|tank_pressure|tank_decay|leak_size)/,
    words: /\bsmoke(d)? (into|through|test|machine|in)\b|\bfed smoke\b/,
  },
  {
    id: 'flammable-gas',
    title: 'Gas or spray to find a leak',
    text: 'Propane and cleaner find a leak and a spark alike. A metered hose, small amounts, an extinguisher in reach, never near a hot exhaust or a firing lead.',
    words: /\b(propane|(carb|carburett?or|brake|throttle)[- ]cleaner|starting fluid|sprayed)\b/,
  },
  {
    id: 'oil',
    title: 'Hot oil',
    text: 'Oil from a running engine burns and sprays when a sender or a plug comes out. Fit the gauge with the engine off, look for leaks before the engine warms up, and wear eye protection.',
    signals: /^(oil_pressure|crankcase_|transmission_pressure)/,
    words: /\boil (change|pressure)\b/,
    things:
      /\b(oil (sender|switch|filter|drain|pan|sump|gauge)|oil pressure (sender|switch|sensor)|oil and filter|engine oil|drain plug)\b/g,
  },
  {
    id: 'lifting',
    title: 'Under a vehicle',
    text: 'Lift at the maker’s points, set it on stands or lock the lift before anyone is beneath it, and never trust a jack.',
    verbs: /\b(lift(ed|ing)?|rais(e|ed|ing)|jack(ed|ing)?|hoist(ed|ing)?)\b/,
    things: /\b(car|van|pickup|truck|bus|vehicle|axle|wheels?)\b/g,
    words:
      /\b(from below|on (jack |axle |safety )?stands|on (a|the) (lift|hoist)|under(neath)? (the|a) (car|van|pickup|truck|vehicle|body|bus))\b/,
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
    words: /\bwiggl\w+\b/,
    verbs: /\b(swap(ped|ping)?|exchang(e|ed|ing))\b/,
    things: /\b(coils?|sensors?|injectors?|relays?|modules?|connectors?|meters?|valves?)\b/g,
  },
];

/** A caution for a step of a case. */
export interface Called extends Caution {
  readonly id: string;
  /** True where the step's own work brings it, not only the state that the engine is in. */
  readonly own: boolean;
}

/** All cautions that this work brings, in the table's order. */
export function cautionsOf(work: Work): readonly Called[] {
  const sentences = sentencesOf(work.words);
  const names = sentencesOf(work.called ?? '');
  const called = cautionRows.flatMap((row): (Called & { readonly saidBy: string | undefined })[] => {
    const { id, title, text, signals, states, functions, saidBy } = row;
    const own =
      (signals !== undefined && work.signals.some((name) => signals.test(name))) ||
      sentences.some((each) => row.words?.test(each) === true || handles(each, row)) ||
      names.some((each) => handles(each, row));
    const comes =
      own ||
      (states !== undefined && work.states.some((state) => states.test(state))) ||
      (functions !== undefined && work.functions?.some((name) => functions.test(name)) === true);
    return comes ? [{ kind: 'caution', id, own, title, text: `${text} ${deference}`, saidBy }] : [];
  });
  return called
    .filter(({ saidBy }) => !called.some(({ id }) => id === saidBy))
    .map(({ saidBy: _, ...caution }) => caution);
}

/** Of a step's words, so much is read; more is no step that a person took. */
const longest = 4000;

/** Sentences in small letters, without what was not done and without "engine off", which handles no engine. */
function sentencesOf(words: string): readonly string[] {
  return words
    .slice(0, longest)
    .toLowerCase()
    .replace(/\b(engine|key|ignition) off\b/g, '')
    .replace(/\b(not|never|without) \w+/g, '')
    .split(/[.;!?:](?=\s|$)/);
}

/** What hands do to a thing; "out" and "off" say that they have. Nouns such as *lift*, *change* and *clamp* are none. */
const handling =
  /\b(open(ed|ing)?|disconnect(ed|ing)?|connect(ed|ing)?|loosen(ed|ing)?|unscrew(ed|ing)?|undone|remov(e|ed|ing)|replac(e|ed|ing)|repaired|chang(ed|ing)|swap(ped|ping)?|pull(ed|ing)?|lift(ed|ing)|clamp(ed|ing)|drain(ed|ing)?|fill(ed|ing)|bled|flush(ed|ing)?|clean(ed|ing)|fitted|fed|jumped|charg(ed|ing)|crank(ed|ing)|drill(ed|ing)?|cut|weld(ed|ing)?|topped|out|off|apart)\b/;

/** So near to each other stand a verb and its thing, in UTF-16 units. */
const near = 48;

function handles(sentence: string, { things, verbs = handling }: CautionRow): boolean {
  if (things === undefined) return false;
  for (const { 0: thing, index } of sentence.matchAll(things)) {
    const end = index + thing.length;
    if (verbs.test(sentence.slice(Math.max(0, index - near), index))) return true;
    if (verbs.test(sentence.slice(end, end + near))) return true;
  }
  return false;
}
