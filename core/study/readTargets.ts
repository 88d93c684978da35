import type { Call } from '../expression/tree.ts';
import type { Barometer } from './barometer.ts';
import { functionRow } from './functions.ts';
import type { Named } from './names.ts';
import { roleOf } from './scope.ts';
import type { Surroundings } from './surroundings.ts';
import type { Reading } from './types.ts';

/** Everything that an expression's result depends on beside its own text: the same objects give the same result. */
export function readTargets(
  named: readonly Named[],
  around: Surroundings,
  calls: readonly Call[],
  barometer: Barometer | undefined,
): unknown[] {
  const targets: unknown[] = [];
  for (const each of named) {
    switch (each.kind) {
      case 'reading':
        targets.push(...whatMatters(each.reading), each.used);
        break;
      case 'states':
        for (const reading of each.readings.values()) targets.push(...whatMatters(reading));
        targets.push(each.fullName);
        break;
      case 'definition':
        targets.push(around.done.get(each.definition.id) ?? each.definition.id);
        break;
      case 'not measured':
        targets.push(each.fullName, each.signal);
        break;
      case 'problem':
        targets.push(JSON.stringify([each.diagnostic.code, each.diagnostic.facts]));
        break;
    }
  }
  for (const call of calls) {
    for (const { header } of functionRow(call.name)?.parameters ?? []) {
      if (header !== undefined) targets.push(around.header.values.get(header)?.value);
    }
  }
  if (barometer !== undefined) {
    const { value } = barometer;
    targets.push(value.kind === 'one' ? value.amount.si : value.why, barometer.from.join());
    targets.push(value.kind === 'one' ? JSON.stringify(value.amount.spread) : '');
  }
  return targets;
}

/** All of a reading that a result can depend on; its place in the file is none of it. */
function whatMatters(reading: Reading): readonly unknown[] {
  return [reading.fullName, reading.value, reading.type.kind, roleOf(reading)];
}

export function sameTargets(a: readonly unknown[], b: readonly unknown[]): boolean {
  return a.length === b.length && a.every((each, i) => Object.is(each, b[i]));
}
