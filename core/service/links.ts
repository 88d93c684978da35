import { sourceSpan } from '../casefile/tree.ts';
import type { Study } from '../study/types.ts';
import { spotsOf } from './spots.ts';
import { standingOf } from './standing.ts';
import type { Link } from './types.ts';

/** The files beside the case that a cell names. A path that leaves the case's folder is no link. */
export function links(study: Study, cell: number): readonly Link[] {
  const standing = standingOf(study, cell);
  if (standing === undefined) return [];
  return spotsOf(standing).flatMap(({ role, node }) => {
    if (role !== 'file') return [];
    const file = node.text.trim();
    if (!staysInside(file)) return [];
    const start = node.text.indexOf(file);
    return [{ span: sourceSpan(node, { start, end: start + file.length }), file }];
  });
}

/** Relative, with `/`, no step upwards, no address. */
function staysInside(file: string): boolean {
  if (file === '' || /^[/\\]|^[a-z][a-z0-9+.-]*:/i.test(file) || file.includes('\\')) return false;
  return file.split('/').every((part) => part !== '..' && part !== '');
}
