import type { Block, FindingLine, Picture, Runs, SuspectLine, VerdictLine } from '../blocks.ts';
import { severityWord } from '../severityWord.ts';
import { escapeHtml } from './escape.ts';
import { writeNote } from './note.ts';
import { writeRuns } from './runs.ts';
import { writeTable } from './table.ts';

/** Blocks as HTML. `level` is that of the heading they stand under. */
export function writeBlocks(blocks: readonly Block[], level: number): string {
  return blocks.map((block) => writeBlock(block, level)).join('\n');
}

function writeBlock(block: Block, level: number): string {
  switch (block.kind) {
    case 'paragraph':
      return `<p>${lead(block.lead)}${writeRuns(block.runs)}</p>`;
    case 'prose':
      return `${block.lead === undefined ? '' : `<p>${lead(block.lead)}</p>`}${writeNote(block.markdown, level)}`;
    case 'facts':
      return `<dl class="facts">\n${block.rows
        .map(({ name, runs }) => `<dt>${escapeHtml(name)}</dt><dd>${writeRuns(runs)}</dd>`)
        .join('\n')}\n</dl>`;
    case 'bullets':
      return writeBullets(block.lead, block.style, block.items);
    case 'table':
      return writeTable(block);
    case 'verdict':
      return writeVerdict(block);
    case 'picture':
      return writePicture(block);
    case 'caution':
      return `<aside class="caution" role="note"><p><strong>Caution: ${escapeHtml(block.title)}.</strong> ${escapeHtml(block.text)}</p></aside>`;
    case 'suspect':
      return writeSuspect(block);
    case 'finding':
      return writeFinding(block);
    case 'source':
      return `<pre class="source">${escapeHtml(block.text)}</pre>`;
  }
}

const lead = (words: string | undefined): string =>
  words === undefined ? '' : `<span class="lead">${escapeHtml(words)}</span> `;

function writeBullets(
  leadWords: string | undefined,
  style: 'bullet' | 'letter',
  items: readonly Runs[],
): string {
  const rows = items.map((runs) => `<li>${writeRuns(runs)}</li>`).join('\n');
  const before = leadWords === undefined ? '' : `<p>${lead(leadWords)}</p>\n`;
  return `${before}${style === 'letter' ? `<ol type="a">\n${rows}\n</ol>` : `<ul>\n${rows}\n</ul>`}`;
}

function writeVerdict(line: VerdictLine): string {
  const measured = line.measured === '' ? '' : `${escapeHtml(line.measured)}: `;
  const remark = line.remark === undefined ? '' : `, ${escapeHtml(line.remark)}`;
  const why = line.why === undefined || line.why === '' ? '' : ` (${escapeHtml(line.why)})`;
  const rest = [
    ...(line.ifFails === undefined ? [] : [`<p>${lead('If it fails')}${escapeHtml(line.ifFails)}</p>`]),
    ...(line.from.length === 0
      ? []
      : [
          `<p class="because">from ${line.from.map((name) => `<code>${escapeHtml(name)}</code>`).join(', ')}</p>`,
        ]),
  ];
  return `<div class="verdict${line.word === 'fails' ? ' fails' : ''}">
<span class="sign" aria-hidden="true">${line.sign}</span>
<p><code>${escapeHtml(line.text)}</code></p>
<p>${measured}<span class="word">${escapeHtml(line.word)}</span>${remark}${why}.</p>${rest.join('')}
</div>`;
}

function writePicture(picture: Picture): string {
  const caption = picture.alt === '' ? '' : `<figcaption>${escapeHtml(picture.alt)}</figcaption>`;
  if (picture.dataUri === undefined) {
    return `<figure><div class="missing">Picture <code>${escapeHtml(picture.file)}</code>. ${escapeHtml(picture.missing ?? '')}</div>${caption}</figure>`;
  }
  return `<figure><img src="${picture.dataUri}" alt="${escapeHtml(picture.alt)}">${caption}</figure>`;
}

function writeSuspect(suspect: SuspectLine): string {
  const line = (words: string, items: readonly Runs[]): string =>
    items.length === 0 ? '' : `<p>${lead(words)}${items.map(writeRuns).join('; ')}.</p>`;
  return `<div class="suspect">
<span class="sign" aria-hidden="true">${suspect.sign}</span>
<p><strong>${escapeHtml(suspect.name)}</strong>: ${escapeHtml(suspect.standing)}.</p>
${line('For it', suspect.for)}${line('Against it', suspect.against)}${line('Missing', suspect.missing)}
</div>`;
}

function writeFinding(finding: FindingLine): string {
  const { before, marked, after } = finding.frame;
  const at = marked === '' ? '<mark>&#8203;</mark>' : `<mark>${escapeHtml(marked)}</mark>`;
  const frame =
    before + marked + after === ''
      ? ''
      : `<pre><span class="ln">${finding.line}  </span>${escapeHtml(before)}${at}${escapeHtml(after)}</pre>\n`;
  const offers =
    finding.offers.length === 0
      ? ''
      : `<p>${lead('Offered')}${finding.offers.map(writeMessage).join('; ')}.</p>`;
  return `<div class="finding ${finding.severity}">
<p><strong>${severityWord(finding.severity)}</strong> ${writeMessage(finding.message)}</p>
${frame}${offers}<p class="soft">line ${finding.line}, column ${finding.column} · <code>${escapeHtml(finding.code)}</code></p>
</div>`;
}

/** Messages set names and texts of the case between backquotes. */
function writeMessage(message: string): string {
  return message
    .split(/(`[^`]*`)/)
    .map((part) =>
      part.length > 1 && part.startsWith('`')
        ? `<code>${escapeHtml(part.slice(1, -1))}</code>`
        : escapeHtml(part),
    )
    .join('');
}
