import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { writeReport } from '../../core/report/html/report.ts';
import { studyFile } from '../../extension/cli/studyFile.ts';
import { openBrowser } from '../editor/harness/openBrowser.ts';
import { samples } from '../support/samples.ts';

/**
 * On a window of 1000 px, and on paper of 720 px and of 672 px (A4 is 210 mm, less twice the margin of 16 mm), every
 * table of the samples fits: nobody scrolls sideways for the column that says what a value comes from, and paper cannot scroll at all.
 */
let browser: Browser;
let page: Page;

const folder = join(import.meta.dirname, '..', '..', 'samples');
const html = writeReport(
  [...samples.keys()].map((file) => ({
    study: studyFile(join(folder, file)),
    file,
    pictures: () => undefined,
  })),
);

beforeAll(async () => {
  browser = await openBrowser();
  page = await browser.newPage();
  await page.setContent(html);
}, 120_000);

afterAll(async () => {
  await browser?.close();
});

/** Each ground of a table that is narrower than what stands on it, with the table's first words. */
const tooWide = () =>
  page.evaluate<string[]>(`[...document.querySelectorAll('.wide:has(table)')]
    .filter((each) => each.scrollWidth > each.clientWidth)
    .map((each) => each.closest('section').id + ': ' + each.scrollWidth + ' on ' + each.clientWidth + ': ' + each.textContent.slice(0, 60))`);

describe('the tables of a report', () => {
  it('are there to be measured', async () => {
    expect(await page.locator('.wide table').count()).toBeGreaterThan(40);
  });
  it.each([
    ['a wide window', 'screen', 1400],
    ['a window', 'screen', 1000],
    ['paper', 'print', 720],
    ['A4', 'print', 672],
  ] as const)('fit on %s', async (_, media, width) => {
    await page.setViewportSize({ width, height: 900 });
    await page.emulateMedia({ media });
    expect(await tooWide()).toEqual([]);
  });
});
