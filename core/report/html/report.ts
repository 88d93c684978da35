import type { CasePage } from '../blocks.ts';
import { casePage, type ReportCase } from '../casePage.ts';
import { deference } from '../cautions.ts';
import { writeCase } from './caseSection.ts';
import { escapeHtml } from './escape.ts';
import { writePage } from './page.ts';

export interface ReportOptions {
  /** Stands on top when there are several cases. */
  readonly title?: string;
}

/**
 * One HTML file for one case or many: no script, nothing fetched, pictures inside.
 * The cases are taken one by one: each study may be dropped once its page is made.
 * With several cases a table of contents comes first, and in print each case starts on a page.
 */
export function writeReport(cases: Iterable<ReportCase>, options: ReportOptions = {}): string {
  const pages: CasePage[] = [];
  for (const each of cases) pages.push(casePage(each));
  const only = pages.length === 1 ? pages[0] : undefined;
  if (only !== undefined) {
    return writePage(only.title, `<main>\n${writeCase(only, 'case-1', 1)}\n</main>\n${footer}`);
  }
  const title = options.title ?? 'Diagnostic cases';
  const articles = pages.map((page, i) => writeCase(page, `case-${i + 1}`, 2));
  return writePage(
    title,
    `<a class="skip" href="#cases">Skip the contents</a>
<header class="front">
<h1>${escapeHtml(title)}</h1>
<p>${pages.length} cases</p>
</header>
${contents(pages)}
<main id="cases">
${articles.join('\n')}
</main>
${footer}`,
  );
}

function contents(pages: readonly CasePage[]): string {
  const rows = pages.map(
    (page, i) =>
      `<li><span class="no">${i + 1}</span><div><a href="#case-${i + 1}">${escapeHtml(page.title)}</a>${page.summary
        .map((line) => `<p>${escapeHtml(line)}</p>`)
        .join('')}</div></li>`,
  );
  return `<nav class="contents" aria-labelledby="contents">
<h2 id="contents">Contents</h2>
<ol>
${rows.join('\n')}
</ol>
</nav>`;
}

const footer = `<footer><p>Written by Diagnostic Casebook from the case files; every value was computed from the readings shown. ${escapeHtml(deference)}</p></footer>`;
