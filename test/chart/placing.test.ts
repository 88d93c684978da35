import { describe, expect, it } from 'vitest';
import { placeBeside } from '../../core/chart/placing.ts';

const frame = { width: 400, height: 200 };
const point = { x: 200, y: 100, reach: 0, text: 'fast' };

describe('a text beside its point', () => {
  it('stands above it where nothing is', () => {
    expect(placeBeside([point], frame, 11)).toEqual([{ x: 200, y: 89, align: 'center', text: 'fast' }]);
  });

  it('covers no line that comes from above or goes on below', () => {
    const falling = [
      { x: 100, y: 0 },
      { x: 200, y: 100 },
      { x: 300, y: 200 },
    ];
    const [placed] = placeBeside([point], frame, 11, [falling]);
    expect(placed).toMatchObject({ x: 208, y: 100, align: 'left' });
    const level = [...falling.slice(0, 2), { x: 300, y: 100 }];
    expect(placeBeside([point], frame, 11, [level])[0]).toMatchObject({ y: 111, align: 'center' });
  });

  it('knows nothing of a line that is broken there', () => {
    const broken = [
      { x: 100, y: 0 },
      { x: 200, y: Number.NaN },
      { x: 300, y: 200 },
    ];
    expect(placeBeside([point], frame, 11, [broken])[0]).toMatchObject({ y: 89, align: 'center' });
  });

  it('covers a line before it covers a text', () => {
    const net = [20, 40, 60, 80, 100, 120, 140, 160, 180].map((y) => [
      { x: 0, y },
      { x: 400, y: y + 3 },
    ]);
    const [first, second] = placeBeside([point, { ...point, x: 201, text: 'idle' }], frame, 11, net);
    expect(first).toMatchObject({ y: 89 });
    expect(second).toMatchObject({ y: 111 });
  });
});
