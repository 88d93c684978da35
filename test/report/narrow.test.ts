import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { ReportCase } from '../../core/report/casePage.ts';
import { writeReport } from '../../core/report/html/report.ts';
import { checkCase } from '../../core/rules/checkCase.ts';
import { openBrowser } from '../editor/harness/openBrowser.ts';
import { samples } from '../support/samples.ts';

const long = 'a'.repeat(60);
const wide = `diag: 1
case: Long words ${long}${long}
vehicle:
  description: van
  note: ${long}${long}
---
note: |
  ## A heading

  A sentence with \`${long}${long}\` in it.

      ${long}${long}
---
# A comment that is long ${long}${long}
readings: Loads
as: ${long}
states:
  one: warm idle
  two: 2500 rpm no load
  three: cruise
  four: heavy load
table: |
  reading  one   two   three  four  unit
  map      10.1  9.8   17.0   27.0  inHg
---
check: Sum
let:
  ${long}: ${long}.one.map + ${long}.two.map - ${long}.three.map
expect:
  - ${long}.one.map + ${long}.two.map - ${long}.three.map > ${long}.four.map
---
found: ] ${long}${long}${long}
`;

const caseOf = (text: string, file: string): ReportCase => ({
  study: checkCase(text),
  file,
  pictures: () => undefined,
});

describe('a report on a small screen', () => {
  let browser: Browser;
  let page: Page;
  beforeAll(async () => {
    browser = await openBrowser();
    page = await browser.newPage();
  }, 60_000);
  afterAll(async () => {
    await browser?.close();
  });

  const scrolled = async (html: string, width: number): Promise<number> => {
    await page.setViewportSize({ width, height: 740 });
    await page.setContent(html);
    return page.evaluate<number>(
      'document.documentElement.scrollWidth - document.documentElement.clientWidth',
    );
  };

  it.each([360, 480, 800])('does not scroll sideways at %d px, with all samples in it', async (width) => {
    const html = writeReport([...samples].map(([file, text]) => caseOf(text, file)));
    expect(await scrolled(html, width)).toBe(0);
  });

  it.each([360, 480])('breaks long words and expressions at %d px', async (width) => {
    expect(await scrolled(writeReport([caseOf(wide, 'wide.diag')]), width)).toBe(0);
  });

  it.each([1, 2])('sets a note’s heading no larger than a cell’s title, with %d cases', async (count) => {
    const both = caseOf(samples.get('plenum-leak.diag') ?? '', 'plenum-leak.diag');
    await page.setContent(writeReport(Array.from({ length: count }, () => both)));
    const sizesOf = (selector: string): Promise<number[]> =>
      page.evaluate<number[]>(
        `[...document.querySelectorAll('${selector}')].map((each) => parseFloat(getComputedStyle(each).fontSize))`,
      );
    const notes = await sizesOf('.body > :is(h1, h2, h3, h4, h5, h6)');
    const titles = await sizesOf('section.cell > :is(h2, h3, h4)');
    expect(notes.length).toBeGreaterThan(0);
    expect(titles.length).toBeGreaterThan(0);
    expect(Math.max(...notes)).toBeLessThan(Math.min(...titles));
  });
});
