import { describe, expect, it } from 'vitest';
import { engineStates, nearestStates, stateOf } from '../../core/signals/states.ts';

describe('the engine states', () => {
  it('are those that the trade has names for', () => {
    expect(engineStates.map(({ name }) => name)).toEqual([
      'key off',
      'asleep',
      'key on engine off',
      'cranking',
      'cold start',
      'cold idle',
      'warm idle',
      'idle in gear',
      '1500 rpm no load',
      '2500 rpm no load',
      'light cruise',
      'cruise',
      'heavy load',
      'wide open throttle',
      'snap throttle',
      'tip-in',
      'deceleration',
      'running compression',
      'cold soak',
      'hot soak',
      'after shut-down',
      'road test',
    ]);
  });

  it('are found by exactly their name', () => {
    expect(stateOf('warm idle')?.engine).toBe('running');
    expect(stateOf('Warm idle')).toBeUndefined();
    expect(stateOf('bench')).toBeUndefined();
    expect(stateOf('__proto__')).toBeUndefined();
  });

  it('have the ignition on whenever the engine turns', () => {
    const turning = engineStates.filter(({ engine }) => engine === 'running' || engine === 'cranking');
    expect(turning.filter(({ ignition }) => ignition !== 'on')).toEqual([]);
    expect(turning.length).toBeGreaterThan(10);
  });
});

describe('the state that a name may have meant', () => {
  const rows: readonly (readonly [string, string])[] = [
    ['KOEO', 'key on engine off'],
    ['koeo', 'key on engine off'],
    ['key on, engine off', 'key on engine off'],
    ['WOT', 'wide open throttle'],
    ['hot idle', 'warm idle'],
    ['warm  idle', 'warm idle'],
    ['Warm Idle', 'warm idle'],
    ['decel', 'deceleration'],
    ['2500 rpm', '2500 rpm no load'],
    ['after shutdown', 'after shut-down'],
    ['crankin', 'cranking'],
  ];
  it.each(rows)('%s: %s', (written, meant) => {
    expect(nearestStates(written)[0]).toBe(meant);
  });

  it('is not the name itself, and nothing where nothing is near', () => {
    expect(nearestStates('warm idle')).not.toContain('warm idle');
    expect(nearestStates('bench')).toEqual([]);
  });

  it('leads from every other word to its state', () => {
    const lost = engineStates.flatMap(({ name, alsoCalled = [] }) =>
      alsoCalled.filter((word) => nearestStates(word)[0] !== name),
    );
    expect(lost).toEqual([]);
  });
});
