import { sourceSpan } from '../../casefile/tree.ts';
import type { Type } from '../../expression/type.ts';
import { pressure } from '../../quantity/dimension.ts';
import { dotted } from '../../study/graph/paths.ts';
import { lookUp, type Named } from '../../study/names.ts';
import { typeOfSignal } from '../../study/readValue.ts';
import type { Span } from '../../text/span.ts';
import { decodedOffset, expressionOf, nodesAround } from '../expressionAt.ts';
import { spotAt } from '../spots.ts';
import { computedOf, type Standing } from '../standing.ts';
import type { CodeFix } from '../types.ts';
import { addsNoError } from './addsNoError.ts';
import { rewrite } from './rewrite.ts';

const kinds = ['absolute', 'gauge', 'vacuum'] as const;

/** Counts a named pressure from another zero, where the expression takes that: `absolute(x)`, `gauge(x)`, `vacuum(x)`. */
export function wrapPressure(standing: Standing, span: Span): readonly CodeFix[] {
  const spot = spotAt(standing, span.start);
  if (spot?.role !== 'expression') return [];
  const { node } = spot;
  const around = nodesAround(expressionOf(standing, node), decodedOffset(node, span.start));
  const at = around.findIndex((each) => dotted(each) !== undefined);
  const name = around[at];
  const path = name === undefined ? undefined : dotted(name);
  if (name === undefined || path === undefined) return [];
  const parent = around[at - 1];
  if (parent?.kind === 'call' && kinds.some((each) => each === parent.name)) return [];
  const named = lookUp(standing.names, standing.index, path.parts, path.spans);
  const type = typeOfNamed(standing, named);
  if (type === undefined || !('quantity' in type) || type.quantity.dimension !== pressure) return [];
  const own = type.quantity.kind;
  if (!kinds.some((each) => each === own)) return [];
  const words = node.text.slice(name.span.start, name.span.end);
  const place = sourceSpan(node, name.span);
  return kinds
    .filter((kind) => kind !== own)
    .map((kind) => {
      const newText = `${kind}(${words})`;
      return rewrite(`Count it as ${kind}: \`${newText}\``, standing.index, [{ span: place, newText }]);
    })
    .filter((offer) => addsNoError(standing.study, offer));
}

/** What a name is known to give before anything is computed. */
export function typeOfNamed(standing: Standing, named: Named): Type | undefined {
  switch (named.kind) {
    case 'reading':
      return named.reading.type;
    case 'states':
      return [...named.readings.values()][0]?.type;
    case 'definition':
      return computedOf(standing, named.definition)?.typed?.type;
    case 'not measured':
      return typeOfSignal(named.signal);
    case 'problem':
      return undefined;
  }
}
