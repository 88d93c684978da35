import type { Value } from '../expression/value.ts';
import { codeSpan, escapeMarkdown } from '../report/markdown/escape.ts';
import { functionPage, signalPage, statePage } from '../report/pages.ts';
import { usualMeaning } from '../report/usualMeaning.ts';
import { signalOf } from '../signals/lookup.ts';
import { stateOf } from '../signals/states.ts';
import { functionRow } from '../study/functions.ts';
import type { Reading, TakenAt } from '../study/types.ts';
import type { Occurrence } from './occurrences.ts';
import { pageMarkdown, paragraphs } from './pageMarkdown.ts';
import { readingPage } from './readingPage.ts';
import { fieldsOfName } from './resultFields.ts';
import { computedAt, type Standing } from './standing.ts';
import type { Thing } from './things.ts';
import type { UnitPreference } from './types.ts';
import { valueWords } from './valueWords.ts';

/** The hover of a name. */
export function namePage(standing: Standing, at: Occurrence, units: UnitPreference): string {
  const { thing, named } = at;
  if (named?.kind === 'reading' && isWhole(at, named.used)) {
    return readingPage(named.reading, textOf(standing, named.reading), units);
  }
  if (named?.kind === 'states' && isWhole(at, named.used))
    return byState([...named.readings.values()], units);
  const field =
    thing.kind === 'field' && named !== undefined
      ? fieldsOfName(standing, named).find((each) => each.name === thing.name)
      : undefined;
  const page = thingPage(standing, thing, units);
  return field?.value === undefined ? page : `${page} = ${escapeMarkdown(saidOf(field.value, units))}`;
}

const saidOf = (value: Value, units: UnitPreference): string =>
  value.kind === 'absent' ? `${value.status}: ${value.why}` : valueWords(value, units);

/** The part of a dotted name that completes it: what stands before it names cells and states. */
function isWhole({ written }: Occurrence, used: number): boolean {
  return written.split('.').length === used;
}

function thingPage(standing: Standing, thing: Thing, units: UnitPreference): string {
  const { names } = standing;
  switch (thing.kind) {
    case 'cell':
      return cellPage(standing, thing.cell);
    case 'computed':
      return computedPage(standing, thing.cell, thing.name, units);
    case 'column': {
      const taken = names.cells[thing.cell]?.states.get(thing.name);
      return taken === undefined ? '' : columnPage(thing.name, taken);
    }
    case 'reading':
    case 'signal':
    case 'own signal': {
      const signal = names.ownSignals.get(thing.name) ?? signalOf(thing.name);
      return signal === undefined ? '' : pageMarkdown(signalPage(signal));
    }
    case 'tool':
      return toolPage(standing, thing.name);
    case 'header': {
      const reading = names.header.get(thing.name);
      return reading === undefined ? '' : readingPage(reading, textOf(standing, reading), units);
    }
    case 'section':
      return `**${codeSpan(thing.name)}** a section of the header`;
    case 'function': {
      const row = functionRow(thing.name);
      return row === undefined ? '' : pageMarkdown(functionPage(row));
    }
    case 'field':
      return `**${codeSpan(`${thing.of}.${thing.name}`)}** ${escapeMarkdown(thing.meaning)}`;
    case 'unknown':
      return '';
  }
}

/** A computed name: its value with uncertainty, its expression, and the readings that it came from. */
export function computedPage(standing: Standing, cell: number, name: string, units: UnitPreference): string {
  const { study } = standing;
  const computed = computedAt(study, cell, name);
  if (computed === undefined) return '';
  const { value, text, from, fullName } = computed;
  const why = saidOf(value, units);
  const sources = from.map((each) => {
    const reading = study.memo.reading(each) ?? study.memo.names.header.get(each);
    const words = reading === undefined ? 'not measured' : valueWords(reading.value, units);
    return `- ${codeSpan(each)} ${escapeMarkdown(words)}`;
  });
  return paragraphs([
    `**${codeSpan(fullName)}** = ${escapeMarkdown(why)}`,
    escapeMarkdown(usualMeaning(computed) ?? ''),
    codeSpan(text),
    sources.length === 0 ? '' : `*From:*\n${sources.join('\n')}`,
  ]);
}

function byState(readings: readonly Reading[], units: UnitPreference): string {
  const [first] = readings;
  if (first === undefined) return '';
  const lines = readings.map(
    (each) => `- ${codeSpan(each.column ?? '')} ${escapeMarkdown(valueWords(each.value, units))}`,
  );
  const meaning = first.signal === undefined ? '' : ` ${escapeMarkdown(first.signal.meaning)}`;
  const title = `**${codeSpan(first.key)}**${meaning}, by state`;
  return paragraphs([title, lines.join('\n')]);
}

function cellPage({ study, names }: Standing, cell: number): string {
  const facts = names.cells[cell];
  const of = study.file.cells[cell]?.cell;
  if (facts === undefined || of === undefined) return '';
  const keys = new Set([
    ...facts.readings.map((each) => each.key),
    ...facts.definitions.map((each) => each.name),
  ]);
  const title = of.title.text.replace(/\s+/g, ' ').trim();
  const has = [
    ...(facts.states.size === 0 ? [] : [`*States:* ${[...facts.states.keys()].map(codeSpan).join(', ')}`]),
    ...(keys.size === 0 ? [] : [`*Has:* ${[...keys].map(codeSpan).join(', ')}`]),
  ];
  return paragraphs([
    `**${codeSpan(facts.as ?? '')}** ${of.kind}: ${escapeMarkdown(title)} (cell ${cell + 1})`,
    ...has,
  ]);
}

/** A cell's own name for a state. */
function columnPage(name: string, taken: TakenAt): string {
  const more = [...taken.more].map(([key, value]) => `, ${key} ${value}`).join('');
  const known = stateOf(taken.name);
  return paragraphs([
    `**${codeSpan(name)}** stands for the state ${escapeMarkdown(`${taken.name}${more}`)}`,
    known === undefined ? '' : escapeMarkdown(known.meaning),
  ]);
}

/** An engine state, without the list of all that is usual in it. */
export function stateWords(name: string): string {
  const known = stateOf(name.trim());
  if (known === undefined) {
    return `**${escapeMarkdown(name.trim())}** is a state in free words: nothing is known to be usual in it.`;
  }
  const { title, rows } = statePage(known);
  return pageMarkdown({ title, rows: rows.filter((row) => row.name !== 'Usual then') });
}

function toolPage({ study }: Standing, name: string): string {
  const header = study.file.cells[0]?.cell;
  const tool = header?.kind === 'diag' ? header.tools?.find((each) => each.key.text === name) : undefined;
  if (tool === undefined) return '';
  const description = tool.value.description?.text.replace(/\s+/g, ' ').trim() ?? '';
  const accuracy = tool.value.accuracy?.text.trim();
  return paragraphs([
    `**${codeSpan(name)}** ${escapeMarkdown(description)}`,
    accuracy === undefined ? '' : `*Accuracy:* ± ${escapeMarkdown(accuracy.replace(/^(±|\+\/-)\s*/, ''))}`,
  ]);
}

function textOf({ study }: Standing, { cell }: Reading): string {
  return study.file.cells[cell]?.raw.text ?? '';
}
