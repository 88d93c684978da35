import { describe, expect, it } from 'vitest';
import { completions } from '../../core/service/completion.ts';
import { hover } from '../../core/service/hover.ts';
import { renamable } from '../../core/service/rename.ts';
import { atCursor } from './cursor.ts';

/** A capture of the pressure in a cylinder, too short to read anything off. */
const snap = `capture: Cylinder 1
as: snap
time: t
channels:
  pressure: {unit: kPa gauge}
rows: |
  t, pressure
  0, 1
  1, 2
---
check: Events
as: own
let:
  events: valve_events(snap.pressure)
expect:
`;

const labelsAt = (source: string) => {
  const { study, cell, offset } = atCursor(source);
  return [...completions(study, cell, offset).items]
    .sort((a, b) => a.rank - b.rank)
    .map(({ label, detail }) => `${label} ${detail}`);
};

function hoverAt(source: string): string {
  const { study, cell, offset } = atCursor(source);
  return hover(study, cell, offset)?.markdown ?? '';
}

describe('the values that a result has by name', () => {
  it('are offered behind the point of a computed name, with their meaning', () => {
    expect(labelsAt(`${snap}  - events.$0`).slice(0, 3)).toEqual([
      expect.stringMatching(/^evo the exhaust valve opens/),
      expect.stringMatching(/^evc the exhaust valve closes/),
      expect.stringMatching(/^ivo the intake valve opens/),
    ]);
    expect(labelsAt(`${snap}  - own.events.ov$0`)[0]).toMatch(/evo|overlap/);
  });

  it('are offered behind the point of the call itself', () => {
    expect(labelsAt(`${snap}  - valve_events(max(snap.pressure), "a)").$0`)[0]).toMatch(/^evo /);
    expect(labelsAt(`${snap}  - valve_events(snap.pressure).iv$0`)).toHaveLength(10);
    expect(labelsAt(`${snap}  - max(snap.pressure).$0`)).toEqual([]);
  });

  it('say in a hover what they are', () => {
    expect(hoverAt(`${snap}  - events.e$0vo > 20 °BBDC`)).toMatch(
      /^\*\*`events\.evo`\*\* the exhaust valve opens/,
    );
    expect(hoverAt(`${snap}  - valve_events(snap.pressure).over$0lap > 20 °CA`)).toMatch(
      /^\*\*`valve_events\.overlap`\*\* crank angle with both valves open/,
    );
  });

  it('keep their names', () => {
    const { study, cell, offset } = atCursor(`${snap}  - events.e$0vo > 20 °BBDC`);
    expect(renamable(study, cell, offset)).toEqual({
      refused: '`evo` is one of the values that a function gives: it keeps its name.',
    });
  });
});
