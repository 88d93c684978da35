import type { Caution } from '../expression/cautions.ts';
import type { Environment } from '../expression/scope.ts';
import type { Apply } from '../expression/typed.ts';
import { barometerOf } from './barometerOf.ts';
import { type Conversion, conversionsWith, type FindBarometer, sameConversions } from './conversions.ts';
import type { Named } from './names.ts';
import type { Surroundings } from './surroundings.ts';
import { type View, viewOf } from './view.ts';

/** What an expression needed beside what it names: barometers for its conversions, and header values that functions lacked. */
export interface Supplies {
  /** All of them, in the order of their first use. */
  readonly supplied: readonly string[];
  /** The readings that conversions, not functions, used as the barometer, here or in a name that is used here. */
  readonly barometer: readonly string[];
  /** The header values that functions lacked, here or in a name that is used here. */
  readonly header: readonly string[];
  /** The conversions here, and the functions that lacked a barometer, each with the one that it used. */
  readonly conversions: readonly Conversion[];
  /** The calls here that lacked a header value. */
  readonly fromHeader: readonly FromHeader[];
  /** What has to be said of calls here. */
  readonly cautions: readonly Told[];
}

/** A caution, and the call that it is about. */
export interface Told {
  readonly call: Apply;
  readonly caution: Caution;
}

export interface FromHeader {
  readonly name: string;
  readonly call: Apply;
}

/** What an expression is evaluated with, noting what it is supplied with on the way; asked for when that is done. */
export function supplying(
  cell: number,
  named: readonly Named[],
  around: Surroundings,
): { readonly environment: Environment; readonly supplies: () => Supplies } {
  const supplied = new Set<string>();
  const barometer = new Set<string>();
  const header = new Set<string>();
  const fromHeader: FromHeader[] = [];
  const cautions: Told[] = [];
  const takeOver = (each: Named | undefined): void => {
    const done = each?.kind === 'definition' ? around.done.get(each.definition.id) : undefined;
    if (done === undefined) return;
    for (const name of done.supplied) supplied.add(name);
    for (const name of done.barometer) barometer.add(name);
    for (const name of done.header) header.add(name);
  };
  const { view, find, conversions } = openView(cell, named, around);
  const environment: Environment = {
    value: (id) => {
      takeOver(view.named.get(id));
      return view.environment.value(id);
    },
    header: (name, call) => {
      supplied.add(name);
      header.add(name);
      fromHeader.push({ name, call });
      return view.environment.header(name, call);
    },
    barometer: (node, state) => {
      const found = find(node, state);
      for (const name of found.from) {
        supplied.add(name);
        if (node.kind === 'convert') barometer.add(name);
      }
      return found.value;
    },
    caution: (call, caution) => cautions.push({ call, caution }),
  };
  return {
    environment,
    supplies: () => {
      // What was named and not computed, such as the other branch of a choice, stands behind it all the same.
      for (const each of named) takeOver(each);
      return {
        supplied: [...supplied],
        barometer: [...barometer],
        header: [...header],
        conversions: conversions(),
        fromHeader,
        cautions,
      };
    },
  };
}

/** Whether the conversions of an earlier evaluation would use the same barometers now. */
export function barometersAreSame(
  before: readonly Conversion[],
  cell: number,
  named: readonly Named[],
  around: Surroundings,
): boolean {
  return before.length === 0 || sameConversions(before, openView(cell, named, around).find);
}

function openView(
  cell: number,
  named: readonly Named[],
  around: Surroundings,
): {
  readonly view: View;
  readonly find: FindBarometer;
  readonly conversions: () => readonly Conversion[];
} {
  const { barometer: find, all } = conversionsWith((node, state) => barometerOf(node, state, view, around));
  const view = viewOf(cell, named, around, (node, state) => find(node, state).value);
  return { view, find, conversions: all };
}
