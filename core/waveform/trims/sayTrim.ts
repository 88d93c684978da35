/** A share as percent with its sign: "+25 %". */
export function sayShare(share: number): string {
  const percent = Math.round(share * 1000) / 10;
  return `${percent > 0 ? '+' : ''}${percent === 0 ? 0 : percent} %`;
}

/** An air flow in kg/s as grams per second: "1.1 g/s". */
export function sayGrams(flow: number): string {
  return `${Number((flow * 1000).toPrecision(2))} g/s`;
}
