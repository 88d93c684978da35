import type { DefinitionOrder } from './evaluateCase.ts';
import type { Evaluated } from './surroundings.ts';

type Definitions = DefinitionOrder['definitions'];

/**
 * What computed names came to, by their ids; a member of a circle has none. Kept cell by cell: a study takes those of the
 * cells that it does not evaluate from the one before, without copying them one by one.
 */
export class Done {
  readonly #definitions: Definitions;
  readonly #byCell: (Map<string, Evaluated> | undefined)[];

  constructor(definitions: Definitions, before?: Done) {
    this.#definitions = definitions;
    this.#byCell = before === undefined ? [] : [...before.#byCell];
  }

  get(id: string): Evaluated | undefined {
    const cell = this.#definitions.get(id)?.cell;
    return cell === undefined ? undefined : this.#byCell[cell]?.get(id);
  }

  set(id: string, evaluated: Evaluated): void {
    const cell = this.#definitions.get(id)?.cell;
    if (cell === undefined) return;
    const here = this.#byCell[cell];
    if (here === undefined) this.#byCell[cell] = new Map([[id, evaluated]]);
    else here.set(id, evaluated);
  }

  /** Takes what a cell came to away, so that it can be evaluated anew. */
  take(cell: number): Iterable<Evaluated> {
    const taken = this.#byCell[cell];
    this.#byCell[cell] = undefined;
    return taken === undefined ? [] : taken.values();
  }
}
