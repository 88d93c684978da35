import { describe, expect, it } from 'vitest';
import { decodeObd } from '../../../core/engine/obd/decodeObd.ts';
import { encodeCycleMonitors, encodeMonitors, monitorItems } from '../../../core/engine/obd/monitors.ts';
import { itemWords } from '../../../core/report/answerTable.ts';
import { signalOf } from '../../../core/signals/lookup.ts';
import { bytesOf, foundIn, saidBy } from './bytes.ts';

/** What four bytes of parameter 01 say, by signal. */
function said(hex: string): Record<string, string | number> {
  return Object.fromEntries(
    monitorItems(bytesOf(hex), 0).map(({ signal, value }) => [
      signal,
      value.is === 'number' ? value.value : value.is === 'words' ? value.text : value.why,
    ]),
  );
}

/* The layout of the bits: value from memory of SAE J1979, service 01, parameter 01. */
describe('lamp, codes and monitors', () => {
  it('81 07 65 04: lamp on, one code, the tank’s vapour not complete', () => {
    expect(said('81 07 65 04')).toEqual({
      mil: 'on',
      dtc_count: 1,
      misfire_monitor: 'complete',
      fuel_monitor: 'complete',
      component_monitor: 'complete',
      catalyst_monitor: 'complete',
      heated_catalyst_monitor: 'not supported',
      evap_monitor: 'incomplete',
      air_monitor: 'not supported',
      ac_monitor: 'not supported',
      o2_monitor: 'complete',
      o2_heater_monitor: 'complete',
      egr_monitor: 'not supported',
      monitors_left: 1,
    });
  });

  it('00 07 FF 00: lamp off, no code, all complete', () => {
    const all = said('00 07 FF 00');
    expect([all.mil, all.dtc_count, all.monitors_left]).toEqual(['off', 0, 0]);
    for (const [name, word] of Object.entries(all))
      if (name.endsWith('_monitor')) expect(word, name).toBe('complete');
  });

  it('82 77 00 00: two codes, the monitors that always run not complete', () => {
    const all = said('82 77 00 00');
    expect([all.mil, all.dtc_count, all.monitors_left]).toEqual(['on', 2, 3]);
    expect([all.misfire_monitor, all.fuel_monitor, all.component_monitor]).toEqual(
      Array(3).fill('incomplete'),
    );
    expect(all.catalyst_monitor).toBe('not supported');
  });

  it('counts no monitor as left that is not there', () => {
    expect(said('00 00 00 FF').monitors_left).toBe(0);
    expect(said('00 00 00 FF').evap_monitor).toBe('not supported');
  });

  it('00 0F EB 01: a diesel has monitors of its own', () => {
    const all = said('00 0F EB 01');
    expect(all).toMatchObject({
      hydrocarbon_catalyst_monitor: 'incomplete',
      nox_monitor: 'complete',
      boost_monitor: 'complete',
      exhaust_sensor_monitor: 'complete',
      filter_monitor: 'complete',
      egr_monitor: 'complete',
      monitors_left: 1,
    });
    expect(all.catalyst_monitor).toBeUndefined();
  });

  it('has a signal for each, with the words that it uses', () => {
    for (const hex of ['81 07 65 04', '00 0F EB 01'])
      for (const { signal, value } of monitorItems(bytesOf(hex), 0)) {
        const known = signalOf(signal ?? '');
        expect(known, signal).toBeDefined();
        if (value.is === 'words') expect(known?.words, signal).toContain(value.text);
      }
  });

  it.each(['81 07 65 04', '00 07 FF 00', '82 77 00 00', '00 07 FF FF', '00 0F EB 01', '85 5F A9 A8'])(
    '%s is made the other way round',
    (hex) => {
      const items = monitorItems(bytesOf(hex), 0);
      const monitors = items.flatMap(({ signal = '', value }) =>
        signal.endsWith('_monitor') && value.is === 'words' ? [{ signal, word: value.text }] : [],
      );
      const bytes = encodeMonitors({
        lamp: items.some(
          ({ signal, value }) => signal === 'mil' && value.is === 'words' && value.text === 'on',
        ),
        codes: said(hex).dtc_count as number,
        ignition: monitors.some(({ signal }) => signal === 'nox_monitor' || signal === 'boost_monitor')
          ? 'compression'
          : 'spark',
        supported: monitors.map(({ signal }) => signal),
        incomplete: monitors.flatMap(({ signal, word }) => (word === 'incomplete' ? [signal] : [])),
      });
      expect(Uint8Array.from(bytes)).toEqual(bytesOf(hex));
    },
  );
});

/* The layout of the bits: value from memory of SAE J1979, service 01, parameter 41. */
describe('monitors in this driving cycle', () => {
  it('00 07 65 04 has the names of parameter 01', () => {
    expect(saidBy('41 41 00 07 65 04')).toEqual([
      'Misfire monitor, this driving cycle complete',
      'Fuel system monitor, this driving cycle complete',
      'Monitor of the components, this driving cycle complete',
      'Catalyst monitor, this driving cycle complete',
      'Heated catalyst monitor, this driving cycle not enabled',
      'Evaporative system monitor, this driving cycle incomplete',
      'Secondary air monitor, this driving cycle not enabled',
      'Air conditioning refrigerant monitor, this driving cycle not enabled',
      'Oxygen sensor monitor, this driving cycle complete',
      'Oxygen sensor heater monitor, this driving cycle complete',
      'Exhaust gas recirculation or valve timing monitor, this driving cycle not enabled',
      'Enabled monitors that have not run to the end 1',
    ]);
  });

  it('00 7F EB 01: a diesel, nothing that always runs complete', () => {
    const all = saidBy('41 41 00 7F EB 01');
    expect(all.filter((each) => each.endsWith(' incomplete'))).toEqual([
      'Misfire monitor, this driving cycle incomplete',
      'Fuel system monitor, this driving cycle incomplete',
      'Monitor of the components, this driving cycle incomplete',
      'Hydrocarbon catalyst monitor, this driving cycle incomplete',
    ]);
    expect(all.at(-1)).toBe('Enabled monitors that have not run to the end 4');
  });

  it('counts none as left that is not enabled, and says nothing by its first byte', () => {
    expect(saidBy('41 41 00 70 00 FF').at(-1)).toBe('Enabled monitors that have not run to the end 0');
    expect(saidBy('41 41 81 07 65 04')).toEqual(saidBy('41 41 00 07 65 04'));
  });

  it('is no reading of what was run since the codes were cleared', () => {
    const [answer] = decodeObd('41 41 00 07 65 04').answers;
    expect(answer?.items.map(({ signal }) => signal)).toEqual(Array(12).fill(undefined));
  });

  it.each(['00 07 65 04', '00 00 00 00', '00 77 FF FF', '00 0F EB 01', '00 5D A9 A8'])(
    '%s is made the other way round',
    (hex) => {
      const ignition = isSparkIn(hex) ? 'spark' : 'compression';
      const names = new Map(monitorItems(bytesOf(hex), 0).map((each) => [each.meaning, each.signal ?? '']));
      const words = saidBy(`41 41 ${hex}`).flatMap((each) => {
        const [meaning = '', word = ''] = each.split(', this driving cycle ');
        return word === '' ? [] : [{ signal: names.get(meaning) ?? '', word }];
      });
      const enabled = words.filter(({ word }) => word !== 'not enabled').map(({ signal }) => signal);
      const incomplete = words.filter(({ word }) => word === 'incomplete').map(({ signal }) => signal);
      expect(enabled.filter((signal) => !signal.endsWith('_monitor'))).toEqual([]);
      expect(Uint8Array.from(encodeCycleMonitors({ ignition, enabled, incomplete }))).toEqual(bytesOf(hex));
    },
  );
});

const isSparkIn = (hex: string): boolean => ((bytesOf(hex)[1] ?? 0) & 8) === 0;

describe('fuel control', () => {
  /* One bit a system: value from memory of SAE J1979, parameter 03. */
  it.each([
    ['01 00', ['loop open cold', 'loop_b2 no reading']],
    ['02 00', ['loop closed', 'loop_b2 no reading']],
    ['04 02', ['loop open load', 'loop_b2 closed']],
    ['08 10', ['loop open fault', 'loop_b2 closed fault']],
    ['03 00', ['loop unknown (03)', 'loop_b2 no reading']],
  ])('%s is %j', (hex, says) => {
    expect(saidBy(`41 03 ${hex}`)).toEqual(says);
  });
});

describe('what a controller can answer', () => {
  it('is read bit by bit', () => {
    /* BE 3F A8 13 by hand: 1011 1110, 0011 1111, 1010 1000, 0001 0011. */
    expect(saidBy('41 00 BE 3F A8 13')).toEqual([
      'Parameters that the controller answers 01 03 04 05 06 07 0B 0C 0D 0E 0F 10 11 13 15 1C 1F 20',
    ]);
    expect(saidBy('41 20 80 00 00 01')).toEqual(['Parameters that the controller answers 21 40']);
    expect(saidBy('41 00 00 00 00 00')).toEqual(['Parameters that the controller answers none']);
  });
});

describe('results of the controller’s own tests', () => {
  /* Scalings of services 05 and 06: values from memory of SAE J1979. */
  it.each([
    ['45 01 01 5A', ['Threshold from rich to lean, sensor 01 0.45 V']],
    ['45 03 01 3C', ['Low voltage for the switching time, sensor 01 0.3 V']],
    ['45 04 01 78', ['High voltage for the switching time, sensor 01 0.6 V']],
    [
      '45 05 01 19 00 32',
      [
        'Switching time from rich to lean, sensor 01 0.1 s',
        'Switching time from rich to lean, sensor 01, lowest allowed 0 s',
        'Switching time from rich to lean, sensor 01, highest allowed 0.2 s',
      ],
    ],
    ['45 09 01 19', ['Time between two switches, sensor 01 1 s']],
    [
      '46 01 80 0B 01 C2 00 00 03 20',
      [
        'Monitor 01, test 80 450 mV',
        'Monitor 01, test 80, lowest allowed 0 mV',
        'Monitor 01, test 80, highest allowed 800 mV',
      ],
    ],
    [
      '46 21 80 84 FF FF 80 00 7F FF',
      [
        'Monitor 21, test 80 -0.001',
        'Monitor 21, test 80, lowest allowed -32.768',
        'Monitor 21, test 80, highest allowed 32.767',
      ],
    ],
    [
      '46 01 80 10 00 64 00 00 FF FF',
      [
        'Monitor 01, test 80 100 ms',
        'Monitor 01, test 80, lowest allowed 0 ms',
        'Monitor 01, test 80, highest allowed 65535 ms',
      ],
    ],
    [
      '46 01 80 7D 12 34 00 00 FF FF',
      [
        'Monitor 01, test 80 12 34, scale 7D',
        'Monitor 01, test 80, lowest allowed 00 00, scale 7D',
        'Monitor 01, test 80, highest allowed FF FF, scale 7D',
      ],
    ],
    [
      '46 3D 80 FE FF 38 FC 18 00 C8',
      [
        'Monitor 3D, test 80 -50 Pa',
        'Monitor 3D, test 80, lowest allowed -250 Pa',
        'Monitor 3D, test 80, highest allowed 50 Pa',
      ],
    ],
    [
      '46 01 80 1E 80 00 40 00 C0 00',
      [
        'Monitor 01, test 80 1',
        'Monitor 01, test 80, lowest allowed 0.5',
        'Monitor 01, test 80, highest allowed 1.5',
      ],
    ],
    // Before CAN: test, component with the limit's sense in its highest bit, value, limit; the steps are the maker's.
    [
      '46 01 01 00 10 00 20',
      [
        'Test 01, component 01, in the maker’s steps 16',
        'Test 01, component 01, in the maker’s steps, highest allowed 32',
      ],
    ],
    [
      '46 05 82 01 00 00 40',
      [
        'Test 05, component 02, in the maker’s steps 256',
        'Test 05, component 02, in the maker’s steps, lowest allowed 64',
      ],
    ],
  ])('%s', (text, says) => {
    expect(saidBy(text)).toEqual(says);
    expect(foundIn(text)).toEqual([]);
  });

  it('have pressures of which the scale does not say what they are counted from', () => {
    const [answer] = decodeObd('46 3C 81 17 00 10 00 00 FF FF').answers;
    expect(answer?.items.map(itemWords)).toEqual([
      { value: '0.160 ± 0.005', unit: 'kPa' },
      { value: '0.000 ± 0.005', unit: 'kPa' },
      { value: '655.350 ± 0.005', unit: 'kPa' },
    ]);
  });

  it('give misfires by cylinder', () => {
    const text = '46 A2 0B 24 00 02 00 00 FF FF A2 0C 24 00 05 00 00 FF FF A4 0C 24 01 00 00 00 FF FF';
    expect(saidBy(text).filter((each) => each.startsWith('misfires'))).toEqual([
      'misfires_mean[1] 2',
      'misfires[1] 5',
      'misfires[3] 256',
    ]);
  });

  it('tell when a test is cut', () => {
    const text = '7E8 10 0D 46 A2 0C 24 00 05\n7E8 21 00 00 FF FF A4 0C 24';
    expect(foundIn(text).map((each) => each.split(':').slice(0, 2).join(':'))).toEqual([
      '2:20-28 obd-short-answer',
    ]);
  });
});

it('reads names and checksums of a calibration', () => {
  const name = '4C 4F 4E 47 20 4E 41 4D 45 00 00 00 00 00 00 00';
  expect(
    saidBy(`013\n0: 49 04 01 ${name.slice(0, 8)}\n1: ${name.slice(9, 29)}\n2: ${name.slice(30)}`),
  ).toEqual(['Calibration LONG NAME']);
  expect(saidBy('7E8 07 49 06 01 17 91 BC 82')).toEqual(['7E8 Checksum of the calibration 1791BC82']);
});
