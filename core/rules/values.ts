import type { Measured } from './measured.ts';

/**
 * The numbers of a moment that rules compare, a field each: they are read as fields, with no name to look up.
 * A rule that compares another signal adds it here.
 */
export function noValues(none?: Measured) {
  return {
    afr_b1: none,
    afr_b2: none,
    analyser_lambda: none,
    baro: none,
    battery: none,
    charging_voltage: none,
    co: none,
    co2: none,
    cranking_voltage: none,
    ect: none,
    egr_actual: none,
    egr_cmd: none,
    egr_error: none,
    hc: none,
    iac: none,
    iat: none,
    lambda_b1: none,
    lambda_b2: none,
    load: none,
    load_abs: none,
    ltft_b1: none,
    ltft_b2: none,
    maf: none,
    map: none,
    o2_gas: none,
    rpm: none,
    stft_b1: none,
    stft_b2: none,
    tp: none,
    vacuum: none,
  };
}

export type Values = Readonly<ReturnType<typeof noValues>>;

/** A signal that rules compare. */
export type RuledSignal = keyof Values;

export const isRuled = (name: string): name is RuledSignal => Object.hasOwn(none, name);

const none = noValues();
