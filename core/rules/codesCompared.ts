import type { HeaderCell } from '../casefile/cell.ts';
import type { RuledCase } from './rule.ts';

/** The case's header, with the codes that it lists. */
export function headerOf({ read }: RuledCase): HeaderCell | undefined {
  const cell = read(0)?.cell;
  return cell?.kind === 'diag' ? cell : undefined;
}

/** What controllers gave in recordings before the repair: after it codes are meant to be gone. */
export function givenBefore({ given, read }: RuledCase) {
  if (given.length === 0) return [];
  return given.flatMap(({ cell, givenCodes }) => {
    const asked = read(cell)?.cell;
    const when = asked?.kind === 'readings' ? asked.when?.text.trim() : undefined;
    return givenCodes === undefined || when === 'after' || when === 'known good'
      ? []
      : [{ cell, ...givenCodes }];
  });
}
