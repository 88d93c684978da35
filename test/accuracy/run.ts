import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { faulty, judged, rulesPage, rulesPageText, sound, warnedSound } from './rulesPage.ts';
import { sectionsByPage } from './sections.ts';
import { pageText, sectionText } from './table.ts';

/** `npm run accuracy`: measures every table of `*.accuracy.ts`, prints it, and writes the pages; then judges the rules. */
const root = join(import.meta.dirname, '..', '..');
for (const [page, sections] of await sectionsByPage()) {
  const texts: string[] = [];
  for (const section of sections) {
    const text = sectionText(section);
    console.log(`${text}\n`);
    texts.push(text);
  }
  writeFileSync(join(root, page), pageText(texts));
  console.log(`Written: ${page}`);
}

const text = rulesPageText(warnedSound(sound), judged(faulty));
console.log(text);
writeFileSync(join(root, rulesPage), text);
console.log(`Written: ${rulesPage}`);
