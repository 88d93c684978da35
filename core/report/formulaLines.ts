import type { FunctionRow, Parameter } from '../expression/functionRow.ts';

/** A formula set readably: its lines, then what each symbol in it is, with its unit, in the order of the formula. */
export function formulaLines(row: FunctionRow): string[] {
  const lines = row.formula.split('\n');
  const symbols = symbolsOf(row);
  if (symbols.length === 0) return lines;
  const longest = Math.max(...symbols.map(({ symbol }) => widthOf(symbol)));
  const explained = symbols.map(
    ({ symbol, meaning }) => `${symbol}${' '.repeat(longest - widthOf(symbol))}  ${meaning}`,
  );
  return [...lines, '', ...explained];
}

/** Marks over a letter take no place. */
const widthOf = (symbol: string): number => symbol.replace(/\p{M}/gu, '').length;

interface Explained {
  readonly symbol: string;
  readonly meaning: string;
}

/** The symbols of a formula: parameters that stand in it by their names, and the row's own. */
export function symbolsOf({ formula, parameters, where = [] }: FunctionRow): readonly Explained[] {
  const found = new Map<string, Explained>();
  for (const parameter of parameters)
    found.set(parameter.name, { symbol: parameter.name, meaning: meaningOf(parameter) });
  for (const [symbol, words, unit] of where) {
    const parameter = unit === undefined ? parameters.find(({ name }) => name === words) : undefined;
    const meaning = parameter === undefined ? withUnit(words, unit ?? '') : withName(parameter);
    found.set(symbol, { symbol, meaning });
  }
  const places = [...found.values()].map((each) => ({ each, at: placeIn(formula, each.symbol) }));
  return places
    .filter(({ at }) => at >= 0)
    .sort((a, b) => a.at - b.at)
    .map(({ each }) => each);
}

/** The name that a call gives it, where its meaning does not begin with it. */
function withName(parameter: Parameter): string {
  const meaning = meaningOf(parameter);
  const spoken = parameter.name.replaceAll('_', ' ');
  return meaning.startsWith(spoken) ? meaning : `${parameter.name}: ${meaning}`;
}

function meaningOf({ meaning, takes }: Parameter): string {
  return withUnit(meaning, takes.unit ?? '');
}

function withUnit(meaning: string, unit: string): string {
  return unit === '' || unit === '1' ? meaning : `${meaning}, ${unit}`;
}

/** Where a symbol stands by itself, no part of a longer word or symbol; below 0 where it does not. */
function placeIn(formula: string, symbol: string): number {
  for (let at = formula.indexOf(symbol); at >= 0; at = formula.indexOf(symbol, at + 1)) {
    const [before, after] = [formula[at - 1], formula[at + symbol.length]];
    // A number before it is its factor: 4c.
    if ((!isPart(before) || /\d/.test(before ?? '')) && !isPart(after)) return at;
  }
  return -1;
}

/** A sum's sign and exponents belong to no name. */
const isPart = (mark: string | undefined): boolean =>
  mark !== undefined && /[\p{L}\p{N}_₀-₉ₐ-ₜ]/u.test(mark) && !/[Σ²³]/.test(mark);
