import { sourceSpan, type TextNode } from '../casefile/tree.ts';
import type { Expression } from '../expression/tree.ts';
import { signalOf } from '../signals/lookup.ts';
import { childrenOf } from '../study/graph/children.ts';
import { dotted, type Path } from '../study/graph/paths.ts';
import { headerName } from '../study/headerTable.ts';
import { cellNamed, lookUp, type Named, type Names } from '../study/names.ts';
import type { Study } from '../study/types.ts';
import type { Span } from '../text/span.ts';
import { expressionOf } from './expressionAt.ts';
import { fieldsOfCall, fieldsOfName } from './resultFields.ts';
import { type Spot, spotsOf } from './spots.ts';
import { type Standing, standingOf } from './standing.ts';
import { type Thing, thingOfCell, thingOfReading } from './things.ts';

/** A name where it stands. */
export interface Occurrence {
  readonly cell: number;
  readonly span: Span;
  readonly thing: Thing;
  /** The thing gets its name here. */
  readonly defines: boolean;
  /** In an expression: what the dotted name as a whole means, and the name as written up to this part. */
  readonly named: Named | undefined;
  readonly written: string;
}

const ofStanding = new WeakMap<Standing, readonly Occurrence[]>();

/** Every name in a cell, in the order of the text. */
export function occurrencesIn(standing: Standing): readonly Occurrence[] {
  let found = ofStanding.get(standing);
  if (found === undefined) {
    found = spotsOf(standing).flatMap((spot) => inSpot(standing, spot));
    ofStanding.set(standing, found);
  }
  return found;
}

/** Every name of a case. */
export function occurrencesOf(study: Study): readonly Occurrence[] {
  return study.file.cells.flatMap((_, index) => {
    const standing = standingOf(study, index);
    return standing === undefined ? [] : occurrencesIn(standing);
  });
}

/** The name that the offset stands in or touches; of two that touch, the one that starts there. */
export function occurrenceAt(standing: Standing, offset: number): Occurrence | undefined {
  return occurrencesIn(standing).findLast(({ span }) => span.start <= offset && offset <= span.end);
}

function inSpot(standing: Standing, spot: Spot): readonly Occurrence[] {
  if (spot.role === 'expression') return inExpression(standing, spot.node);
  const found = ofSpot(standing, spot);
  if (found === undefined || found.thing.name === '') return [];
  const { node } = spot;
  return [{ cell: standing.index, span: inner(node), ...found, named: undefined, written: node.text }];
}

/** A text in quotes is named without them. */
function inner(node: TextNode): Span {
  return sourceSpan(node, { start: 0, end: node.text.length });
}

function ofSpot(
  standing: Standing,
  { role, node, path, under }: Spot,
): { readonly thing: Thing; readonly defines: boolean } | undefined {
  const { index: cell, names, facts } = standing;
  const name = node.text;
  switch (role) {
    case 'as':
      return { thing: { kind: 'cell', cell, name }, defines: true };
    case 'let':
      return { thing: { kind: 'computed', cell, name }, defines: true };
    case 'column':
      return { thing: { kind: 'column', cell, name }, defines: true };
    case 'heading':
      return facts?.states.has(name) === true
        ? { thing: { kind: 'column', cell, name }, defines: false }
        : undefined;
    case 'tool name':
      return { thing: { kind: 'tool', name }, defines: true };
    case 'tool':
      return { thing: { kind: 'tool', name }, defines: false };
    case 'own signal':
      return { thing: { kind: 'own signal', name }, defines: true };
    case 'signal name':
      return { thing: signalThing(names, name), defines: false };
    case 'channel':
      return { thing: { kind: 'reading', cell, name, own: true }, defines: true };
    case 'signal': {
      if (names.ownSignals.has(name)) return { thing: { kind: 'own signal', name }, defines: false };
      const known = signalOf(name) !== undefined;
      const own = !known && (path[0] === 'reference' || path[0] === 'picture');
      return { thing: { kind: 'reading', cell, name, own }, defines: true };
    }
    case 'key': {
      const [kind, section, key] = path;
      const isHeader = kind === 'diag' && key !== undefined && path.length === 3 && under === undefined;
      if (!isHeader || !sections.has(section ?? '')) return undefined;
      return { thing: { kind: 'header', name: headerName(section ?? '', key) }, defines: true };
    }
    case 'kind':
    case 'title':
    case 'unknown key':
    case 'member':
    case 'reading':
    case 'quantity':
    case 'expression':
    case 'state':
    case 'word':
    case 'unit':
    case 'file':
    case 'sentence':
    case 'markdown':
    case 'text':
      return undefined;
  }
}

const sections: ReadonlySet<string> = new Set(['vehicle', 'engine', 'site']);

function signalThing(names: Names, name: string): Thing {
  if (names.ownSignals.has(name)) return { kind: 'own signal', name };
  return { kind: signalOf(name) === undefined ? 'unknown' : 'signal', name };
}

function inExpression(standing: Standing, node: TextNode): readonly Occurrence[] {
  const found: Occurrence[] = [];
  const waiting: Expression[] = [expressionOf(standing, node)];
  const tell = (span: Span, thing: Thing, named?: Named, written?: string): void => {
    const place = sourceSpan(node, span);
    found.push({
      cell: standing.index,
      span: place,
      thing,
      defines: false,
      named,
      written: written ?? thing.name,
    });
  };
  for (let at = waiting.pop(); at !== undefined; at = waiting.pop()) {
    const path = dotted(at);
    if (path !== undefined) {
      const named = lookUp(standing.names, standing.index, path.parts, path.spans);
      thingsOf(standing, path, named).forEach((thing, part) => {
        const span = path.spans[part];
        if (span !== undefined) tell(span, thing, named, path.parts.slice(0, part + 1).join('.'));
      });
      continue;
    }
    if (at.kind === 'call') tell(at.nameSpan, { kind: 'function', name: at.name });
    if (at.kind === 'index') memberByState(standing, at, tell);
    if (at.kind === 'member' && at.of.kind === 'call') tell(at.nameSpan, fieldOfCall(at.of.name, at.name));
    waiting.push(...childrenOf(at).reverse());
  }
  return found.sort((a, b) => a.span.start - b.span.start);
}

/** `before.map["idle"]` names a state of the cell. */
function memberByState(
  standing: Standing,
  at: Expression & { readonly kind: 'index' },
  tell: (span: Span, thing: Thing) => void,
): void {
  const path = dotted(at.of);
  if (path === undefined || at.index.kind !== 'text') return;
  const named = lookUp(standing.names, standing.index, path.parts, path.spans);
  if (named.kind !== 'states' || named.used !== path.parts.length) return;
  const cell = [...named.readings.values()][0]?.cell;
  if (cell === undefined) return;
  const { start, end } = at.index.span;
  tell({ start: start + 1, end: end - 1 }, { kind: 'column', cell, name: at.index.text });
}

/** What each part of a dotted name stands for. */
function thingsOf(standing: Standing, { parts }: Path, named: Named): readonly Thing[] {
  const { names, index: from } = standing;
  const used = named.kind === 'problem' ? parts.length : named.used;
  const last = lastThing(names, named);
  const prefix = cellNamed(names, parts[0] ?? '');
  const own = names.cells[from]?.definitions.some((each) => each.name === parts[0]) === true;
  return parts.map((name, at): Thing => {
    if (last !== undefined && at === used - 1) return last;
    if (at >= used) {
      const field = fieldsOfName(standing, named).find((each) => each.name === name);
      if (field !== undefined) {
        return { kind: 'field', of: parts.slice(0, at).join('.'), name, meaning: field.meaning };
      }
      const states = named.kind === 'states' ? [...named.readings.values()][0] : undefined;
      return states === undefined ? { kind: 'unknown', name } : { kind: 'column', cell: states.cell, name };
    }
    if (at === 0 && sections.has(name)) return { kind: 'section', name };
    if (at === 0 && prefix !== undefined && (!own || parts.length > 1)) return thingOfCell(prefix);
    if (at === 1 && prefix?.states.has(name) === true) return { kind: 'column', cell: prefix.cell, name };
    return { kind: 'unknown', name };
  });
}

function fieldOfCall(of: string, name: string): Thing {
  const field = fieldsOfCall(of).find((each) => each.name === name);
  return field === undefined
    ? { kind: 'unknown', name }
    : { kind: 'field', of, name, meaning: field.meaning };
}

function lastThing(names: Names, named: Named): Thing | undefined {
  switch (named.kind) {
    case 'reading':
      return thingOfReading(named.reading);
    case 'states': {
      const first = [...named.readings.values()][0];
      return first === undefined ? undefined : thingOfReading(first);
    }
    case 'definition':
      return { kind: 'computed', cell: named.definition.cell, name: named.definition.name };
    case 'not measured':
      return signalThing(names, named.signal.name);
    case 'problem':
      return undefined;
  }
}
