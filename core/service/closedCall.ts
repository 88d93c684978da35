/** The function of a call that ends with this text's closing bracket: `valve_events` of `1 + valve_events(snap.pressure)`. */
export function closedCall(text: string): string | undefined {
  // A bracket in quotes is none.
  const bare = text.replace(/"[^"]*"/g, (quoted) => ' '.repeat(quoted.length));
  let open = 0;
  for (let at = bare.length - 1; at >= 0; at--) {
    if (bare[at] === ')') open++;
    else if (bare[at] === '(' && --open === 0) {
      return /[\p{L}_][\p{L}\p{M}\p{N}_]*$/u.exec(bare.slice(0, at))?.[0];
    }
  }
  return undefined;
}
