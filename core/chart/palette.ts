/**
 * The colours of charts. Text, axes and the first line are in the page's own ink; two more tones tell lines apart
 * together with their dashes and labels, never alone. Written as variables, so that a drawing follows its page's theme.
 */
export const tones = ['ink', 'second', 'third'] as const;
export type Tone = (typeof tones)[number];

/** Axes and remarks, and the shade behind a limit. */
export type Quiet = 'soft' | 'hair' | 'shade';

export const themeNames = ['light', 'dark', 'high contrast', 'high contrast light'] as const;
export type ThemeName = (typeof themeNames)[number];

export type Colours = Readonly<Record<Tone | Quiet, string>>;

/**
 * Each theme's own colours, made for backgrounds up to the tested ones (`test/chart/palette.test.ts` holds contrast and
 * what is left of the differences for readers who see few colours).
 */
export const palette: Readonly<Record<ThemeName, Colours>> = {
  light: {
    ink: '#1d1c19',
    second: '#2363b0',
    third: '#a8480f',
    soft: '#5c5a54',
    hair: '#a9a69d',
    shade: '#e7e5de',
  },
  dark: {
    ink: '#e4e2dc',
    second: '#6fb1f2',
    third: '#eda25f',
    soft: '#a8a69f',
    hair: '#6a6964',
    shade: '#343431',
  },
  'high contrast': {
    ink: '#ffffff',
    second: '#8cc8ff',
    third: '#ffb877',
    soft: '#ffffff',
    hair: '#9a9a9a',
    shade: '#2e2e2e',
  },
  'high contrast light': {
    ink: '#111111',
    second: '#0b4a95',
    third: '#7a2e00',
    soft: '#292929',
    hair: '#6b6b6b',
    shade: '#eaeaea',
  },
};

/** The dash that goes with a tone, in pixels: lines differ without their colours. */
export const dashes: Readonly<Record<Tone, readonly number[]>> = {
  ink: [],
  second: [7, 3],
  third: [2, 2.5],
};

/** The dot that goes with a tone: sets of dots differ without their colours, too. */
export const shapeAt = (place: number): 'filled' | 'open' | 'square' =>
  shapes[place % shapes.length] ?? 'filled';

const shapes = ['filled', 'open', 'square'] as const;

export const toneAt = (place: number): Tone => tones[place % tones.length] ?? 'ink';

/** As a drawing names it. */
export const colourOf = (name: Tone | Quiet): string => `var(--chart-${name})`;

/** The declarations of a theme's colours, for a rule of a style sheet. */
export function declarations(theme: ThemeName): string {
  return Object.entries(palette[theme])
    .map(([name, colour]) => `--chart-${name}: ${colour};`)
    .join(' ');
}
