import type { Answer } from '../engine/obd/answer.ts';
import { rankOf } from '../engine/obd/chooseValues.ts';
import type { Decoded } from '../engine/obd/decodeObd.ts';
import { hex } from '../engine/obd/decodeParameter.ts';
import type { Item } from '../engine/obd/item.ts';
import { parameterRow } from '../engine/obd/parameterTable.ts';
import { hexOnTape } from '../engine/obd/tape.ts';
import { formatNumber } from '../quantity/format.ts';

/** What one controller says in a recording. */
export interface ControllerTable {
  /** Its id; '' where the recording has no headers. */
  readonly id: string;
  readonly rows: readonly AnswerRow[];
}

/** One thing that it says: the last value, its bytes, and how often it was given. */
export interface AnswerRow {
  readonly service: number;
  /** Of service 02: which freeze frame. */
  readonly frame: number | undefined;
  /** The signal's name, or its meaning where there is none. */
  readonly name: string;
  readonly meaning: string;
  readonly value: string;
  readonly unit: string;
  readonly bytes: string;
  readonly times: number;
}

interface Given extends Pick<AnswerRow, 'service' | 'frame'> {
  item: Item;
  times: number;
}

/** A recording as tables, a controller each, the engine's first; rows in the order in which they are first answered. */
export function answerTables({ answers, tape }: Decoded): readonly ControllerTable[] {
  const byId = new Map<string, Map<string, Given>>();
  for (const answer of answers) {
    const { id, service, frame } = answer;
    const rows = byId.get(id) ?? new Map<string, Given>();
    byId.set(id, rows);
    for (const item of shownItems(answer)) {
      const key = `${service} ${frame ?? ''} ${item.meaning}`;
      const known = rows.get(key);
      if (known === undefined) rows.set(key, { service, frame, item, times: 1 });
      else {
        known.item = item;
        known.times++;
      }
    }
  }
  return [...byId]
    .sort(([a], [b]) => rankOf(a) - rankOf(b))
    .map(([id, rows]) => ({
      id,
      rows: [...rows.values()].map(({ service, frame, item, times }) => ({
        service,
        frame,
        name: nameOf(item),
        meaning: item.meaning,
        ...itemWords(item),
        bytes: hexOnTape(tape, item.from, item.to),
        times,
      })),
    }));
}

/** What is not known here is shown by its bytes; codes have a list of their own. */
function shownItems({ service, parameter, items, from, to }: Answer): readonly Item[] {
  if (items.length > 0 || [3, 7, 10].includes(service)) return items;
  const meaning =
    service === 4
      ? 'codes and what was learned'
      : `service ${hex(service)}${parameter === undefined ? '' : `, ${hex(parameter)}`}`;
  // A parameter whose bits say that the vehicle has none of its values.
  const isKnown = service <= 2 && parameter !== undefined && parameterRow(parameter) !== undefined;
  const text = service === 4 ? 'cleared' : isKnown ? 'not supported' : 'not known here';
  return [{ meaning, signal: undefined, member: undefined, value: { is: 'words', text }, from, to }];
}

function nameOf({ signal, member, meaning }: Item): string {
  if (signal === undefined) return meaning;
  return member === undefined ? signal : `${signal}[${member}]`;
}

/** A value as far as its encoding shows it, with half a step for its ±: "750.00 ± 0.13". */
export function itemWords({ value }: Item): { readonly value: string; readonly unit: string } {
  switch (value.is) {
    case 'words':
      return { value: value.text, unit: '' };
    case 'absent':
      return { value: value.why, unit: '' };
    case 'number': {
      const half = value.step / 2;
      const plusMinus = half > 0 ? ` ± ${formatNumber(Number(half.toPrecision(2)))}` : '';
      const unit = value.unit === '1' ? '' : value.unit;
      const kind = ['absolute', 'gauge', 'difference'].includes(value.kind) ? ` ${value.kind}` : '';
      return { value: `${formatNumber(value.value, half)}${plusMinus}`, unit: `${unit}${kind}` };
    }
  }
}
