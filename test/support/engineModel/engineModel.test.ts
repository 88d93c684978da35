import { describe, expect, it } from 'vitest';
import { checkCase } from '../../../core/rules/checkCase.ts';
import { airState, fillingOf } from './airPath.ts';
import { soundCar, withFault } from './carFaults.ts';
import { chanceOf } from './chance.ts';
import { drawEngine } from './engine.ts';
import { burnt } from './exhaustGas.ts';
import { faults } from './faults.ts';
import { closedLoop } from './fuelPath.ts';
import { generate } from './generate.ts';
import { drawHistory } from './history.ts';
import * as shown from './instruments.ts';
import { oxygenTrace } from './oxygenTrace.ts';
import {
  compressionGauge,
  density,
  orificeFlow,
  pressureAt,
  residualShare,
  speedDensityFlow,
  stoichiometric,
} from './physics.ts';
import { buildingSeeds, judgingSeeds } from './seeds.ts';

describe('the relations that the model stands on', () => {
  it('has the barometer of the standard atmosphere', () => {
    // ASHRAE Handbook of Fundamentals 2017, chapter 1, table 1, Pa ± 1 in its own rounding; the short form is within 3 Pa.
    expect(pressureAt(-500)).toBeCloseTo(107478, -1);
    expect(pressureAt(500)).toBeCloseTo(95461, -1);
    expect(pressureAt(1000)).toBeCloseTo(89875, -1);
    expect(pressureAt(4000) / 61640).toBeCloseTo(1, 3);
  });

  it('carries the weather down to the station', () => {
    // The weather service's form: 29.92 inHg at 1000 m is 26.5370 inHg (computed from the formula).
    expect(pressureAt(1000, 29.92)).toBeCloseTo(26.537, 2);
    expect(pressureAt(1609.344, 30.1)).toBeCloseTo(24.7806, 1);
  });

  it('weighs the air as an ideal gas', () => {
    // U.S. Standard Atmosphere 1976: 1.225 kg/m³ at 15 °C; 1.184 at 25 °C is what SAE J1979 refers absolute load to.
    expect(density(101325, 288.15)).toBeCloseTo(1.225, 4);
    expect(density(101325, 298.15)).toBeCloseTo(1.184, 3);
  });

  // Dry per cent of CH1.87 with a water-gas constant of 3.7, read in a script of MIT course 2.61.
  it.each([
    [0.8, 10.217, 7.68, 0],
    [0.9, 12.801, 3.724, 0],
    [0.95, 14.066, 1.828, 0],
    [1, 15.298, 0, 0],
    [1.05, 14.52, 0, 1.065],
    [1.1, 13.817, 0, 2.028],
    [1.2, 12.598, 0, 3.698],
  ])('burns at lambda %d to %d %% CO2, %d %% CO and %d %% O2', (lambda, co2, co, o2) => {
    const gas = burnt('E0', lambda);
    expect(gas.co2).toBeCloseTo(co2, 2);
    expect(gas.co).toBeCloseTo(co, 2);
    expect(gas.o2).toBeCloseTo(o2, 2);
  });

  it('draws in what speed-density says', () => {
    // Heywood, equation 2.27, computed: 35 kPa, 40 °C, 2.0 L, 800 rpm, 0.75; 95 kPa, 30 °C, 2.4 L, 3000 rpm, 0.88.
    expect(1000 * speedDensityFlow(0.75, 35000, 313.15, 2e-3, 800)).toBeCloseTo(3.8937, 3);
    expect(1000 * speedDensityFlow(0.88, 95000, 303.15, 2.4e-3, 3000)).toBeCloseTo(57.642, 2);
  });

  it('leaves room in the cylinder as the ideal cycle does', () => {
    // 1 at equal pressures, whatever the compression ratio; less the further the manifold is below the exhaust.
    expect(residualShare(10, 100, 100)).toBeCloseTo(1, 12);
    expect(residualShare(8, 50, 50)).toBeCloseTo(1, 12);
    expect(residualShare(10, 100, 30)).toBeLessThan(residualShare(10, 100, 60));
    expect(residualShare(10, 100, 30)).toBeGreaterThan(0.75);
  });

  it('chokes an opening below the critical ratio', () => {
    // 0.0404·A·p/√T for air (the choked-flow constant, value from memory).
    expect(orificeFlow(1e-4, 101325, 40000, 293.15)).toBeCloseTo(
      (0.0404 * 1e-4 * 101325) / Math.sqrt(293.15),
      4,
    );
    expect(orificeFlow(1e-4, 101325, 40000, 293.15)).toBe(orificeFlow(1e-4, 101325, 20000, 293.15));
    expect(orificeFlow(1e-4, 101325, 101325, 293.15)).toBe(0);
  });

  it('compresses as the polytropic relation says', () => {
    // 7.5 to the power 1.3 at 14.7 psi absolute: 187.1 psi gauge (encyclopedic example).
    expect(compressionGauge(7.5, 14.7, 1.3)).toBeCloseTo(187.1, 0);
  });

  it('burns fuel at the table’s ratios', () => {
    // Heywood, table D.4 (from memory): gasoline 14.6; reference fuels within a tenth.
    expect(stoichiometric.E0).toBe(14.6);
    expect(Math.abs(stoichiometric.E10 - 13.992)).toBeLessThan(0.1);
    expect(Math.abs(stoichiometric.E85 - 9.857)).toBeLessThan(0.1);
  });

  it('shows the steps of SAE J1979', () => {
    // Parameters 05, 06, 0B, 0C, 10: what a byte or two can carry.
    expect(shown.celsius(273.15 + 83.4)).toBe(83);
    expect(shown.trimPercent(0.125)).toBe(12.5);
    expect(shown.trimPercent(2)).toBe(99.21875);
    expect(shown.kilopascals(33620)).toBe(34);
    expect(shown.speed(1726.1)).toBe(1726);
    expect(shown.airFlow(0.0035)).toBeCloseTo(3.5, 9);
  });
});

describe('the model', () => {
  const sound = (seed: number) => {
    const chance = chanceOf(seed);
    const engine = drawEngine(chance, { metering: 'air flow', boosted: false });
    return { engine, car: soundCar(engine, chance) };
  };
  const silent = {
    leak: 0,
    strayGas: 0,
    strayOffIdle: 0,
    blocked: 0,
    opens: 1,
    meter: 0,
    mapOffset: 0,
    injectors: [0, 0],
    starved: 0,
    sensorBias: 0,
    opensEarly: 0,
  } as const;

  it('is the same for the same seed', () => {
    expect(generate(7).text).toBe(generate(7).text);
    expect(generate(7).text).not.toBe(generate(8).text);
  });

  it('keeps the seeds of building and of judging apart', () => {
    const judging = new Set(judgingSeeds(5000));
    expect(buildingSeeds(5000).filter((seed) => judging.has(seed))).toEqual([]);
  });

  it('needs the trim that a hole asks for: the missed share over the metered one', () => {
    for (const seed of buildingSeeds(20)) {
      const { engine } = sound(seed);
      const { leak } = withFault(silent, engine, { name: 'air leak behind the meter', size: 20 });
      const air = airState(engine, { kind: 'idle' }, { ...silent, leak }, engine.site.outside + 10);
      expect(air.leaked / air.air).toBeCloseTo(0.2, 1);
      const { trim, lambda } = closedLoop(engine, air, { ...silent }, 0);
      expect(trim).toBeCloseTo(air.leaked / (air.air - air.leaked), 9);
      expect(lambda).toBeCloseTo(1, 9);
    }
  });

  it('counts the same hole as air where the manifold pressure is metered', () => {
    const { engine: drawn } = sound(3);
    const engine = { ...drawn, metering: 'manifold pressure' } as const;
    const { leak } = withFault(silent, engine, { name: 'air leak behind the meter', size: 30 });
    const air = airState(engine, { kind: 'idle' }, { ...silent, leak }, engine.site.outside + 10);
    expect(Math.abs(closedLoop(engine, air, { ...silent }, 0).trim)).toBeLessThan(0.02);
  });

  it('raises the idle speed when a hole passes more air than the engine needs', () => {
    const { engine } = sound(4);
    const { leak } = withFault(silent, engine, { name: 'air leak behind the meter', size: 140 });
    const air = airState(engine, { kind: 'idle' }, { ...silent, leak }, engine.site.outside + 10);
    expect(air.rpm).toBeGreaterThan(1.3 * engine.idleSpeed);
    expect(air.idleValve).toBeCloseTo(0, 6);
  });

  it('leans out the truth when the sensor sees lambda too high', () => {
    const { engine } = sound(5);
    const air = airState(engine, { kind: 'idle' }, silent, engine.site.outside + 10);
    const { trim, lambda, seen } = closedLoop(engine, air, { ...silent, sensorBias: 0.1 }, 0);
    expect(seen).toBeCloseTo(1, 9);
    expect(lambda).toBeCloseTo(1 / 1.1, 9);
    expect(trim).toBeCloseTo(0.1, 9);
  });

  it('fills as engines do', () => {
    // Heywood, section 2.10: naturally aspirated engines fill to 80 to 90 % at best; less through a nearly closed throttle.
    for (const seed of buildingSeeds(200)) {
      const { engine, points } = generate(seed);
      for (const { state, air } of points) {
        const filling = fillingOf(engine, air.air, air.map, air.rpm, air.charge);
        // With the throttle shut at speed the gas that stays in the cylinder leaves less room still.
        expect(filling).toBeGreaterThan(state === 'deceleration' ? 0.3 : 0.45);
        expect(filling).toBeLessThan(1.02);
        if (!engine.boosted) expect(air.map).toBeLessThan(engine.site.barometer);
        // Common practice: an idling engine's manifold is between 18 and 48 kPa.
        if (state === 'warm idle') {
          expect(air.map).toBeGreaterThan(18000);
          expect(air.map).toBeLessThan(48000);
        }
      }
    }
  });

  it('draws at idle what the trade expects of a litre', () => {
    // Common practice: 0.8 to 1.8 g/s for each litre at warm idle.
    for (const seed of buildingSeeds(100)) {
      const { engine, points } = generate(seed);
      const idle = points.find(({ state }) => state === 'warm idle');
      const specific = (idle?.air.air ?? 0) / engine.displacement;
      expect(specific).toBeGreaterThan(0.75);
      expect(specific).toBeLessThan(1.85);
    }
  });

  it('leaves less behind a throttle the less it opens, and what a sound one leaves when it opens wholly', () => {
    for (const seed of buildingSeeds(20)) {
      const { engine } = sound(seed);
      const full = { kind: 'full', rpm: 4000, boost: 0 } as const;
      const behind = [1, 0.3, 0.1, 0.05].map(
        (opens) => airState(engine, full, { ...silent, opens }, engine.site.outside + 5).map,
      );
      expect(behind).toEqual([...behind].sort((a, b) => b - a));
      // Choked, the flow goes with the area; the pressure falls a little less, since more of the gas stays in the cylinder.
      const share = (behind[3] ?? 0) / (behind[2] ?? 0);
      expect(share).toBeGreaterThan(0.5);
      expect(share).toBeLessThan(0.65);
      const { map } = airState(engine, full, { ...silent, opens: 0.05 }, engine.site.outside + 5);
      expect(map).toBeLessThan(0.528 * engine.site.barometer);
    }
  });

  it('works out the lambda of gas that air joins: excess air is air, before the flame or behind it', () => {
    for (const fuel of ['E0', 'E10', 'E85'] as const) {
      const mixed = burnt(fuel, 1, 0.05);
      const lean = burnt(fuel, mixed.lambda);
      expect(mixed.lambda).toBeGreaterThan(1.04);
      expect(mixed.co2).toBeCloseTo(lean.co2, 9);
      expect(mixed.o2).toBeCloseTo(lean.o2, 9);
      expect(burnt(fuel, 0.9).lambda).toBe(0.9);
    }
  });

  it('shuts a valve that ported vacuum opens at idle', () => {
    const { engine } = sound(6);
    const { strayOffIdle } = withFault(silent, engine, {
      name: 'recirculation valve opened by a vacuum that leaks to it',
      size: 40,
    });
    const gasAt = (demand: Parameters<typeof airState>[1]): number =>
      airState(engine, demand, { ...silent, strayOffIdle }, engine.site.outside + 10).gas;
    expect(gasAt({ kind: 'idle' })).toBe(0);
    expect(gasAt({ kind: 'no load', rpm: 2500 })).toBeCloseTo(0.16, 9);
  });

  it('counts nothing that a sound car cannot have counted', () => {
    for (const seed of buildingSeeds(300)) {
      const { odometer, unit, sinceClear, withLamp } = drawHistory(undefined, chanceOf(seed));
      expect(odometer.after).toBeGreaterThanOrEqual(odometer.exact);
      expect(sinceClear.distance).toBeLessThan(odometer.exact * (unit === 'km' ? 1 : 1.609344));
      expect(withLamp.distance).toBeLessThanOrEqual(sinceClear.distance);
      expect(withLamp.time).toBeLessThanOrEqual(sinceClear.time);
      // SAE J1979 $30 and $4E: a byte and two.
      expect(sinceClear.warmUps).toBeLessThanOrEqual(255);
      expect(sinceClear.time).toBeLessThanOrEqual(65535);
    }
  });

  it('swaps digits so that the odometer is less by nine times their difference', () => {
    const name = 'two digits of the odometer swapped after the repair';
    for (const seed of buildingSeeds(100)) {
      const { odometer } = drawHistory({ name, size: 100 }, chanceOf(seed));
      const lost = odometer.exact - odometer.after;
      // The car was driven 60 km or less in between.
      const steps = Math.ceil(lost / 900);
      expect(steps).toBeGreaterThanOrEqual(1);
      expect(steps).toBeLessThanOrEqual(9);
      expect(900 * steps - lost).toBeLessThanOrEqual(60);
    }
  });

  it('lets through a catalyst what it is told to', () => {
    for (const through of [0.1, 0.5, 0.95]) {
      const { front, rear } = oxygenTrace(chanceOf(9), through);
      const swing = (volts: readonly number[]) => Math.max(...volts) - Math.min(...volts);
      expect(swing(rear) / swing(front)).toBeCloseTo(through, 1);
    }
  });

  it('writes cases that can be read', () => {
    for (const seed of buildingSeeds(40)) {
      const { findings } = checkCase(generate(seed).text);
      expect(findings.filter(({ diagnostic }) => diagnostic.severity === 'error')).toEqual([]);
    }
  });

  it('makes another text of each fault', () => {
    for (const { name, sizes } of faults) {
      const size = sizes[sizes.length - 1] ?? 0;
      expect(generate(11, { name, size }).text).not.toBe(generate(11).text);
      expect(generate(11, { name, size }).text).toBe(generate(11, { name, size }).text);
    }
  });
});
