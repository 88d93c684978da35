import type { HeaderCell } from '../../casefile/cell.ts';
import type { MapNode, Node } from '../../casefile/tree.ts';
import type { Runs } from '../blocks.ts';
import { type CellContent, words } from './cellContext.ts';

type Row = { readonly name: string; readonly runs: Runs };

/** The case's header as facts, in the order that a colleague would ask for them. A teaching case keeps its cause. */
export function headerContent(cell: HeaderCell): CellContent {
  const rows: Row[] = [
    ...row('Customer says', words(cell.customerSays)),
    ...row('Confirmed', words(cell.confirmed)),
    ...row('Vehicle', section(cell.vehicle?.node)),
    ...row('Engine', section(cell.engine?.node)),
    ...row('Site', section(cell.site?.node)),
    ...row('Codes', codes(cell)),
    ...(cell.history ?? []).flatMap((each, at) => row(at === 0 ? 'History' : '', words(each))),
    ...(cell.tools ?? []).flatMap((each, at) => toolRow(at === 0 ? 'Tools' : '', each)),
    ...(cell.objectives ?? []).flatMap((each, at) => row(at === 0 ? 'Objectives' : '', words(each))),
    ...(isTeaching(cell) ? [] : causeRows(cell)),
    ...row('Tags', (cell.tags ?? []).map(words).join(', ')),
    ...row('Author', (cell.author ?? []).map(words).join(', ')),
    ...row('License', words(cell.license)),
  ];
  return { title: '', margin: ['The case'], blocks: rows.length === 0 ? [] : [{ kind: 'facts', rows }] };
}

/** What a teaching case tells at its end. */
export function causeContent(cell: HeaderCell): CellContent {
  const rows = causeRows(cell);
  return {
    title: 'What it was',
    margin: ['Cause and repair'],
    blocks: rows.length === 0 ? [] : [{ kind: 'facts', rows }],
  };
}

const causeRows = (cell: HeaderCell): Row[] => [
  ...row('Cause', words(cell.cause)),
  ...row('Repair', words(cell.repair)),
];

export const isTeaching = (cell: HeaderCell): boolean => words(cell.teaching) === 'yes';

const row = (name: string, text: string): Row[] => (text === '' ? [] : [{ name, runs: [text] }]);

function toolRow(name: string, tool: NonNullable<HeaderCell['tools']>[number]): Row[] {
  const accuracy = words(tool.value.accuracy);
  const text = [
    words(tool.value.description),
    ...(accuracy === '' ? [] : [`± ${accuracy.replace(/^(±|\+\/-)\s*/, '')}`]),
  ]
    .filter((each) => each !== '')
    .join(', ');
  return [{ name, runs: [{ code: tool.key.text }, text === '' ? '' : ` ${text}`] }];
}

function codes(cell: HeaderCell): string {
  return (cell.codes ?? [])
    .map((each) => {
      const status = words(each.status);
      const meaning = words(each.meaning);
      return `${words(each.code)}${status === '' ? '' : ` (${status})`}${meaning === '' ? '' : `, ${meaning}`}`;
    })
    .join('; ');
}

/** A section's entries on one line: the description first, then "displacement 2.4 L; cylinders 4". */
function section(node: Node | undefined): string {
  if (node === undefined) return '';
  if (node.kind === 'text') return words(node);
  if (node.kind === 'list') return '';
  const description = textAt(node, 'description');
  const rest = node.entries
    .filter((entry) => entry.key.text !== 'description' && entry.value.kind === 'text')
    .map((entry) => `${entry.key.text} ${entry.value.kind === 'text' ? words(entry.value) : ''}`);
  return [...(description === '' ? [] : [description]), ...rest].join('; ');
}

function textAt(node: MapNode, key: string): string {
  const value = node.entries.find((entry) => entry.key.text === key)?.value;
  return value?.kind === 'text' ? words(value) : '';
}
