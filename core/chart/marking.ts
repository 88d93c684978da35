import { type Diagnostic, diagnose } from '../diagnostics/diagnostic.ts';
import { formatRange } from '../quantity/format.ts';
import type { QuantityType } from '../quantity/types.ts';
import type { Mark } from './chart.ts';
import type { Band, Rule } from './drawing.ts';
import { said, sameScale, shown, shownWidth, unitWords } from './measure.ts';
import { sayValue, unitOrNumber } from './sort.ts';

/** An axis that marks may stand on, with the unit that it is drawn in. */
export interface MarkAxis {
  readonly along: 'x' | 'y';
  readonly type: QuantityType;
  /** Where a number on the axis is not simply in the type's unit: minutes along a time in seconds. */
  readonly place?: (shown: number) => number;
}

/** Each mark on each axis that has its unit: a value as a hairline, a limit as a band, both with their numbers. */
export function marksOn(
  marks: readonly Mark[],
  axes: readonly MarkAxis[],
): readonly (readonly (Band | Rule)[])[] {
  return axes.map((axis) => marks.flatMap((mark) => drawn(mark, axis)));
}

/** What is said of marks that fit no axis. */
export function marksOff(marks: readonly Mark[], axes: readonly MarkAxis[]): readonly Diagnostic[] {
  return marks.flatMap((mark) => {
    const { value } = mark;
    if (value.kind === 'absent' || axes.some((axis) => drawn(mark, axis).length > 0)) return [];
    const is = 'type' in value ? `in ${unitOrNumber(value.type)}` : sayValue(value);
    const named = [...new Set(axes.map(({ type }) => unitOrNumber(type)))];
    return [diagnose('mark-not-on-chart', mark.span, { what: mark.text, is, axes: named })];
  });
}

function drawn(
  { label, value }: Mark,
  { along, type, place = (at) => at }: MarkAxis,
): readonly (Band | Rule)[] {
  const named = (numbers: string): string =>
    label === undefined || label === '' ? numbers : `${label}: ${numbers}`;
  const at = (si: number): number => place(shown(si, type));
  switch (value.kind) {
    case 'one': {
      if (!sameScale(value.type, type)) return [];
      const number = shown(value.amount.si, value.type);
      const says = named(said(number, unitWords(value.type), shownWidth(value.amount, value.type)));
      return [{ kind: 'rule', along, at: at(value.amount.si), says }];
    }
    case 'range': {
      if (!sameScale(value.type, type)) return [];
      const { low, high } = value;
      const says = named(formatRange(low?.si, high?.si, value.type));
      return [
        {
          kind: 'band',
          along,
          from: low === undefined ? undefined : at(low.si),
          to: high === undefined ? undefined : at(high.si),
          says,
        },
      ];
    }
    case 'members': {
      if (!sameScale(value.type, type)) return [];
      return [...value.members].flatMap(([name, amount]): Rule[] =>
        'si' in amount ? [{ kind: 'rule', along, at: at(amount.si), says: name }] : [],
      );
    }
    default:
      return [];
  }
}
