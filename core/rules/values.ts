import type { Measured } from './measured.ts';

/**
 * The numbers of a moment that rules compare, a field each: they are read as fields, with no name to look up.
 * A rule that compares another signal adds it here.
 */
export function noValues(none?: Measured) {
  return {
    afr_b1: none,
    afr_b2: none,
    air_charge: none,
    ambient: none,
    analyser_lambda: none,
    baro: none,
    battery: none,
    boost: none,
    charging_voltage: none,
    co2: none,
    co: none,
    compression: none,
    cranking_voltage: none,
    dead_head_pressure: none,
    distance_since_clear: none,
    distance_with_mil: none,
    dtc_count: none,
    ect: none,
    egr_actual: none,
    egr_cmd: none,
    egr_error: none,
    fifth_puff: none,
    first_puff: none,
    ethanol: none,
    fuel_pressure: none,
    fuel_rate: none,
    gear_ratio: none,
    hc: none,
    iac: none,
    iat: none,
    lambda_b1: none,
    lambda_b2: none,
    leakdown: none,
    load: none,
    load_abs: none,
    ltft_b1: none,
    ltft_b2: none,
    maf: none,
    map: none,
    misfires_total: none,
    monitors_left: none,
    o2_gas: none,
    oil_pressure: none,
    oss: none,
    pulse_width: none,
    resting_voltage: none,
    rpm: none,
    running_compression: none,
    specific_gravity: none,
    starter_current: none,
    stft_b1: none,
    stft_b2: none,
    tcc_slip: none,
    time_since_clear: none,
    time_with_mil: none,
    tp: none,
    tss: none,
    vacuum: none,
    vss: none,
    warm_ups_since_clear: none,
    wet_compression: none,
  };
}

export type Values = Readonly<ReturnType<typeof noValues>>;

/** A signal that rules compare. */
export type RuledSignal = keyof Values;

export const isRuled = (name: string): name is RuledSignal => Object.hasOwn(none, name);

const none = noValues();
