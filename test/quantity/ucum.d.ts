/** The part of the UCUM library that the tests call; it brings no types of its own. */
declare module '@lhncbc/ucum-lhc' {
  export const UcumLhcUtils: {
    getInstance(): {
      convertUnitTo(from: string, value: number, to: string): { readonly toVal: number | null };
    };
  };
}
