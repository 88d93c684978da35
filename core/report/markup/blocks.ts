import type {
  Block,
  Bullets,
  FindingLine,
  Picture,
  Prose,
  Runs,
  SuspectLine,
  VerdictLine,
} from '../blocks.ts';
import { severityWord } from '../severityWord.ts';
import { chartMarkup } from './chart.ts';
import { element, joined, type Markup } from './markup.ts';
import { codeMarkup, leadMarkup, messageMarkup, runsMarkup } from './runs.ts';
import { tableMarkup } from './table.ts';

/** Every block but the author's Markdown, which has its own way to HTML. */
export type SetBlock = Exclude<Block, Prose>;

export function blockMarkup(block: SetBlock): Markup[] {
  switch (block.kind) {
    case 'paragraph':
      return [element('p', {}, ...leadMarkup(block.lead), ...runsMarkup(block.runs))];
    case 'facts': {
      const rows = block.rows.flatMap(({ name, runs }) => [
        element('dt', {}, name),
        element('dd', {}, ...runsMarkup(runs)),
      ]);
      return [element('dl', { class: 'facts' }, ...rows)];
    }
    case 'bullets':
      return bullets(block);
    case 'table':
      return [tableMarkup(block)];
    case 'verdict':
      return [verdict(block)];
    case 'picture':
      return [picture(block)];
    case 'caution': {
      const words = element('p', {}, element('strong', {}, `Caution: ${block.title}.`), ` ${block.text}`);
      return [element('aside', { class: 'caution', role: 'note' }, words)];
    }
    case 'suspect':
      return [suspect(block)];
    case 'finding':
      return [finding(block)];
    case 'chart':
      return [chartMarkup(block)];
    case 'source':
      return [element('pre', { class: 'source' }, block.text)];
  }
}

function bullets({ lead, style, items }: Bullets): Markup[] {
  const rows = items.map((runs) => element('li', {}, ...runsMarkup(runs)));
  return [
    ...(lead === undefined ? [] : [element('p', {}, ...leadMarkup(lead))]),
    style === 'letter' ? element('ol', { type: 'a' }, ...rows) : element('ul', {}, ...rows),
  ];
}

const sign = (mark: string): Markup => element('span', { class: 'sign', 'aria-hidden': 'true' }, mark);

function verdict(line: VerdictLine): Markup {
  const measured = line.measured === '' ? [] : [`${line.measured}: `];
  const remark = line.remark === undefined ? '' : `, ${line.remark}`;
  const why = line.why === undefined || line.why === '' ? '' : ` (${line.why})`;
  const sources = joined(
    line.from.map((name) => [codeMarkup(name)]),
    ', ',
  );
  return element(
    'div',
    { class: line.word === 'fails' ? 'verdict fails' : 'verdict' },
    sign(line.sign),
    element('p', {}, codeMarkup(line.text)),
    element('p', {}, ...measured, element('span', { class: 'word' }, line.word), `${remark}${why}.`),
    ...(line.ifFails === undefined ? [] : [element('p', {}, ...leadMarkup('If it fails'), line.ifFails)]),
    ...(sources.length === 0 ? [] : [element('p', { class: 'because' }, 'from ', ...sources)]),
  );
}

function picture({ file, alt, dataUri, missing }: Picture): Markup {
  const shown =
    dataUri === undefined
      ? element('div', { class: 'missing' }, 'Picture ', codeMarkup(file), `. ${missing ?? ''}`)
      : element('img', { src: dataUri, alt });
  return element('figure', {}, shown, ...(alt === '' ? [] : [element('figcaption', {}, alt)]));
}

function suspect(line: SuspectLine): Markup {
  const reasons = (words: string, items: readonly Runs[]): Markup[] =>
    items.length === 0
      ? []
      : [element('p', {}, ...leadMarkup(words), ...joined(items.map(runsMarkup), '; '), '.')];
  return element(
    'div',
    { class: 'suspect' },
    sign(line.sign),
    element('p', {}, element('strong', {}, line.name), `: ${line.standing}.`),
    ...reasons('For it', line.for),
    ...reasons('Against it', line.against),
    ...reasons('Missing', line.missing),
  );
}

function finding(line: FindingLine): Markup {
  if (line.severity === 'info') return note(line);
  const { before, marked, after } = line.frame;
  const frame = element(
    'pre',
    {},
    element('span', { class: 'ln' }, `${line.line}  `),
    before,
    // A place without width is still a place.
    element('mark', {}, marked === '' ? '\u200b' : marked),
    after,
  );
  const offers = joined(line.offers.map(messageMarkup), '; ');
  return element(
    'div',
    { class: `finding ${line.severity}` },
    element('p', {}, element('strong', {}, severityWord(line.severity)), ' ', ...messageMarkup(line.message)),
    ...(before + marked + after === '' ? [] : [frame]),
    ...(offers.length === 0 ? [] : [element('p', {}, ...leadMarkup('Offered'), ...offers, '.')]),
    element('p', { class: 'soft' }, `line ${line.line}, column ${line.column} · `, codeMarkup(line.code)),
  );
}

/** What is only for information takes a line, and no frame of its own. */
function note({ message, line, code, offers }: FindingLine): Markup {
  const offered = joined(offers.map(messageMarkup), '; ');
  return element(
    'div',
    { class: 'finding info' },
    element(
      'p',
      {},
      element('strong', {}, severityWord('info')),
      ' ',
      ...messageMarkup(message),
      ' ',
      element('span', { class: 'soft' }, `line\u00a0${line} · `, codeMarkup(code)),
    ),
    ...(offered.length === 0 ? [] : [element('p', {}, ...leadMarkup('Offered'), ...offered, '.')]),
  );
}
