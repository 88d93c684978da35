/** What a new cell of each kind starts with. A note is a page; all others are text. */
export const cellTemplates = {
  note: '',
  readings: `readings: What was measured
state: warm idle
values:
  rpm: not taken
`,
  reference: `reference: What is known beforehand
source: where it is known from
values:
  vacuum: 17 .. 21 inHg
`,
  capture: `capture: What was recorded
state: warm idle
file: captures/recording.csv
time: Time (s)
channels:
  o2_b1s1:
    column: O2 B1S1
    unit: V
`,
  check: `check: What should be so?
expect:
  - rpm between 600 rpm and 900 rpm
because: Why it should be so.
`,
  test: `test: What was tried
did: What was done.
found: What was seen.
result: unclear
`,
  picture: `picture: What it shows
file: pictures/photograph.jpg
alt: What can be seen, for those who cannot see it.
`,
  chart: `chart: What it shows
kind: cylinders
plot: compression
`,
  suspects: `suspects: What could it be?
consider:
  - name: the first fault that would explain the readings
    because: Say what it predicts, and what would rule it out.
`,
  question: `question: What do you expect?
ask: The question, in full.
answer: The answer.
because: Why.
`,
  repair: `repair: What was done
done: Nothing yet.
`,
  caution: `caution: What can hurt in the next step. The maker's service information and local rules come first.
`,
} as const satisfies Readonly<Record<string, string>>;

export type InsertedKind = keyof typeof cellTemplates;

export const insertedKinds = Object.keys(cellTemplates) as readonly InsertedKind[];
