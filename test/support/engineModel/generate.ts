import { soundCar, withFault } from './carFaults.ts';
import { caseText } from './caseText.ts';
import { chanceOf } from './chance.ts';
import { drawEngine, type Engine } from './engine.ts';
import type { Fault } from './fault.ts';
import { faults, type OneFault } from './faults.ts';
import { drawHistory } from './history.ts';
import { drawInstruments, type Instruments } from './instruments.ts';
import { operate, type Point } from './operation.ts';
import { oxygenTrace } from './oxygenTrace.ts';
import { analysed, type Shown, scanned } from './readings.ts';

/** A synthetic engine, measured and written down. */
export interface Generated {
  readonly engine: Engine;
  readonly instruments: Instruments;
  /** What is true, state by state, and what the scan data show of it. */
  readonly points: readonly Point[];
  readonly scans: readonly Shown[];
  /** The `.diag` text. */
  readonly text: string;
}

/** The engine of a seed, sound or with one fault. The same seed gives the same text. */
export function generate(seed: number, fault?: OneFault): Generated {
  const chance = chanceOf(seed);
  const row: Fault | undefined = faults.find(({ name }) => name === fault?.name);
  const altitudes = altitudesFor(fault, row);
  const engine = drawEngine(chance, row?.given, altitudes);
  const car = withFault(soundCar(engine, chance), engine, fault);
  const points = operate(engine, car, chance);
  const instruments = withErrorOf(drawInstruments(chance), fault);
  const hasMap = engine.metering !== 'air flow' || chance.happens(0.6);
  const scans = points.map((point) => scanned(point, engine, car, instruments, fault, chance, hasMap));
  const idle = points.find(({ state }) => state === 'warm idle');
  const wantsGas = chance.happens(0.4) || fault?.name === 'front sensor sees lean: exhaust leak before it';
  const gas = idle !== undefined && wantsGas ? analysed(idle, engine, instruments) : undefined;
  const dead = fault?.name === 'catalyst stores no oxygen' ? fault.size / 100 : undefined;
  const wantsTrace = engine.frontSensor === 'zirconia' && (dead !== undefined || chance.happens(0.3));
  const trace = wantsTrace ? oxygenTrace(chance, dead ?? chance.between(0.02, 0.25)) : undefined;
  const history = drawHistory(fault, chance);
  const text = caseText({ engine, instruments, history, points, scans, gas, trace }, fault, chance);
  return { engine, instruments, points, scans, text };
}

/** Sensors that are off wherever they are read; a circuit that fails ends at the end of its scale. */
function withErrorOf(instruments: Instruments, fault: OneFault | undefined): Instruments {
  switch (fault?.name) {
    case 'intake air sensor reads cold':
      return { ...instruments, iat: instruments.iat - fault.size };
    case 'circuit of the intake air sensor open':
      return { ...instruments, iat: -beyondScale };
    case 'circuit of the coolant sensor shorted':
      return { ...instruments, ect: beyondScale };
    default:
      return instruments;
  }
}

/** K */
const beyondScale = 1000;

/** The weather report is told from the barometer by the altitude, which is that slip's size. */
function altitudesFor(
  fault: OneFault | undefined,
  row: Fault | undefined,
): readonly [number, number] | undefined {
  if (fault?.name === 'weather report taken for the barometer') return [fault.size, fault.size * 1.02];
  return row?.altitudes;
}
