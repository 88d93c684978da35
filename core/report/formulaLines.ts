/** A formula set readably: the formula, then each thing that it names on a line of its own. */
export function formulaLines(formula: string): string[] {
  const parts = atCommas(formula);
  const lines: string[] = [];
  for (const part of parts) {
    const before = lines.length - 1;
    if (before < 0 || definition.test(part)) lines.push(part);
    else lines[before] = `${lines[before]}, ${part}`;
  }
  return lines;
}

/** "ρ = p/(R·T)", "h and o the fuel’s atoms", "t in °C" */
const definition = /^[^,]* = |^(\S+ and )?\S+ (the|in) /;

/** Split at the commas that stand in no brackets. */
function atCommas(text: string): string[] {
  const parts: string[] = [];
  let depth = 0;
  let from = 0;
  for (let at = 0; at < text.length; at++) {
    const mark = text[at];
    if (mark === '(') depth++;
    else if (mark === ')') depth--;
    else if (mark === ',' && depth === 0 && text[at + 1] === ' ') {
      parts.push(text.slice(from, at));
      from = at + 2;
    }
  }
  parts.push(text.slice(from));
  return parts;
}
