import { cannotCompute } from '../../expression/absent.ts';
import type { Parameter } from '../../expression/functionRow.ts';
import type { Absent } from '../../expression/value.ts';
import type { Given } from '../several.ts';

/** The kind of the front sensor: the header says it, the call may. */
export const sensorKind: Parameter = {
  name: 'sensor',
  takes: { what: 'text' },
  meaning: 'the kind of sensor: "zirconia", "titania" or "wideband"',
  header: 'engine.front_sensor',
  otherwise: 'zirconia',
};

export type SwitchingKind = 'zirconia' | 'titania';

/** A kind whose volts switch; of a wide-range sensor and of no known kind, why it cannot be read so. */
export function switchingKind(of: Given, instead: string): SwitchingKind | Absent {
  switch (of) {
    case 'zirconia':
    case 'titania':
      return of;
    case 'wideband':
      return cannotCompute(`a wide-range sensor's volts do not switch with the mixture. ${instead}`);
    default:
      return cannotCompute('a sensor is "zirconia", "titania" or "wideband"');
  }
}
