import { describe, expect, it } from 'vitest';
import { declarations, palette, shapeAt, themeNames, tones } from '../../core/chart/palette.ts';
import { style } from '../../core/report/html/style.ts';
import { themes } from '../renderer/themes.ts';

/** Linear red, green and blue, 0 to 1 (IEC 61966-2-1). */
type Rgb = readonly [number, number, number];

function linear(hex: string): Rgb {
  const part = (at: number): number => {
    const value = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
  };
  return [part(1), part(3), part(5)];
}

/** Relative luminance and contrast ratio, WCAG 2.2. */
const luminance = ([r, g, b]: Rgb): number => 0.2126 * r + 0.7152 * g + 0.0722 * b;

function contrast(a: string, b: string): number {
  const [x, y] = [luminance(linear(a)), luminance(linear(b))];
  return (Math.max(x, y) + 0.05) / (Math.min(x, y) + 0.05);
}

/**
 * What is left of a colour for readers who lack one sort of cone: matrices at full severity of Machado, Oliveira and
 * Fernandes, "A Physiologically-based Model for Simulation of Color Vision Deficiency", IEEE Transactions on
 * Visualization and Computer Graphics 15 (2009) 1291–1298 (values from memory), on linear values.
 */
const deficiencies: Readonly<Record<string, readonly [Rgb, Rgb, Rgb]>> = {
  none: [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ],
  protanopia: [
    [0.152286, 1.052583, -0.204868],
    [0.114503, 0.786281, 0.099216],
    [-0.003882, -0.048116, 1.051998],
  ],
  deuteranopia: [
    [0.367322, 0.860646, -0.227968],
    [0.280085, 0.672501, 0.047413],
    [-0.01182, 0.04294, 0.968881],
  ],
  tritanopia: [
    [1.255528, -0.076749, -0.178779],
    [-0.078411, 0.930809, 0.147602],
    [0.004733, 0.691367, 0.3039],
  ],
};

function seenAs(hex: string, deficiency: string): Rgb {
  const colour = linear(hex);
  const rows = deficiencies[deficiency] ?? [];
  const [r = 0, g = 0, b = 0] = rows.map((row) =>
    Math.min(1, Math.max(0, row[0] * colour[0] + row[1] * colour[1] + row[2] * colour[2])),
  );
  return [r, g, b];
}

/** CIE 1976 L*a*b*, from linear sRGB with the D65 white point (IEC 61966-2-1, CIE 15). */
function lab([r, g, b]: Rgb): Rgb {
  const f = (t: number): number => (t > (6 / 29) ** 3 ? Math.cbrt(t) : t / (3 * (6 / 29) ** 2) + 4 / 29);
  const x = f((0.4124 * r + 0.3576 * g + 0.1805 * b) / 0.9505);
  const y = f(0.2126 * r + 0.7152 * g + 0.0722 * b);
  const z = f((0.0193 * r + 0.1192 * g + 0.9505 * b) / 1.089);
  return [116 * y - 16, 500 * (x - y), 200 * (y - z)];
}

function difference(a: string, b: string, deficiency: string): number {
  const [p, q] = [lab(seenAs(a, deficiency)), lab(seenAs(b, deficiency))];
  return Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2]);
}

/** Where the colours of each theme are drawn: the report's paper, hovers, and the editor's own backgrounds. */
const grounds: Readonly<Record<(typeof themeNames)[number], readonly string[]>> = {
  light: ['#ffffff', '#fdfcf8', themes.light.variables['--vscode-editor-background']],
  dark: [
    '#1b1a17',
    themes.dark.variables['--vscode-editor-background'],
    themes['dark modern'].variables['--vscode-editor-background'],
  ],
  'high contrast': [themes['high contrast'].variables['--vscode-editor-background']],
  'high contrast light': [themes['high contrast light'].variables['--vscode-editor-background']],
};

describe.each(themeNames)('the colours in %s', (theme) => {
  const colours = palette[theme];
  const texts = [...tones, 'soft'] as const;
  const least = theme.startsWith('high contrast') ? 7 : 4.5;

  it('are read on their grounds and on the shade of a limit', () => {
    for (const ground of [...grounds[theme], colours.shade]) {
      for (const name of texts) {
        expect(contrast(colours[name], ground), `${name} on ${ground}`).toBeGreaterThanOrEqual(least);
      }
    }
  });

  it('show the limit’s shade against the ground, without shouting', () => {
    for (const ground of grounds[theme]) {
      const of = contrast(colours.shade, ground);
      expect(of, ground).toBeGreaterThan(1.15);
      expect(of, ground).toBeLessThan(2);
    }
  });

  it.each(Object.keys(deficiencies))('differ from each other for a reader with %s', (deficiency) => {
    for (const [at, a] of tones.entries()) {
      for (const b of tones.slice(at + 1)) {
        // Ten just noticeable differences (about 2.3 each: Mahy, Van Eycken and Oosterlinck 1994).
        expect(difference(colours[a], colours[b], deficiency), `${a} and ${b}`).toBeGreaterThan(23);
      }
    }
  });

  it('are all declared', () => {
    for (const [name, colour] of Object.entries(colours)) {
      expect(declarations(theme)).toContain(`--chart-${name}: ${colour};`);
    }
  });
});

describe('the simulation', () => {
  it('finds colours that look alike to some readers', () => {
    // A red and a green of one lightness: told apart with all cones, not without one.
    expect(difference('#b35900', '#5c7d00', 'none')).toBeGreaterThan(40);
    expect(difference('#b35900', '#5c7d00', 'deuteranopia')).toBeLessThan(15);
  });

  it('leaves white and black as they are', () => {
    for (const each of Object.keys(deficiencies)) {
      for (const part of seenAs('#ffffff', each)) expect(part).toBeCloseTo(1, 2);
      expect(seenAs('#000000', each)).toEqual([0, 0, 0]);
    }
  });

  it('computes contrast as WCAG does', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 9);
    expect(contrast('#777777', '#ffffff')).toBeCloseTo(4.48, 2);
  });
});

describe('the report', () => {
  it('declares the light colours, the dark ones where asked, and the light ones in print', () => {
    expect(style.split(declarations('light')).length - 1).toBe(2);
    expect(style.split(declarations('dark')).length - 1).toBe(1);
  });
});

describe('dots', () => {
  it('of three sets differ without their colours', () => {
    expect([0, 1, 2, 3].map(shapeAt)).toEqual(['filled', 'open', 'square', 'filled']);
    expect(new Set(tones.map((_, at) => shapeAt(at))).size).toBe(tones.length);
  });
});
