import { describe, expect, it } from 'vitest';
import { warmUp } from '../../../core/waveform/cooling/warmUp.ts';
import { waveformFunctions } from '../../../core/waveform/waveformFunctions.ts';
import { printed, result } from '../../support/expressionResult.ts';
import { reading, samples } from '../../support/expressionScope.ts';
import { disturbed } from '../../support/signal/signal.ts';
import { held, reaches, type WarmUp, warmUpCurve } from '../../support/signal/warmUpSignal.ts';
import { number, record } from '../signals.ts';

function read(of: WarmUp, noise = 0, seed = 1, seconds = 1500) {
  const { time, samples } = disturbed(warmUpCurve(of, seconds, 1), { noise, step: 1 }, seed);
  const found = warmUp(record(time, samples));
  if ('kind' in found) expect.fail(found.why);
  return found;
}

describe('a warm-up from a lumped heat balance', () => {
  it('the generator reaches a temperature when its closed form does', () => {
    const of = { outside: 25, opens: 95, heat: 7000 };
    const { time, samples } = warmUpCurve(of, 1500, 1);
    const at = samples.findIndex((each) => each >= 80);
    expect(Math.abs((time[at] ?? 0) - reaches(of, 80))).toBeLessThan(1);
  });

  const grid = [65, 71, 82, 90].flatMap((opens) =>
    [5000, 7000, 10_000].flatMap((heat) => [2, 5, 10].map((range) => ({ opens, heat, range }))),
  );
  it.each(grid)('opens at $opens °C over $range K with $heat W', ({ opens, heat, range }) => {
    const of = { outside: 25, opens, heat, range };
    for (const noise of [0, 0.3]) {
      for (let seed = 1; seed <= 3; seed++) {
        const found = read(of, noise, seed, 1.8 * reaches(of, opens) + 300);
        // Steps of 1 K; a thermostat that opens over ten kelvin breaks the curve within the first of them.
        expect(number(found.opening) - opens).toBeGreaterThan(-1);
        expect(number(found.opening) - opens).toBeLessThan(0.9 + range / 4);
        expect(Math.abs(found.regulating - held(of))).toBeLessThan(1);
        expect(Math.abs(number(found.openingTime) - reaches(of, opens))).toBeLessThan(45);
        expect(number(found.regulatingTime)).toBeLessThanOrEqual(number(found.openingTime) + 10);
      }
    }
  });

  it.each([0.2, 0.3, 0.5])('a thermostat that stands open by %f has no break', (stuck) => {
    for (let seed = 1; seed <= 5; seed++)
      expect(read({ outside: 25, opens: 82, heat: 7000, stuck }, 0.3, seed).opening).toMatchObject({
        why: expect.stringMatching(/no break/),
      });
  });

  it('a record that ends on the climb has no break', () => {
    for (let seed = 1; seed <= 5; seed++)
      expect(read({ outside: 25, opens: 82, heat: 7000 }, 0.3, seed, 450).opening).toMatchObject({
        kind: 'absent',
      });
  });

  it('no warm-up, too short, too few', () => {
    const time = [...Array(900).keys()];
    expect(
      warmUp(
        record(
          time,
          time.map(() => 363),
        ),
      ),
    ).toMatchObject({ why: expect.stringMatching(/hardly gets warmer/) });
    expect(warmUp(record([0, 1], [300, 350]))).toMatchObject({ why: expect.stringMatching(/minutes/) });
    expect(warmUp(record([0, 100, 200, 300], [300, 320, 340, 363]))).toMatchObject({
      why: expect.stringMatching(/too few/),
    });
  });
});

describe('against the thermostat’s rating', () => {
  const verdict = (of: WarmUp, seconds = 1500) => {
    const { time, samples: values } = disturbed(warmUpCurve(of, seconds, 1), { noise: 0.2, step: 1 }, 2);
    const names = { 'log.ect': samples('log', '°C', [...time], [...values]) };
    const header = { 'engine.thermostat': reading('82 °C') };
    const { value, diagnostics } = result('warm_up(log.ect).verdict', {
      names,
      header,
      functions: waveformFunctions(),
    });
    expect(diagnostics).toEqual([]);
    return printed(value);
  };

  it.each([
    [{ outside: 25, opens: 82, heat: 7000 }, 'holds its rating'],
    [{ outside: 25, opens: 80, heat: 7000 }, 'holds its rating'],
    [{ outside: 25, opens: 74, heat: 7000 }, 'opens early'],
    [{ outside: 25, opens: 65, heat: 7000 }, 'stays cold'],
    [{ outside: 25, opens: 82, heat: 7000, stuck: 0.5 }, 'stays cold'],
    [{ outside: 25, opens: 94, heat: 7000 }, 'runs hot'],
  ])('%j: %s', (of, word) => {
    expect(verdict(of)).toBe(word);
  });

  it('after five minutes it is too early to say that it stays cold', () => {
    expect(verdict({ outside: 25, opens: 82, heat: 7000, stuck: 0.3 }, 300)).toMatch(/less than ten minutes/);
  });

  it('without a rating there is no verdict, and the rest is there', () => {
    const { time, samples: values } = warmUpCurve({ outside: 25, opens: 82, heat: 7000 }, 1500, 1);
    const names = { 'log.ect': samples('log', '°C', [...time], [...values]) };
    const of = (field: string) =>
      printed(result(`warm_up(log.ect).${field}`, { names, functions: waveformFunctions() }).value);
    expect(of('verdict')).toMatch(/rating is not known/);
    expect(of('start')).toMatch(/°C$/);
  });
});
