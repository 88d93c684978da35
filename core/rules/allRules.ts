import { beyondSensor } from './beyondSensor.ts';
import { codeNotListed, codeNotStored } from './codesDiffer.ts';
import { coldSoak } from './coldSoak.ts';
import { failedValue } from './failedValue.ts';
import { impossibleValue } from './impossibleValue.ts';
import { misspeltState } from './misspeltState.ts';
import type { Rule } from './rule.ts';
import { unitSlip } from './unitSlip.ts';
import { unusualValue } from './unusualValue.ts';

/** The checks that run without being written, in the order in which their findings are listed at one place. */
export const allRules: readonly Rule[] = [
  misspeltState,
  unitSlip,
  impossibleValue,
  beyondSensor,
  failedValue,
  coldSoak,
  unusualValue,
  codeNotListed,
  codeNotStored,
];
