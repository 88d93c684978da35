import { describe, expect, it } from 'vitest';
import { casePage } from '../../core/report/casePage.ts';
import { cautionBlocks } from '../../core/report/cautionBlocks.ts';
import { cautionRows, cautionsOf, deference } from '../../core/report/cautions.ts';
import { checkCase } from '../../core/rules/checkCase.ts';
import { allSignals } from '../../core/signals/lookup.ts';
import { engineStates } from '../../core/signals/states.ts';
import { sampleFiles, samples } from '../support/samples.ts';
import { stepsWithCautions } from './stepsWithCautions.ts';

const brought = (work: {
  signals?: string[];
  words?: string;
  called?: string;
  states?: string[];
  functions?: string[];
}): string[] =>
  cautionsOf({
    signals: work.signals ?? [],
    words: work.words ?? '',
    called: work.called ?? '',
    states: work.states ?? [],
    functions: work.functions ?? [],
  }).map((each) => each.id);

describe('a caution', () => {
  it.each([
    [{ signals: ['compression'], states: ['cranking'] }, ['cranking']],
    [{ signals: ['rpm'], states: ['cranking'] }, ['starter']],
    // A channel may have any name: what is read off it says how it was taken.
    [{ functions: ['relative_compression', 'lowest'] }, ['starter', 'battery']],
    [{ functions: ['valve_events'] }, ['cranking']],
    [{ functions: ['leakage_pattern'] }, ['leak-down']],
    [{ functions: ['gas_pattern'] }, ['exhaust']],
    [{ functions: ['dwell_time'] }, ['ignition']],
    [{ functions: ['total_trim', 'mean'] }, []],
    [{ signals: ['fuel_pressure'] }, ['fuel-pressure']],
    [{ signals: ['back_pressure'] }, ['exhaust']],
    [{ signals: ['leakdown'] }, ['leak-down']],
    [{ signals: ['resting_voltage'] }, ['battery']],
    // The supply voltage among the generic data: nobody touches the battery.
    [{ signals: ['battery'], states: ['key on engine off'] }, []],
    [{ signals: ['oil_pressure'] }, ['oil']],
    [{ signals: ['co', 'co2'] }, ['exhaust']],
    [{ states: ['warm idle'] }, ['running-engine']],
    [{ states: ['2500 rpm no load'] }, ['running-engine']],
    [{ states: ['cruise'] }, ['road-test']],
    [{ words: 'Half a psi of smoke through the booster hose.' }, ['smoke']],
    [{ words: 'Propane at the runners, engine at idle' }, ['running-engine', 'flammable-gas']],
    [{ words: 'Swap coils 2 and 3' }, ['ignition', 'rotating-swap']],
    [{ words: 'Lifted the car and looked at the pipe' }, ['lifting']],
    [{ words: 'Block test at the radiator' }, ['coolant']],
    [{ words: 'Opened the common rail return' }, ['high-pressure-fuel']],
    [{ words: 'Measured isolation of the hybrid battery' }, ['high-voltage']],
    [{ words: 'Swapped injectors 2 and 3' }, ['fuel-pressure', 'rotating-swap']],
    [{ words: 'Injector 2 and all seals replaced' }, ['fuel-pressure']],
    [{ words: 'Raised the front of the van and set it on stands' }, ['lifting']],
    [{ words: 'Took the pan off. Engine oil drained.' }, ['oil']],
    [{ words: 'Catalyst replaced, muffler looked through' }, ['exhaust']],
    [{ words: 'Drove the same climb' }, ['road-test']],
    [{ called: 'Full throttle with both front sensors out' }, ['exhaust']],
    [{ signals: ['map', 'ect', 'iat'], states: ['key on engine off'] }, []],
  ])('comes with the work: %j', (work, ids) => {
    expect(brought(work)).toEqual(ids);
  });

  it.each([
    [{ words: 'Valve lift with the cover off' }],
    [{ called: 'Valve lift with the cover off' }],
    [{ called: 'The training stand, key on, engine off' }],
    [{ words: 'Pressure stands, key on' }],
    [{ called: 'At the barometric sensor, meter against battery minus' }],
    [{ words: 'Measured at the sensor against battery minus' }],
    [{ called: 'Three loads, an hour after the oil change' }],
    [{ words: 'Drew 20 kPa with the hand vacuum pump on the port' }],
    [{ words: 'Battery not disconnected' }],
    [{ words: 'Water pump replaced' }],
    [{ words: 'No change in the exhaust note' }],
    [{ words: 'Soap water around the injector seals' }],
    [{ words: 'Coolant sensor replaced' }],
    [{ words: 'Exhaust valve lifted 9.1 mm' }],
  ])('does not come with a word that only sounds like work: %j', (work) => {
    expect(brought(work)).toEqual([]);
  });

  it('is given in full once, and later as a line that points back', () => {
    const given = new Map<string, string>();
    const work = cautionsOf({ signals: ['fuel_pressure'], words: '', states: [] });
    const kinds = (title: string) => cautionBlocks(work, given, title).map((each) => each.kind);
    expect(kinds('Pressure at idle')).toEqual(['caution']);
    expect(cautionBlocks(work, given, 'Pressure at the road')).toEqual([
      {
        kind: 'paragraph',
        lead: 'Caution, as before',
        runs: ['', { strong: 'Fuel under pressure' }, ' (see “Pressure at idle”)', '.'],
      },
    ]);
  });

  it('comes with the check of a channel that no signal names', () => {
    const { sections } = casePage({
      study: checkCase(
        'diag: 1\n---\ncheck: Which is weak?\nlet:\n  share: relative_compression(c.current)\n',
      ),
      file: 'case.diag',
      pictures: () => undefined,
    });
    const titles = sections.flatMap(({ blocks }) =>
      blocks.flatMap((each) => (each.kind === 'caution' ? [each.title] : [])),
    );
    expect(titles).toEqual(['Cranking', 'Battery and heavy current']);
  });

  it('that stands in a cell which is kept back is given again, and does not tell that cell’s title', () => {
    const { sections, after } = casePage({
      study: checkCase(
        'diag: 1\nteaching: yes\n---\nreadings: The weak pump\nfor: teacher\nvalues:\n  fuel_pressure: 30 psi\n---\nreadings: Pressure\nvalues:\n  fuel_pressure: 30 psi\n',
      ),
      file: 'case.diag',
      pictures: () => undefined,
    });
    const titles = (section: (typeof sections)[number] | undefined) =>
      section?.blocks.flatMap((each) => (each.kind === 'caution' ? [each.title] : [])) ?? [];
    expect(titles(sections.at(-1))).toContain('Fuel under pressure');
    expect(JSON.stringify(sections)).not.toContain('The weak pump');
    expect(after.flatMap(titles)).toContain('Fuel under pressure');
  });

  it('defers to the maker, the rules and the licence', () => {
    const work = { signals: ['compression', 'fuel_pressure'], words: '', states: [] };
    for (const { text } of cautionsOf(work)) expect(text.endsWith(deference)).toBe(true);
  });
});

/** Every step of a sample that brings a caution, its cautions, and with an arrow those that are pointed back to. */
function stepsOf(file: string, text: string): string[] {
  const { sections } = casePage({
    study: checkCase(text, undefined, sampleFiles),
    file,
    pictures: () => undefined,
  });
  return sections.flatMap(({ title, blocks }) => {
    const full = blocks.flatMap((each) =>
      each.kind === 'caution' && each.title !== 'from the author' ? [each.title] : [],
    );
    const again = blocks.flatMap((each) =>
      each.kind === 'paragraph' && each.lead === 'Caution, as before'
        ? each.runs.flatMap((run) => (typeof run === 'object' && 'strong' in run ? [`↑ ${run.strong}`] : []))
        : [],
    );
    return full.length + again.length === 0 ? [] : [`${title}: ${[...full, ...again].join(', ')}`];
  });
}

describe('the cautions of the samples', () => {
  it.each(Object.entries(stepsWithCautions))('stand where the work is: %s', (file, steps) => {
    const text = samples.get(file) ?? '';
    expect(stepsOf(file, text)).toEqual(steps);
  });

  it('are listed for every sample', () => {
    expect(Object.keys(stepsWithCautions)).toEqual([...samples.keys()]);
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
