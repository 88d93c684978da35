import { describe, expect, it } from 'vitest';
import { signature } from '../../core/service/signature.ts';
import { atCursor } from './cursor.ts';

/** The signature at `$0` with the parameter that is due between « and ». */
function checkSignature(expression: string, shown: string | undefined): void {
  const { study, cell, offset } = atCursor(`check: A\nlet:\n  a: ${expression}\n`);
  const found = signature(study, cell, offset);
  const active = found?.active === undefined ? undefined : found.parameters[found.active]?.span;
  const label = found?.label;
  expect(
    label === undefined || active === undefined
      ? label
      : `${label.slice(0, active.start)}«${label.slice(active.start, active.end)}»${label.slice(active.end)}`,
  ).toBe(shown);
}

describe('signature help', () => {
  it('marks the parameter that is due', () => {
    checkSignature('total_trim($0', 'total_trim(«stft», ltft)');
    checkSignature('total_trim(1 %, $0', 'total_trim(stft, «ltft»)');
    checkSignature('total_trim(1 %, 2 %$0)', 'total_trim(stft, «ltft»)');
  });

  it('follows a parameter’s name', () => {
    checkSignature('total_trim(ltft = $0', 'total_trim(stft, «ltft»)');
  });

  it('marks none where there are too many arguments, and the last where it repeats', () => {
    checkSignature('total_trim(1 %, 2 %, $0', 'total_trim(stft, ltft)');
    checkSignature('min(1, 2, 3, $0', 'min(«x, …»)');
  });

  it('is that of the innermost call', () => {
    checkSignature('total_trim(min(1 %, 2 %$0), 3 %)', 'min(«x, …»)');
    checkSignature('total_trim(min(1 %, 2 %), $0', 'total_trim(stft, «ltft»)');
    checkSignature('total_trim((1 % + $0', 'total_trim(«stft», ltft)');
  });

  it('does not count commas and brackets in texts', () => {
    checkSignature('wire_drop("2, (AWG", $0', 'wire_drop(size, «length», current, [temperature])');
  });

  it('is silent outside of calls, behind them, and in calls of no function', () => {
    checkSignature('1 + $02', undefined);
    checkSignature('total_trim(1 %, 2 %) $0', undefined);
    checkSignature('no_such($0', undefined);
    const { study, cell, offset } = atCursor('test: A\ndid: total_trim($0\n');
    expect(signature(study, cell, offset)).toBeUndefined();
  });

  it('says what a parameter takes, and where it comes from when it is left out', () => {
    const { study, cell, offset } = atCursor('check: A\nlet:\n  a: station_pressure($0\n');
    const found = signature(study, cell, offset);
    expect(found?.parameters[0]?.markdown).toContain('**sea\\_level\\_pressure**');
    expect(found?.parameters[0]?.markdown).toContain('takes ');
  });
});
