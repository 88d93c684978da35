import type { Caution, Paragraph } from './blocks.ts';
import type { Called } from './cautions.ts';

/**
 * What is said before a step that brings some cautions: each in full once, at a later step whose own danger it is a line that points
 * back to it. `given` holds the title of the step at which each was said, by its id, and grows by this step's.
 */
export function cautionBlocks(
  called: readonly Called[],
  given: Map<string, string>,
  title: string,
): readonly (Caution | Paragraph)[] {
  const again = called.filter(({ id, own }) => own && given.has(id));
  const full = called.filter(({ id }) => !given.has(id));
  for (const { id } of full) given.set(id, title);
  const told = again.flatMap((each, at) => {
    const before = given.get(each.id) ?? '';
    const where = before === '' ? '' : ` (see “${before}”)`;
    return [at === 0 ? '' : '; ', { strong: each.title }, where];
  });
  return [
    ...full.map(({ kind, title: head, text }) => ({ kind, title: head, text })),
    ...(told.length === 0
      ? []
      : [{ kind: 'paragraph' as const, lead: 'Caution, as before', runs: [...told, '.'] }]),
  ];
}
