import type { ExpectedCase } from '../expectedCase.ts';
import { airInTheExhaust } from './airInTheExhaust.ts';
import { blockedExhaust } from './blockedExhaust.ts';
import { camToothLate } from './camToothLate.ts';
import { earlyThermostat } from './earlyThermostat.ts';
import { fuelInTheOil } from './fuelInTheOil.ts';
import { groundSideDrop } from './groundSideDrop.ts';
import { halfWorkedCase } from './halfWorkedCase.ts';
import { mirroringRearSensor } from './mirroringRearSensor.ts';
import { misreadAirFlow } from './misreadAirFlow.ts';
import { mountainBarometer } from './mountainBarometer.ts';
import { mountainRoad } from './mountainRoad.ts';
import { openTemperatureSensor } from './openTemperatureSensor.ts';
import { plenumLeak } from './plenumLeak.ts';
import { purgeThatNeverShuts } from './purgeThatNeverShuts.ts';
import { studentsFirstNotebook } from './studentsFirstNotebook.ts';
import { thirdThermostat } from './thirdThermostat.ts';
import { twoBanksTwoSensors } from './twoBanksTwoSensors.ts';
import { unitsWorkbook } from './unitsWorkbook.ts';
import { weakCylinder } from './weakCylinder.ts';
import { weakFuelSupply } from './weakFuelSupply.ts';
import { wornIntakeLobe } from './wornIntakeLobe.ts';

export const allCases: readonly ExpectedCase[] = [
  plenumLeak,
  mountainBarometer,
  earlyThermostat,
  blockedExhaust,
  fuelInTheOil,
  wornIntakeLobe,
  openTemperatureSensor,
  groundSideDrop,
  misreadAirFlow,
  weakFuelSupply,
  airInTheExhaust,
  thirdThermostat,
  mountainRoad,
  purgeThatNeverShuts,
  mirroringRearSensor,
  twoBanksTwoSensors,
  weakCylinder,
  camToothLate,
  halfWorkedCase,
  unitsWorkbook,
  studentsFirstNotebook,
];
