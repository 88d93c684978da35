import { egrAtIdle } from './air/egrAtIdle.ts';
import { fillingUnlikely } from './air/fillingUnlikely.ts';
import { idleAirShut } from './air/idleAirShut.ts';
import { beyondSensor } from './beyondSensor.ts';
import { codeNotListed } from './codeNotListed.ts';
import { codeNotStored } from './codeNotStored.ts';
import { coldSoak } from './coldSoak.ts';
import { engineStands } from './engineStands.ts';
import { failedValue } from './failedValue.ts';
import { codeForm } from './header/codeForm.ts';
import { firingOrderUnfit } from './header/firingOrderUnfit.ts';
import { impossibleHeader } from './header/impossibleHeader.ts';
import { unknownFuel } from './header/unknownFuel.ts';
import { vinDiffers } from './header/vinDiffers.ts';
import { vinForm } from './header/vinForm.ts';
import { impossibleValue } from './impossibleValue.ts';
import { misspeltState } from './misspeltState.ts';
import { banksApart } from './mixture/banksApart.ts';
import { banksTogether } from './mixture/banksTogether.ts';
import { rearCopiesFront } from './mixture/rearCopiesFront.ts';
import { trimAgainstGas } from './mixture/trimAgainstGas.ts';
import { trimByLoad } from './mixture/trimByLoad.ts';
import { aboveBarometer } from './pressure/aboveBarometer.ts';
import { barometersApart } from './pressure/barometersApart.ts';
import { barometerUnfit } from './pressure/barometerUnfit.ts';
import { manifoldAtBarometer } from './pressure/manifoldAtBarometer.ts';
import { pressureAndVacuum } from './pressure/pressureAndVacuum.ts';
import { seaLevelForStation } from './pressure/seaLevelForStation.ts';
import { vacuumForAbsolute } from './pressure/vacuumForAbsolute.ts';
import type { CaseRule, CellRule, MomentRule, ReadingRule, Rule } from './rule.ts';
import { frozenReading } from './sets/frozenReading.ts';
import { missingCylinder } from './sets/missingCylinder.ts';
import { readingsDiffer } from './sets/readingsDiffer.ts';
import { suspectTwice } from './sets/suspectTwice.ts';
import { chargeHotterThanCoolant } from './temperature/chargeHotterThanCoolant.ts';
import { thermostatEarly } from './temperature/thermostatEarly.ts';
import { unitSlip } from './unitSlip.ts';
import { unusualValue } from './unusualValue.ts';

/** The checks that run without being written, in the order in which their findings are listed at one place. */
export const allRules: readonly Rule[] = [
  codeForm,
  firingOrderUnfit,
  impossibleHeader,
  unknownFuel,
  vinForm,
  misspeltState,
  suspectTwice,
  unitSlip,
  impossibleValue,
  beyondSensor,
  failedValue,
  engineStands,
  coldSoak,
  chargeHotterThanCoolant,
  thermostatEarly,
  seaLevelForStation,
  barometerUnfit,
  barometersApart,
  aboveBarometer,
  vacuumForAbsolute,
  manifoldAtBarometer,
  pressureAndVacuum,
  fillingUnlikely,
  frozenReading,
  readingsDiffer,
  egrAtIdle,
  idleAirShut,
  trimAgainstGas,
  trimByLoad,
  banksApart,
  banksTogether,
  rearCopiesFront,
  missingCylinder,
  unusualValue,
  codeNotListed,
  codeNotStored,
  vinDiffers,
];

/** What a rule looks at in a cell; of one shape for all rules, since it is asked of every cell at every keystroke. */
interface Look {
  readonly reading: ReadingRule['checkReading'] | undefined;
  readonly moment: MomentRule['checkMoment'] | undefined;
  readonly cell: CellRule['checkCell'] | undefined;
  /** The kind of cell that it looks at, where it is one. */
  readonly kind: CellRule['in'];
  /** Its bit among those of the signals that it asks for; 0 where it is asked whatever was read. */
  readonly bit: number;
}

/** A rule that compares cells, with its bit. */
interface Comparison {
  readonly check: CaseRule['check'];
  readonly bit: number;
}

const bits = new Map<string, number>();
const bitsOf = new Map<string, number>();

/** Those that look at one cell at a time, in their order. */
export const cellRules: readonly Look[] = allRules.filter((rule) => !isCaseRule(rule)).map(lookOf);

/** Those that compare cells. */
export const caseRules: readonly Comparison[] = allRules
  .filter(isCaseRule)
  .map((rule) => ({ check: rule.check, bit: bitOf(rule) }));

function isCaseRule(rule: Rule): rule is CaseRule {
  return 'check' in rule;
}

function lookOf(rule: Rule): Look {
  return {
    reading: 'checkReading' in rule ? rule.checkReading : undefined,
    moment: 'checkMoment' in rule ? rule.checkMoment : undefined,
    cell: 'checkCell' in rule ? rule.checkCell : undefined,
    kind: 'in' in rule ? rule.in : undefined,
    bit: bitOf(rule),
  };
}

/** The bits of the rules that ask for a signal: whoever adds up those of what was read knows whom to ask. */
export function askedWith(signal: string): number {
  return bitsOf.get(signal) ?? 0;
}

/** Each list of signals that a rule asks for has a bit of its own. */
function bitOf(rule: Rule): number {
  const signals = 'of' in rule ? rule.of : undefined;
  if (signals === undefined) return 0;
  const list = signals.join();
  let bit = bits.get(list);
  if (bit === undefined) {
    bit = 1 << bits.size;
    bits.set(list, bit);
    for (const signal of signals) bitsOf.set(signal, (bitsOf.get(signal) ?? 0) | bit);
  }
  return bit;
}
