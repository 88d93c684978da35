/**
 * Every tree that the grammar of expressions allows for a sequence of tokens: the grammar copied rule by rule,
 * each rule giving all the ways it can end. It shares nothing with the parser, and is as slow as it is plain.
 *
 *   expr    = "if" expr "then" expr "else" expr | or
 *   or      = and {"or" and}      and = not {"and" not}      not = "not" not | compare
 *   compare = window [ relop window | "is" ["not"] window | ["not"] "between" window "and" window
 *           | ["not"] "within" window "of" window | ["not"] "in" window [".." window] ]
 *   window  = sum { "from" sum "to" sum | "where" "(" expr ")" }
 *   sum     = term {("+"|"-") term}   term = unary {("*"|"/") unary}   unary = {"-"|"+"} power
 *   power   = post ["^" unary]        post = atom {"." name | "[" expr "]"}
 *   atom    = quantity | text | truth | name | name "(" [arg {"," arg}] ")" | "(" expr ")"
 *   arg     = [name "="] expr
 */
export function everyParse(tokens: readonly string[]): string[] {
  const grammar = new Grammar(tokens);
  return grammar
    .expr(0)
    .filter((each) => each.end === tokens.length)
    .map((each) => each.tree);
}

interface Way {
  readonly tree: string;
  readonly end: number;
}

const words = new Set(
  'if then else or and not is between within in of from to where true false yes no unclear'.split(' '),
);
const isName = (token: string): boolean => /^[a-z_]\w*$/.test(token) && !words.has(token);

/** In a range the upper end's unit serves both. */
const withUnit = (low: string, high: string): string =>
  /^-?\d+$/.test(low) && /^-?\d+V$/.test(high) ? `${low}V` : low;

class Grammar {
  readonly tokens: readonly string[];
  readonly #seen = new Map<string, Way[]>();
  constructor(tokens: readonly string[]) {
    this.tokens = tokens;
  }

  /** A rule's ways from a place, computed once. */
  #rule(name: string, at: number, ways: () => Way[]): Way[] {
    const key = `${name} ${at}`;
    let known = this.#seen.get(key);
    if (known === undefined) {
      known = ways();
      this.#seen.set(key, known);
    }
    return known;
  }

  #is(at: number, token: string): boolean {
    return this.tokens[at] === token;
  }

  /** All ways to go on from `way` with `word` and then a rule. */
  #then(at: number, word: string, rule: (at: number) => Way[]): Way[] {
    return this.#is(at, word) ? rule(at + 1) : [];
  }

  /** left-associated repetition: all lengths of it. */
  #repeat(first: Way[], more: (left: Way) => Way[]): Way[] {
    const all = [...first];
    for (const way of all) all.push(...more(way));
    return all;
  }

  #binary(name: string, at: number, operators: readonly string[], part: (at: number) => Way[]): Way[] {
    return this.#rule(name, at, () =>
      this.#repeat(part(at), (left) =>
        operators.flatMap((operator) =>
          this.#then(left.end, operator, part).map((right) => ({
            tree: `(${operator} ${left.tree} ${right.tree})`,
            end: right.end,
          })),
        ),
      ),
    );
  }

  expr = (at: number): Way[] =>
    this.#rule('expr', at, () => [
      ...this.#then(at, 'if', this.expr).flatMap((condition) =>
        this.#then(condition.end, 'then', this.expr).flatMap((yes) =>
          this.#then(yes.end, 'else', this.expr).map((no) => ({
            tree: `(if ${condition.tree} ${yes.tree} ${no.tree})`,
            end: no.end,
          })),
        ),
      ),
      ...this.#or(at),
    ]);

  #or = (at: number): Way[] => this.#binary('or', at, ['or'], this.#and);
  #and = (at: number): Way[] => this.#binary('and', at, ['and'], this.#not);
  #not = (at: number): Way[] =>
    this.#rule('not', at, () => [
      ...this.#then(at, 'not', this.#not).map((of) => ({ tree: `(not ${of.tree})`, end: of.end })),
      ...this.#compare(at),
    ]);

  #compare = (at: number): Way[] =>
    this.#rule('compare', at, () =>
      this.#window(at).flatMap((left) => [left, ...this.#compared(left, left.end)]),
    );

  #compared(left: Way, at: number): Way[] {
    const ways: Way[] = [];
    for (const relation of ['<', '<=', '>', '>=']) {
      for (const right of this.#then(at, relation, this.#window)) {
        ways.push({ tree: `(${relation} ${left.tree} ${right.tree})`, end: right.end });
      }
    }
    if (this.#is(at, 'is')) {
      for (const right of this.#window(at + 1))
        ways.push({ tree: `(is ${left.tree} ${right.tree})`, end: right.end });
      for (const right of this.#then(at + 1, 'not', this.#window)) {
        ways.push({ tree: `(not-is ${left.tree} ${right.tree})`, end: right.end });
      }
    }
    ways.push(...this.#worded(left, at, ''));
    if (this.#is(at, 'not')) ways.push(...this.#worded(left, at + 1, 'not-'));
    return ways;
  }

  #worded(left: Way, at: number, not: string): Way[] {
    const ways: Way[] = [];
    for (const [word, second] of [
      ['between', 'and'],
      ['within', 'of'],
    ] as const) {
      for (const first of this.#then(at, word, this.#window)) {
        for (const last of this.#then(first.end, second, this.#window)) {
          ways.push({ tree: `(${not}${word} ${left.tree} ${first.tree} ${last.tree})`, end: last.end });
        }
      }
    }
    for (const low of this.#then(at, 'in', this.#window)) {
      ways.push({ tree: `(${not}in ${left.tree} ${low.tree})`, end: low.end });
      for (const high of this.#then(low.end, '..', this.#window)) {
        ways.push({
          tree: `(${not}in ${left.tree} ${withUnit(low.tree, high.tree)} ${high.tree})`,
          end: high.end,
        });
      }
    }
    return ways;
  }

  #window = (at: number): Way[] =>
    this.#rule('window', at, () =>
      this.#repeat(this.#sum(at), (left) => [
        ...this.#then(left.end, 'from', this.#sum).flatMap((start) =>
          this.#then(start.end, 'to', this.#sum).map((end) => ({
            tree: `(from ${left.tree} ${start.tree} ${end.tree})`,
            end: end.end,
          })),
        ),
        ...this.#then(left.end, 'where', (open) => this.#then(open, '(', this.expr)).flatMap((condition) =>
          this.#is(condition.end, ')')
            ? [{ tree: `(where ${left.tree} ${condition.tree})`, end: condition.end + 1 }]
            : [],
        ),
      ]),
    );

  #sum = (at: number): Way[] => this.#binary('sum', at, ['+', '-'], this.#term);
  #term = (at: number): Way[] => this.#binary('term', at, ['*', '/'], this.#unary);
  #unary = (at: number): Way[] =>
    this.#rule('unary', at, () => [
      ...['-', '+'].flatMap((sign) =>
        this.#then(at, sign, this.#unary).map((of) => ({ tree: `(${sign} ${of.tree})`, end: of.end })),
      ),
      ...this.#power(at),
    ]);

  #power = (at: number): Way[] =>
    this.#rule('power', at, () =>
      this.#post(at).flatMap((base) => [
        base,
        ...this.#then(base.end, '^', this.#unary).map((exponent) => ({
          tree: `(^ ${base.tree} ${exponent.tree})`,
          end: exponent.end,
        })),
      ]),
    );

  #post = (at: number): Way[] =>
    this.#rule('post', at, () =>
      this.#repeat(this.#atom(at), (of) => {
        const name = this.tokens[of.end + 1] ?? '';
        const member =
          this.#is(of.end, '.') && isName(name) ? [{ tree: `(. ${of.tree} ${name})`, end: of.end + 2 }] : [];
        const index = this.#then(of.end, '[', this.expr).flatMap((inner) =>
          this.#is(inner.end, ']') ? [{ tree: `([] ${of.tree} ${inner.tree})`, end: inner.end + 1 }] : [],
        );
        return [...member, ...index];
      }),
    );

  #atom = (at: number): Way[] =>
    this.#rule('atom', at, () => {
      const token = this.tokens[at];
      if (token === undefined) return [];
      if (/^[-+]?\d/.test(token))
        return [{ tree: String(Number.parseFloat(token)) + token.replace(/^[-+\d.]+ ?/, ''), end: at + 1 }];
      if (/^["]/.test(token) || ['true', 'false', 'yes', 'no', 'unclear'].includes(token)) {
        return [{ tree: token, end: at + 1 }];
      }
      const ways: Way[] = [];
      if (isName(token)) {
        ways.push({ tree: token, end: at + 1 });
        if (this.#is(at + 1, '(')) ways.push(...this.#arguments(token, at + 2));
      }
      for (const inner of this.#then(at, '(', this.expr)) {
        if (this.#is(inner.end, ')')) ways.push({ tree: inner.tree, end: inner.end + 1 });
      }
      return ways;
    });

  #arguments(name: string, at: number): Way[] {
    const ways: Way[] = this.#is(at, ')') ? [{ tree: `(${name})`, end: at + 1 }] : [];
    const lists = this.#repeat(
      this.#arg(at).map((first) => ({ tree: first.tree, end: first.end })),
      (list) =>
        this.#then(list.end, ',', this.#arg).map((next) => ({
          tree: `${list.tree} ${next.tree}`,
          end: next.end,
        })),
    );
    for (const list of lists) {
      if (this.#is(list.end, ')')) ways.push({ tree: `(${name} ${list.tree})`, end: list.end + 1 });
    }
    return ways;
  }

  #arg = (at: number): Way[] => {
    const ways = this.expr(at);
    const name = this.tokens[at] ?? '';
    if (!isName(name) || !this.#is(at + 1, '=')) return ways;
    return [
      ...ways,
      ...this.expr(at + 2).map((value) => ({ tree: `${name}=${value.tree}`, end: value.end })),
    ];
  };
}
