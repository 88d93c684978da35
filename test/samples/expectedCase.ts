/** What a sample must give, worked out without the core: by arithmetic written out, or by mathjs with units. */
export interface ExpectedCase {
  /** The file in samples/. */
  readonly file: string;
  /** Computed values by full name, in SI units (percent as its hundredth, temperatures in kelvin); of a map or of several values, by member; words as they are. */
  readonly values: Readonly<Record<string, number | string | Readonly<Record<string, number | string>>>>;
  /** What is read off a synthetic capture: the generator's truth in SI units, and how near to it the reading must be. */
  readonly near?: Readonly<Record<string, { readonly truth: number; readonly within: number }>>;
  /** Half-widths by full name, SI. */
  readonly halfWidths: Readonly<Record<string, number>>;
  /** The `expect` and `verify` that do not hold, as "expect: text". All others hold. */
  readonly notHolding: Readonly<
    Record<string, 'fails' | 'too close to call' | 'not measured' | 'cannot compute'>
  >;
  readonly suspects: Readonly<Record<string, 'still possible' | 'ruled out' | 'not tested'>>;
  /** The findings of severity error and warning that are meant, by code, in the order of the file. */
  readonly findings: readonly string[];
}
