/** The build puts a template's text where it is imported. */
declare module '*.diag' {
  const text: string;
  export default text;
}
