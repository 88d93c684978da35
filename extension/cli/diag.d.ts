/** Templates are imported as their text; the bundle and the tests read them so. */
declare module '*.diag' {
  const text: string;
  export default text;
}
