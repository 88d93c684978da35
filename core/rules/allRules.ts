import type { Cell } from '../casefile/cell.ts';
import { egrAtIdle } from './air/egrAtIdle.ts';
import { egrNotCommanded } from './air/egrNotCommanded.ts';
import { fillingUnlikely } from './air/fillingUnlikely.ts';
import { idleAirShut } from './air/idleAirShut.ts';
import { always, bitOf } from './asked.ts';
import { beyondSensor } from './beyondSensor.ts';
import { codeNotListed } from './codeNotListed.ts';
import { codeNotStored } from './codeNotStored.ts';
import { coldSoak } from './coldSoak.ts';
import { countersContradict } from './counters/countersContradict.ts';
import { odometerRunsBack } from './counters/odometerRunsBack.ts';
import { leakageAgainstCompression } from './cylinders/leakageAgainstCompression.ts';
import { pressuresOutOfOrder } from './cylinders/pressuresOutOfOrder.ts';
import { acidAgainstVolts } from './electrical/acidAgainstVolts.ts';
import { crankingWithoutDip } from './electrical/crankingWithoutDip.ts';
import { engineStands } from './engineStands.ts';
import { failedValue } from './failedValue.ts';
import { codeForm } from './header/codeForm.ts';
import { firingOrderUnfit } from './header/firingOrderUnfit.ts';
import { impossibleHeader } from './header/impossibleHeader.ts';
import { unknownFuel } from './header/unknownFuel.ts';
import { vinDiffers } from './header/vinDiffers.ts';
import { vinForm } from './header/vinForm.ts';
import { impossibleValue } from './impossibleValue.ts';
import { oddities } from './measured.ts';
import { misspeltState } from './misspeltState.ts';
import { banksApart } from './mixture/banksApart.ts';
import { banksTogether } from './mixture/banksTogether.ts';
import { codeOfOtherBank } from './mixture/codeOfOtherBank.ts';
import { ethanolUnfit } from './mixture/ethanolUnfit.ts';
import { gasBalance } from './mixture/gasBalance.ts';
import { rearCopiesFront } from './mixture/rearCopiesFront.ts';
import { sensorAgainstGas } from './mixture/sensorAgainstGas.ts';
import { trimAgainstGas } from './mixture/trimAgainstGas.ts';
import { trimByLoad } from './mixture/trimByLoad.ts';
import { aboveBarometer } from './pressure/aboveBarometer.ts';
import { barometersApart } from './pressure/barometersApart.ts';
import { barometerUnfit } from './pressure/barometerUnfit.ts';
import { manifoldAtBarometer } from './pressure/manifoldAtBarometer.ts';
import { pressureAndVacuum } from './pressure/pressureAndVacuum.ts';
import { seaLevelForStation } from './pressure/seaLevelForStation.ts';
import { vacuumForAbsolute } from './pressure/vacuumForAbsolute.ts';
import { pulseTooLong } from './pulseTooLong.ts';
import type { CaseRule, CellRule, MomentRule, ReadingRule, Rule } from './rule.ts';
import { frozenReading } from './sets/frozenReading.ts';
import { instrumentsDiffer } from './sets/instrumentsDiffer.ts';
import { missingCylinder } from './sets/missingCylinder.ts';
import { readingsDiffer } from './sets/readingsDiffer.ts';
import { suspectTwice } from './sets/suspectTwice.ts';
import { stateContradicted } from './stateContradicted.ts';
import { chargeColderThanOutside } from './temperature/chargeColderThanOutside.ts';
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
  stateContradicted,
  coldSoak,
  chargeHotterThanCoolant,
  chargeColderThanOutside,
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
  instrumentsDiffer,
  pulseTooLong,
  egrAtIdle,
  egrNotCommanded,
  idleAirShut,
  gasBalance,
  ethanolUnfit,
  sensorAgainstGas,
  trimAgainstGas,
  trimByLoad,
  banksApart,
  codeOfOtherBank,
  banksTogether,
  rearCopiesFront,
  missingCylinder,
  pressuresOutOfOrder,
  leakageAgainstCompression,
  crankingWithoutDip,
  acidAgainstVolts,
  countersContradict,
  odometerRunsBack,
  unusualValue,
  codeNotListed,
  codeNotStored,
  vinDiffers,
];

/** What a rule looks at in a cell; of one shape for all rules, since it is asked of every cell at every keystroke. */
export interface Look {
  readonly reading: ReadingRule['checkReading'] | undefined;
  readonly moment: MomentRule['checkMoment'] | undefined;
  readonly cell: CellRule['checkCell'] | undefined;
  /** The bit of what must have been read, or of the oddity that it looks at. */
  readonly bit: number;
}

/** A rule that compares cells, with its bit and what it reads. */
export interface Comparison {
  readonly check: CaseRule['check'];
  readonly bit: number;
  readonly reads: CaseRule['reads'];
}

/** All bits are given before anyone is asked. */
const looks = allRules.flatMap((rule) =>
  isCaseRule(rule) ? [] : [{ kinds: 'in' in rule ? rule.in : undefined, look: lookOf(rule) }],
);

/** Those that look at one cell of this kind at a time, in their order. */
export function looksAt(kind: Kind): Looks {
  let here = byKind.get(kind);
  if (here === undefined) {
    const all = looks
      .filter(({ kinds }) => kinds === undefined || (kind !== undefined && kinds.includes(kind)))
      .map(({ look }) => look);
    here = { all, always: all.filter(({ bit }) => bit === always) };
    byKind.set(kind, here);
  }
  return here;
}

interface Looks {
  readonly all: readonly Look[];
  /** Those that are asked whatever was read. */
  readonly always: readonly Look[];
}

type Kind = Cell['kind'] | undefined;

const byKind = new Map<Kind, Looks>();

/** Those that compare cells. */
export const caseRules: readonly Comparison[] = allRules
  .filter(isCaseRule)
  .map((rule) => ({ check: rule.check, bit: bitOf(rule), reads: rule.reads }));

function isCaseRule(rule: Rule): rule is CaseRule {
  return 'check' in rule;
}

function lookOf(rule: Rule): Look {
  return {
    reading: 'checkReading' in rule ? rule.checkReading : undefined,
    moment: 'checkMoment' in rule ? rule.checkMoment : undefined,
    cell: 'checkCell' in rule ? rule.checkCell : undefined,
    bit: 'odd' in rule ? oddities[rule.odd] : bitOf(rule),
  };
}
