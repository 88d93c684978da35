import { describe, expect, it } from 'vitest';
import { cautionRows, cautionsFor, deference } from '../../core/report/cautions.ts';
import { allSignals } from '../../core/signals/lookup.ts';
import { engineStates } from '../../core/signals/states.ts';

const brought = (
  work: { signals?: string[]; words?: string; states?: string[] },
  given: string[] = [],
): string[] =>
  cautionsFor(
    { signals: work.signals ?? [], words: work.words ?? '', states: work.states ?? [] },
    new Set(given),
  ).map((each) => each.id);

describe('a caution', () => {
  it.each([
    [{ signals: ['compression'], states: ['cranking'] }, ['cranking']],
    [{ signals: ['fuel_pressure'] }, ['fuel-pressure']],
    [{ signals: ['back_pressure'] }, ['exhaust']],
    [{ signals: ['leakdown'] }, ['leak-down']],
    [{ signals: ['battery'] }, ['battery']],
    [{ signals: ['oil_pressure'] }, ['oil']],
    [{ signals: ['co', 'co2'] }, ['exhaust']],
    [{ states: ['warm idle'] }, ['running-engine']],
    [{ states: ['2500 rpm no load'] }, ['running-engine']],
    [{ states: ['cruise'] }, ['road-test']],
    [{ words: 'Half a psi of smoke through the booster hose.' }, ['smoke']],
    [{ words: 'Propane at the runners, engine at idle' }, ['flammable-gas']],
    [{ words: 'Swap coils 2 and 3' }, ['ignition', 'rotating-swap']],
    [{ words: 'Lifted the car and looked at the pipe' }, ['lifting']],
    [{ words: 'Block test at the radiator' }, ['coolant']],
    [{ words: 'Opened the common rail return' }, ['high-pressure-fuel']],
    [{ words: 'Measured isolation of the hybrid battery' }, ['high-voltage', 'battery']],
    [{ signals: ['map', 'ect', 'iat'], states: ['key on engine off'] }, []],
  ])('comes with the work: %j', (work, ids) => {
    expect(brought(work)).toEqual(ids);
  });

  it('is given once', () => {
    expect(brought({ signals: ['fuel_pressure'] }, ['fuel-pressure'])).toEqual([]);
  });

  it('defers to the maker, the rules and the licence', () => {
    for (const { text } of cautionsFor(
      { signals: ['compression', 'fuel_pressure'], words: '', states: [] },
      new Set(),
    )) {
      expect(text.endsWith(deference)).toBe(true);
    }
  });
});

describe('the table of cautions', () => {
  it.each(cautionRows.filter((row) => row.signals !== undefined))(
    'has real signals for $id',
    ({ signals }) => {
      expect(allSignals().filter((each) => signals?.test(each.name)).length).toBeGreaterThan(0);
    },
  );

  it('covers every state in which the engine turns', () => {
    const uncovered = engineStates
      .filter((state) => state.engine === 'running')
      .filter((state) => brought({ states: [state.name] }).length === 0)
      .map((state) => state.name);
    expect(uncovered).toEqual([]);
  });

  it('covers every signal whose measurement can hurt', () => {
    const hurts =
      /^(fuel_pressure|rail_pressure|compression|leakdown|isolation|pack_voltage|firing_voltage|back_pressure|ac_high_pressure|cooling_pressure|injector_current|cylinder_pressure|oil_pressure|starter_current|tank_pressure)/;
    const uncovered = allSignals()
      .map((each) => each.name)
      .filter((name) => hurts.test(name) && brought({ signals: [name] }).length === 0);
    expect(uncovered).toEqual([]);
  });
});
