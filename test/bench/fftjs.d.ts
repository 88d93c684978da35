/** What is used of the npm package fft.js, which brings no types. */
declare module 'fft.js' {
  export default class FFT {
    constructor(size: number);
    /** Real and imaginary parts by turns. */
    createComplexArray(): number[];
    transform(out: number[], from: number[]): void;
  }
}
