import { diagnose } from '../../diagnostics/diagnostic.ts';
import { findFuel } from '../../engine/fuel/findFuel.ts';
import { inForm, writtenAs } from '../measured.ts';
import { fullNameOf } from '../moments.ts';
import type { MomentRule } from '../rule.ts';

/** The sensor, or the control, finds another share of ethanol in the fuel than the header's fuel has. */
export const ethanolUnfit: MomentRule = {
  code: 'ethanol-unfit',
  of: ['ethanol'],
  checkMoment: (moment, { car }) => {
    const ethanol = inForm(moment.values.ethanol, '%');
    const named = car.fuel === undefined ? undefined : shareIn(car.fuel);
    if (ethanol === undefined || named === undefined || ethanol.isImpossible) return undefined;
    const { low, high } = soldAs(named);
    if (ethanol.si >= low - sensor && ethanol.si <= high + sensor) return undefined;
    const facts = {
      name: fullNameOf(ethanol),
      written: writtenAs(ethanol),
      fuel: car.fuel ?? '',
      meant: `E${Math.round(ethanol.si * 100)}`,
    };
    return diagnose('ethanol-unfit', ethanol.reading.valueSpan, facts);
  },
};

/** The ethanol in a fuel by its name, a share by volume; undefined of what is no gasoline. */
function shareIn(fuel: string): number | undefined {
  const found = findFuel(fuel);
  if ('noAnswer' in found) return undefined;
  if (found.name === 'ethanol') return 1;
  const percent = /^E(\d+)$/.exec(found.name)?.[1];
  return percent === undefined ? undefined : Number(percent) / 100;
}

/** What a pump sells under such a name: E85 has 51 to 83 % by season (ASTM D5798, value from memory), the others up to what they say. */
function soldAs(named: number): { readonly low: number; readonly high: number } {
  return named >= 0.7 ? { low: Math.min(0.51, named), high: 1 } : { low: named - 0.1, high: named };
}

/** A share that neither a sensor nor the rest of the last tank explains (common practice). */
const sensor = 0.1;
