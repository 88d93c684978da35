import Qty from 'js-quantities';
import { convert } from '../../core/quantity/convert.ts';
import { scanQuantity } from '../../core/quantity/scan.ts';
import { unitOf } from '../../core/quantity/unit.ts';
import { contest } from './harness.ts';

/** Parsing a written quantity and converting it, against js-quantities, on the same texts. */
const changes = [
  ['inHg', 'kPa'],
  ['psi', 'kPa'],
  ['g/s', 'kg/h'],
  ['mph', 'km/h'],
  ['V', 'mV'],
] as const;
const jobs = Array.from({ length: 250 }, (_, n) => {
  const [from, to] = changes[n % changes.length] ?? changes[0];
  const number = (0.5 + n * 0.37).toFixed(2);
  return { text: `${number} ${from}`, digits: number.length, from, to };
});

for (const { text, to } of jobs) {
  const [own, other] = [ours(text, to), theirs(text, to)];
  // js-quantities rounds some of its factors, so the two agree to about six digits.
  if (!(Math.abs(own - other) <= 1e-5 * Math.abs(other)))
    throw new Error(`${text} is ${own} or ${other} ${to}?`);
}

contest({
  title: 'Parse a quantity and convert it',
  operations: jobs.length,
  sides: [
    { name: 'casebook', run: () => sum(({ text, to }) => ours(text, to)) },
    { name: 'js-quantities', run: () => sum(({ text, to }) => theirs(text, to)) },
    {
      name: 'floor: Number of the digits',
      run: () => sum(({ text, digits }) => Number(text.slice(0, digits)) * 3.6),
    },
  ],
  bounds: [{ to: 'js-quantities', atLeastTheRate: 15 }],
});

function ours(text: string, to: string): number {
  const quantity = scanQuantity(text, 0)?.quantity;
  const target = unitOf(to);
  if (quantity === undefined || target === undefined) return Number.NaN;
  return convert(quantity.value, quantity.unit, target) ?? Number.NaN;
}

function theirs(text: string, to: string): number {
  return Qty(text).to(to).scalar;
}

function sum(of: (job: (typeof jobs)[number]) => number): number {
  let total = 0;
  for (const job of jobs) total += of(job);
  return total;
}
