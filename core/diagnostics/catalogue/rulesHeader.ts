import { oneOf, type Rows } from '../row.ts';

/** Findings of the rules about what the header says of vehicle, engine and site. */
export interface RulesHeaderFacts {
  readonly 'header-impossible': { readonly name: string; readonly written: string; readonly range: string };
  readonly 'unknown-fuel': {
    readonly fuel: string;
    readonly nearest: readonly string[];
    readonly known: readonly string[];
  };
}

export const rulesHeaderRows: Rows<RulesHeaderFacts> = {
  'header-impossible': {
    severity: 'error',
    title: 'A value in the header that no vehicle and no place has',
    say: ({ name, written, range }) =>
      `\`${name}\` cannot be ${written}: possible is ${range}. Check the number and its unit, since whatever is computed from it would be wrong.`,
    why: 'Functions take from the header what they are not given: displacement, compression ratio, altitude, humidity. One slip there spoils them all.',
    wrong: 'site:\n  altitude: 60000 ft',
    right: 'site:\n  altitude: 6000 ft',
  },
  'unknown-fuel': {
    severity: 'warning',
    title: 'A fuel that is not known',
    say: ({ fuel, nearest, known }) =>
      `The fuel "${fuel}" is not known, so nothing can be computed for it.${nearest.length === 0 ? '' : ` Did you mean ${oneOf(nearest)}?`} Known are ${known.join(', ')}.`,
    why: 'Lambda from gas and the stoichiometric ratio need to know what the fuel is made of. A pump’s ordinary petrol is mostly E10.',
    wrong: 'engine:\n  fuel: E1O',
    right: 'engine:\n  fuel: E10',
  },
};
