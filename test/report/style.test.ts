import { describe, expect, it } from 'vitest';
import { style } from '../../core/report/html/style.ts';
import { tableStyle } from '../../core/report/markup/tableStyle.ts';
import { style as editorStyle } from '../../extension/renderer/style.ts';

/** The colours of a scheme by name, from its `:root` rule. */
function colours(rule: string): Map<string, string> {
  return new Map(
    [...rule.matchAll(/--([a-z]+): (#[0-9a-f]{3,6})/g)].map((match) => [match[1] ?? '', match[2] ?? '']),
  );
}

/** Relative luminance and contrast as in WCAG 2.2, https://www.w3.org/TR/WCAG22/#dfn-contrast-ratio */
function luminance(colour: string): number {
  const digits = colour.slice(1).length === 3 ? colour.slice(1).replace(/./g, '$&$&') : colour.slice(1);
  const [red = 0, green = 0, blue = 0] = [0, 2, 4].map((at) => {
    const share = Number.parseInt(digits.slice(at, at + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

function contrast(a: string, b: string): number {
  const [dark = 0, light = 0] = [luminance(a), luminance(b)].sort((x, y) => x - y);
  return (light + 0.05) / (dark + 0.05);
}

const roots = [...style.matchAll(/:root \{(.*?)\}/gs)].map((match) => colours(match[1] ?? ''));

describe('the colours of a report', () => {
  it('are there for light, dark and paper', () => {
    expect(roots).toHaveLength(3);
  });

  it('measure as the standard’s own example: black on white is 21 to 1', () => {
    expect(contrast('#000', '#fff')).toBeCloseTo(21, 9);
  });

  it.each([0, 1, 2])('stand out from their ground by 4.5 to 1 or more, scheme %d', (scheme) => {
    const of = roots[scheme] ?? new Map<string, string>();
    for (const ink of ['ink', 'soft', 'link', 'alarm']) {
      for (const ground of ['paper', 'tint']) {
        expect
          .soft(contrast(of.get(ink) ?? '#fff', of.get(ground) ?? '#fff'), `${ink} on ${ground}`)
          .toBeGreaterThanOrEqual(4.5);
      }
    }
  });
});

describe('the tables of the report and of the editor', () => {
  const variables = [...tableStyle.matchAll(/var\((--\w+)\)/g)].map(([, name = '']) => name);

  it.each([
    ['report', style],
    ['editor', editorStyle],
  ])('are set by the same rules, with what they leave open said: %s', (_, whole) => {
    expect(whole).toContain(tableStyle);
    expect(variables.length).toBeGreaterThan(10);
    for (const name of variables) expect(whole.replace(tableStyle, '')).toContain(`${name}: `);
    // No rule beside them speaks of a table's parts, but for its size and its place on the page.
    expect(whole.replace(tableStyle, '')).not.toMatch(/(^|[\s,}])(t[hd]\b|thead|tbody|caption)[^{};]*\{/m);
  });
});
