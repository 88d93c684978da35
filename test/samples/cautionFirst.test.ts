import { describe, expect, it } from 'vitest';
import { checkCase } from '../../core/rules/checkCase.ts';
import { samples } from '../support/samples.ts';

/** A caution of the author, by its first words, and the step that it is about, by its title. */
const aboutStep: readonly (readonly [string, string, string])[] = [
  ['air-in-the-exhaust.diag', 'Exhaust gas kills', 'At the tailpipe, before'],
  ['blocked-exhaust.diag', 'Exhaust gas poisons', 'Full throttle on the level, before'],
  ['blocked-exhaust.diag', 'A road test with open', 'Full throttle with both front sensors out'],
  ['cam-tooth-late.diag', 'Ignition and injection', 'Compression, throttle open'],
  ['cam-tooth-late.diag', 'Ignition and injection', 'Cylinder 1 at idle'],
  ['early-thermostat.diag', 'Coolant under pressure', 'Warm-up, before'],
  ['early-thermostat.diag', 'The pot test', 'Thermostat in a pot, with a thermometer'],
  ['fuel-in-the-oil.diag', 'Fuel vapour', 'At the oil filler'],
  ['fuel-in-the-oil.diag', 'The rail is under', 'Which injector drips?'],
  ['ground-side-drop.diag', 'The engine will crank', 'While cranking'],
  ['half-worked-case.diag', 'Keep hands', 'Warm idle'],
  ['mirroring-rear-sensor.diag', 'The catalyst glows', 'Does the exhaust leak?'],
  ['misread-air-flow.diag', 'Exhaust gas poisons', 'Exhaust gas at warm idle'],
  ['mountain-barometer.diag', 'The full-throttle', 'Four loads, before'],
  ['mountain-road.diag', 'Full throttle needs', 'Cranking compression'],
  ['mountain-road.diag', 'Full throttle needs', 'Full throttle in the last bends, before'],
  ['open-temperature-sensor.diag', 'Join only', 'Plug off, signal joined'],
  ['plenum-leak.diag', 'The engine is warm', 'Three loads, before'],
  ['plenum-leak.diag', 'Smoke testers', 'Smoke into the intake'],
  ['third-thermostat.diag', 'Coolant under pressure', 'Hot, after twenty minutes'],
  ['purge-that-never-shuts.diag', 'Fuel vapour burns', 'Purge hose pinched at idle'],
  ['two-banks-two-sensors.diag', 'Exhaust gas kills', 'At 2500 rpm, before'],
  ['weak-cylinder.diag', 'Disable fuel and ignition', 'Cranking, fuel off'],
  ['weak-cylinder.diag', 'Air at 100 psi', 'Leak-down at top dead centre'],
  ['weak-fuel-supply.diag', 'Fuel under pressure', 'Fuel pressure at the same loads'],
  ['worn-intake-lobe.diag', 'Ignition and injection', 'Compression, cranking'],
  ['worn-intake-lobe.diag', 'Air pressure can turn', 'Leak-down at top dead centre'],
];

const cellsOf = (file: string): readonly { readonly kind: string; readonly title: string }[] =>
  checkCase(samples.get(file) ?? '').file.cells.map(({ cell }) => ({
    kind: cell?.kind ?? '',
    title: cell !== undefined && 'title' in cell ? (cell.title?.text ?? '') : '',
  }));

describe('an author’s caution', () => {
  it.each(aboutStep)('stands above the step that it is about: %s, %s', (file, words, step) => {
    const cells = cellsOf(file);
    const caution = cells.findIndex(({ kind, title }) => kind === 'caution' && title.startsWith(words));
    const about = cells.findIndex(({ kind, title }) => kind !== 'caution' && title.startsWith(step));
    expect(caution).toBeGreaterThan(0);
    expect(about).toBeGreaterThan(caution);
  });

  it('of every sample is looked at', () => {
    const all = [...samples.keys()].flatMap((file) =>
      cellsOf(file).flatMap(({ kind, title }) => (kind === 'caution' ? [`${file}: ${title}`] : [])),
    );
    const known = aboutStep.map(([file, words]) => `${file}: ${words}`);
    expect(all.filter((each) => !known.some((start) => each.startsWith(start)))).toEqual([]);
  });
});
