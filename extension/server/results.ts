import type { CellResult } from '../../core/service/cellResult.ts';
import type { Service } from '../../core/service/service.ts';
import type { UnitPreference } from '../../core/service/types.ts';
import type { ResultOfCell, ResultsParams } from '../shared/protocol.ts';
import { type OpenCase, startOf } from './openCase.ts';
import type { View } from './view.ts';

/**
 * What stands under each cell of a notebook. `sent` holds what the client has, by the uri of the cell: the very same
 * result is not sent again. Afterwards it holds what the client will have.
 */
export function resultsOf(
  open: OpenCase,
  service: Service,
  units: UnitPreference,
  sent: Map<string, CellResult>,
): ResultsParams {
  const { uri, version, views } = open;
  const cells = views.map((view): ResultOfCell => {
    const result = resultOf(open, view, service, units);
    const cell = { cell: view.uri, version: view.version };
    if (sent.get(view.uri) === result) return cell;
    sent.set(view.uri, result);
    return { ...cell, result };
  });
  if (sent.size > views.length) {
    const shown = new Set(views.map((view) => view.uri));
    for (const uri of sent.keys()) if (!shown.has(uri)) sent.delete(uri);
  }
  return { uri, version, cells };
}

/** A view shows one cell of the study; where a `---` line was typed into it, the results of all that it holds. */
function resultOf(open: OpenCase, view: View, service: Service, units: UnitPreference): CellResult {
  const { study } = open;
  const results: CellResult[] = [];
  for (let cell = view.firstCell; cell < view.pastCell; cell++) {
    const result = service.result(study, cell, units);
    const by = (study.file.stream.starts[cell] ?? 0) - startOf(open, view);
    results.push(by === 0 ? result : moved(result, by, view.lines.pointAt(by).line));
  }
  const [first, ...more] = results;
  if (first === undefined) return nothing;
  if (more.length === 0) return first;
  return {
    ...first,
    blocks: results.flatMap((each) => each.blocks),
    markdown: results.flatMap((each) => (each.markdown === '' ? [] : each.markdown)).join('\n\n'),
    status: results.find((each) => each.status !== undefined)?.status,
  };
}

/** The same result told from a text that starts earlier. */
function moved(result: CellResult, by: number, lines: number): CellResult {
  const first = result.status?.first;
  return {
    ...result,
    blocks: result.blocks.map((block) =>
      block.kind === 'finding' ? { ...block, line: block.line + lines } : block,
    ),
    status:
      result.status === undefined || first === undefined
        ? result.status
        : { ...result.status, first: { start: first.start + by, end: first.end + by } },
  };
}

const nothing: CellResult = {
  version: 1,
  kind: 'unread',
  title: '',
  blocks: [],
  markdown: '',
  status: undefined,
};
