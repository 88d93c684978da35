import type { Cell, CheckCell, HeaderCell } from '../casefile/cell.ts';
import { joinStream } from '../casefile/stream.ts';
import type { Value } from '../expression/value.ts';
import type { Finding, Study } from '../study/types.ts';
import { lineIndex } from '../text/lines.ts';
import type { Answer, Block, CasePage, FindingLine, Section } from './blocks.ts';
import { byWeight } from './byWeight.ts';
import { cautionBlocks } from './cautionBlocks.ts';
import { cautionsOf, type Work } from './cautions.ts';
import { captureContent } from './cells/captureCell.ts';
import { type CellContent, type CellContext, words } from './cells/cellContext.ts';
import { chartContent } from './cells/chartCell.ts';
import { checkContent } from './cells/checkCell.ts';
import { causeContent, headerContent, isTeaching } from './cells/headerCell.ts';
import { pictureContent } from './cells/pictureCell.ts';
import { answerOf, questionContent } from './cells/questionCell.ts';
import { readingsContent, referenceContent } from './cells/readingsCell.ts';
import { repairContent } from './cells/repairCell.ts';
import { suspectsContent } from './cells/suspectsCell.ts';
import { testContent } from './cells/testCell.ts';
import { chartBlocks, type DrawChart } from './chartBlock.ts';
import { findingLine } from './findingLine.ts';
import type { Pictures } from './picture.ts';
import { summaryOf } from './summary.ts';

/** A case to be shown. */
export interface ReportCase {
  readonly study: Study;
  /** Its path or name, for a case that has no title. */
  readonly file: string;
  /** The pictures of the case's own folder. */
  readonly pictures: Pictures;
  /** Draws its charts; left out, they are told in words and figures. */
  readonly drawChart?: DrawChart;
}

/** A case as a page: one section a cell, each with the cautions that it brings and what was found in it. */
export function casePage({ study, file, pictures, drawChart }: ReportCase): CasePage {
  const text = joinStream(study.file.stream);
  const lines = lineIndex(text);
  // What is unusual is drawn and said beside the reading itself.
  const beside = (each: Finding): boolean => each.diagnostic.code !== 'unusual-value';
  const findings = (cell: number | undefined): ReturnType<typeof byWeight<FindingLine>> =>
    byWeight(
      study.findings
        .filter((each) => each.cell === cell && beside(each))
        .map((each) => findingLine(study, text, lines, each)),
    );
  const given = new Map<string, string>();
  const sections: Section[] = [];
  const answers: Answer[] = [];
  const after: Section[] = [];
  const teaching = study.file.cells.some(({ cell }) => cell?.kind === 'diag' && isTeaching(cell));
  const aboutFile = findings(undefined);
  if (aboutFile.serious.length + aboutFile.notes.length > 0)
    sections.push(section(0, 'About the file', ['Findings'], [...aboutFile.serious, ...aboutFile.notes]));
  study.file.cells.forEach((read, index) => {
    const { cell } = read;
    const { serious, notes } = findings(index);
    if (cell === undefined) {
      const source: Block = { kind: 'source', text: read.raw.text.slice(0, longestSource) };
      sections.push(
        section(index + 1, 'A cell that could not be read', ['Unread'], [...serious, source, ...notes]),
      );
      return;
    }
    const context = contextOf(study, index, pictures, drawChart);
    const content = contentOf(cell, context);
    const keptBack = teaching && /^(teacher|after answer)$/.test(words(cell.for));
    // What is said where a student does not read yet counts as not said, and no later line gives that title away.
    const said = keptBack ? new Map(given) : given;
    const cautions = cautionBlocks(cautionsOf(workOf(cell, context)), said, content.title);
    const whole: Section = {
      ...section(index + 1, content.title, content.margin, [
        ...cautions,
        ...serious,
        ...content.blocks,
        ...notes,
      ]),
      as: 'as' in cell && cell.as !== undefined ? words(cell.as) : undefined,
      audience: audience(words(cell.for)),
    };
    sections.push(keptBack ? pointer(whole) : whole);
    if (keptBack) after.push(whole);
    if (teaching && cell.kind === 'diag') after.push(...causeSection(cell, index + 1));
    const answer =
      cell.kind === 'question' ? answerOf(cell, index + 1, computedAnswer(study, index)) : undefined;
    if (answer !== undefined) answers.push(answer);
  });
  const title = study.title === '' ? file : study.title;
  return { title, summary: summaryOf(study), sections, answers, after };
}

/** In place of a cell that is kept back: not even its title is told, which may tell the cause. */
function pointer({ number, margin }: Section): Section {
  return { ...section(number, '', margin.slice(0, 1), []), keptBack: true };
}

function causeSection(cell: HeaderCell, number: number): Section[] {
  const { title, margin, blocks } = causeContent(cell);
  return blocks.length === 0 ? [] : [section(number, title, margin, blocks)];
}

function computedAnswer(study: Study, cell: number): Value | undefined {
  return study.answers.find((each) => each.cell === cell)?.value;
}

/** Of a cell that could not be read, so much of its text is shown. In UTF-16 units. */
const longestSource = 4000;

function section(
  number: number,
  title: string,
  margin: readonly string[],
  blocks: readonly Block[],
): Section {
  return { number, title, margin, as: undefined, audience: undefined, keptBack: false, blocks };
}

function contextOf(
  study: Study,
  index: number,
  pictures: Pictures,
  drawChart: DrawChart | undefined,
): CellContext {
  return {
    study,
    index,
    readings: study.readings.filter((each) => each.cell === index && each.from !== 'header'),
    computed: study.computed.filter((each) => each.cell === index),
    expectations: study.expectations.filter((each) => each.cell === index),
    suspects: study.suspects.filter((each) => each.cell === index),
    pictures,
    drawChart,
  };
}

/** What a cell's page holds beside its findings and its cautions. */
export function contentOf(cell: Cell, context: CellContext): CellContent {
  const content = contentWithoutChart(cell, context);
  const chart = chartBlocks(context);
  return chart.length === 0 ? content : { ...content, blocks: [...content.blocks, ...chart] };
}

function contentWithoutChart(cell: Cell, context: CellContext): CellContent {
  switch (cell.kind) {
    case 'diag':
      return headerContent(cell);
    case 'note':
      return { title: '', margin: [], blocks: [{ kind: 'prose', markdown: cell.title.text }] };
    case 'readings':
      return readingsContent(cell, context);
    case 'reference':
      return referenceContent(cell, context);
    case 'capture':
      return captureContent(cell, context);
    case 'check':
      return checkContent(cell, context);
    case 'test':
      return testContent(cell, context);
    case 'picture':
      return pictureContent(cell, context);
    case 'chart':
      return chartContent(cell, context);
    case 'suspects':
      return suspectsContent(cell, context);
    case 'question':
      return questionContent(cell);
    case 'repair':
      return repairContent(cell, context);
    case 'caution':
      return {
        title: '',
        margin: [],
        blocks: [{ kind: 'caution', title: 'from the author', text: words(cell.title) }],
      };
  }
}

/** What the cell does, as far as cautions go: a reference is only known, not measured. */
export function workOf(cell: Cell, { readings }: Pick<CellContext, 'readings'>): Work {
  const none: Work = { signals: [], words: '', states: [] };
  switch (cell.kind) {
    case 'readings':
    case 'capture':
      // What the computer stored by itself is nobody's work.
      if (words(cell.when) === 'freeze frame') return none;
      return {
        signals: [...new Set(readings.map((each) => each.signal?.name ?? each.key))],
        words: '',
        called: words(cell.title),
        states: [...new Set(readings.flatMap((each) => each.state?.name ?? []))],
      };
    case 'test':
      return { ...none, words: [cell.title, cell.did, cell.at].map(words).join('. ') };
    case 'check':
      return { ...none, functions: functionsCalledIn(cell) };
    case 'repair':
      return { ...none, words: `Repaired ${words(cell.title)}. ${words(cell.done)}` };
    default:
      return none;
  }
}

/** By their names in the text: a check that is not computed yet brings its cautions, too. */
function functionsCalledIn({ let: lets, expect }: CheckCell): readonly string[] {
  const texts = [
    ...(lets ?? []).map(({ value }) => value),
    ...(expect ?? []).map(({ expression }) => expression),
  ];
  const called = texts.flatMap((each) =>
    [...words(each).matchAll(/\b([a-z]\w*)\s*\(/g)].map(([, name = '']) => name),
  );
  return [...new Set(called)];
}

function audience(word: string): string | undefined {
  switch (word) {
    case 'teacher':
      return 'for the teacher';
    case 'student':
      return 'for students';
    case 'after answer':
      return 'after the answer';
    default:
      return undefined;
  }
}
