/** Whole numbers below a limit, the same ones for the same seed (a linear congruential generator, Numerical Recipes). */
export type Random = (below: number) => number;

export function randomFrom(seed: number): Random {
  let state = seed >>> 0;
  return (below) => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return Math.floor((state / 2 ** 32) * below);
  };
}

/** A random sentence of the expression grammar as tokens, of about `size` of them. */
export function sentence(random: Random, size: number): string[] {
  return expr(random, size);
}

function pick<T>(random: Random, ...from: readonly [T, ...T[]]): T {
  return from[random(from.length)] ?? from[0];
}

function expr(random: Random, size: number): string[] {
  const part = Math.floor(size / 2);
  switch (size < 3 ? 0 : random(6)) {
    case 1:
      return [...statement(random, part), pick(random, 'and', 'or'), ...statement(random, part)];
    case 2:
      return [
        ...['if', ...expr(random, size / 3), 'then', ...expr(random, size / 3)],
        ...['else', ...expr(random, size / 3)],
      ];
    case 3:
      return [
        ...statement(random, part),
        'or',
        ...statement(random, part),
        'and',
        ...statement(random, part),
      ];
    default:
      return statement(random, size);
  }
}

function statement(random: Random, size: number): string[] {
  const part = Math.floor(size / 2);
  const not = random(2) === 0 ? ['not'] : [];
  const third = (): string[] => window(random, size / 3);
  switch (size < 3 ? 0 : random(8)) {
    case 1:
      return ['not', ...statement(random, size - 1)];
    case 2:
      return [...window(random, part), pick(random, '<', '>='), ...window(random, part)];
    case 3:
      return [...window(random, part), 'is', ...not, ...window(random, part)];
    case 4:
      return [...third(), ...not, 'between', ...third(), 'and', ...third()];
    case 5:
      return [...third(), ...not, 'within', ...third(), 'of', ...third()];
    case 6:
      return [...third(), ...not, 'in', ...third(), ...(random(2) === 0 ? [] : ['..', ...third()])];
    default:
      return window(random, size);
  }
}

function window(random: Random, size: number): string[] {
  const third = (): string[] => sum(random, size / 3);
  switch (size < 4 ? 0 : random(5)) {
    case 1:
      return [...window(random, size / 3), 'from', ...third(), 'to', ...third()];
    case 2:
      return [...window(random, size / 2), 'where', '(', ...expr(random, size / 2), ')'];
    default:
      return sum(random, size);
  }
}

function sum(random: Random, size: number): string[] {
  const part = Math.floor(size / 2);
  switch (size < 2 ? 0 : random(4)) {
    case 1:
      return [...sum(random, part), pick(random, '+', '-', '*', '/', '^'), ...sum(random, part)];
    case 2:
      return [pick(random, '-', '+'), ...sum(random, size - 1)];
    default:
      return atom(random, size);
  }
}

function atom(random: Random, size: number): string[] {
  switch (size < 2 ? 0 : random(5)) {
    case 1:
      return [...atom(random, size - 2), '.', pick(random, 'a', 'b')];
    case 2:
      return [...atom(random, size / 2), '[', ...expr(random, size / 2), ']'];
    case 3:
      return ['(', ...expr(random, size - 2), ')'];
    case 4:
      return call(random, size);
    default:
      return [pick(random, 'a', 'b', '1', '2 V', '-3', '"t"', 'yes')];
  }
}

function call(random: Random, size: number): string[] {
  const tokens = ['f', '('];
  const count = random(4);
  for (let i = 0; i < count; i++) {
    if (i > 0) tokens.push(',');
    if (random(2) === 0) tokens.push('b', '=');
    tokens.push(...expr(random, size / count - 1));
  }
  tokens.push(')');
  return tokens;
}
