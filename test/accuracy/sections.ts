import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { globSync } from 'tinyglobby';
import type { AccuracySection } from './table.ts';

/** The sections of every page, by page, in the order of the files' names. */
export async function sectionsByPage(): Promise<ReadonlyMap<string, readonly AccuracySection[]>> {
  const pages = new Map<string, AccuracySection[]>();
  for (const file of globSync('*.accuracy.ts', { cwd: import.meta.dirname }).sort()) {
    const url = pathToFileURL(join(import.meta.dirname, file)).href;
    const { default: section } = (await import(url)) as { default: AccuracySection };
    const sections = pages.get(section.page);
    if (sections === undefined) pages.set(section.page, [section]);
    else sections.push(section);
  }
  return pages;
}
