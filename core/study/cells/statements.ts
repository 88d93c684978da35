import type { CheckCell, Named, RepairCell, SuspectsCell } from '../../casefile/cell.ts';
import type { TextNode } from '../../casefile/tree.ts';
import { type Diagnostic, diagnose } from '../../diagnostics/diagnostic.ts';
import type { Definition, Statement } from '../cellFacts.ts';
import type { Header } from '../header.ts';
import type { Parse } from '../source.ts';
import { takenAs } from './names.ts';

/** The computed names of a cell, `prefix.name` in full when the cell has an `as`. */
export function definitionsOf(
  lets: readonly Named<TextNode>[] | undefined,
  cell: number,
  as: string | undefined,
  header: Header,
  parse: Parse,
): { readonly definitions: readonly Definition[]; readonly diagnostics: readonly Diagnostic[] } {
  const definitions: Definition[] = [];
  const diagnostics: Diagnostic[] = [];
  for (const { key, value } of lets ?? []) {
    const name = key.text;
    const what = takenAs(name, header);
    if (what !== undefined) diagnostics.push(diagnose('shadowed-name', key.span, { name, what }));
    const id = as === undefined ? `${cell + 1}.${name}` : `${as}.${name}`;
    definitions.push({ id, name, cell, source: parse(value), keySpan: key.span });
  }
  return { definitions, diagnostics };
}

export function expectationsOf(cell: CheckCell, index: number, parse: Parse): readonly Statement[] {
  const showsFault = cell.shows?.text === 'fault';
  return (cell.expect ?? []).map((each) => ({
    cell: index,
    part: 'expect',
    title: cell.title.text.trim(),
    source: parse(each.expression),
    ifFails: (each.ifFails ?? cell.ifFails)?.text.trim(),
    because: (each.because ?? cell.because)?.text.trim(),
    showsFault: showsFault || each.shows?.text === 'fault',
    suspect: undefined,
  }));
}

export function proofsOf(cell: RepairCell, index: number, parse: Parse): readonly Statement[] {
  return (cell.verify ?? []).map((each) => ({
    cell: index,
    part: 'verify',
    title: cell.title.text.trim(),
    source: parse(each.expression),
    ifFails: each.ifFails?.text.trim(),
    because: each.because?.text.trim(),
    showsFault: false,
    suspect: undefined,
  }));
}

export function predictionsOf(cell: SuspectsCell, index: number, parse: Parse): readonly Statement[] {
  return (cell.consider ?? []).flatMap((suspect) => {
    const statement =
      (part: Statement['part']) =>
      (node: TextNode): Statement => ({
        cell: index,
        part,
        title: cell.title.text.trim(),
        source: parse(node),
        ifFails: undefined,
        because: suspect.because?.text.trim(),
        showsFault: false,
        suspect: suspect.name.text.trim(),
      });
    return [
      ...(suspect.predicts ?? []).map(statement('predicts')),
      ...(suspect.ruledOutIf ?? []).map(statement('ruled out if')),
    ];
  });
}
