/** A case whose cells name each other in every way that there is. */
export const loads = `readings: Three loads
as: before
states:
  idle: warm idle
  fast: 2500 rpm no load
table: |
  reading   idle   fast   unit
  map       13.1   9.8    inHg
  stft_b1   +8     -      %
---
reference: Maker
as: spec
values:
  vacuum: 17 .. 21 inHg
  lift: 9 mm
---
readings: Gauge
as: gauged
state: warm idle
values:
  vacuum: {value: 16.4 inHg, tool: gauge}
  sump: 80 °C
---
check: Sum
as: sum
let:
  seen: before.idle.map + gauged.vacuum
  twice: 2 * seen
expect:
  - seen within 0.5 inHg of 29.5 inHg
  - expect: sum.twice > 1 inHg
    if fails: Look again.
---
suspects: Who
consider:
  - name: a leak
    predicts:
      - sum.seen > 20 inHg absolute
    ruled out if:
      - before.map["idle"] > 20 inHg
      - engine.displacement > spec.lift * spec.lift * spec.lift
---
test: Smoke
as: smoke
result: yes
---
check: Smoke came out
expect:
  - smoke.result is yes
`;

/** The same with the cursor behind the first character of a place. */
export function loadsAt(place: string): string {
  if (!loads.includes(place)) throw new Error(`There is no \`${place}\`.`);
  return loads.replace(place, `${place.slice(0, 1)}$0${place.slice(1)}`);
}
