/**
 * A case of twelve cells and more than 4 kB, as a technician would write one; all numbers are synthetic.
 * Different `n` give different titles, texts and readings, and the same verdicts: nothing can be answered from a cache of whole files.
 */
export function fleetCase(n: number): string {
  const step = n % 40;
  const inHg = (value: number) => `${(value + step * 0.01).toFixed(2)} inHg`;
  const percent = (value: number) => `${value < 0 ? '' : '+'}${value + (step % 3)} %`;
  const odometer = 90000 + n * 7;
  return `diag: 1
case: Hunts at idle after the intake was off, visit ${n}
vehicle:
  description: island rental fleet, van ${n}
  year: 2011
  odometer: ${odometer} km
engine:
  displacement: 2.4 L
  cylinders: 4
  firing order: 1-3-4-2
  compression ratio: 10.5
  fuel: E10
  aspiration: natural
  metering: air flow            # the meter sits before the plenum
  injection: port
  front sensor: zirconia
  idle control: valve
site:
  altitude: 35 ft
  sea level pressure: 29.88 inHg   # the weather report's figure
tools:
  scan:
    description: generic scan data
  gauge:
    description: vacuum gauge
    accuracy: 0.2 inHg
customer says: Idle swings at the lights, fine on the highway. It began after the injectors were cleaned.
history: |
  Intake off three weeks ago to clean the injectors. Plenum gasket used again.
  Battery disconnected for the work, trims learned anew since then.
codes:
  - P0171
  - P0507
outcome: solved
cause: The plenum gasket was folded over at its rear corner.
repair: New gasket, plenum torqued in sequence.
---
note: |
  The van came in for visit ${n} with a full tank and a warm engine.
  Nothing was disconnected before the first readings were taken.
  The engine was left to idle for ten minutes, and the hunt came and went with the fan.

  First the barometer, then the three loads, then the gauge: the cheap tests that split the list in half.
---
readings: Key on, engine off
as: koeo
state: key on engine off
tool: scan
values:
  map: ${inHg(29.5)}
  ect: 178 °F
  iat: 84 °F
  tp: 0.6 V
  battery: 12.5 V
---
readings: Three loads, before
as: before
when: before
tool: scan
states:
  idle: warm idle
  fast: 2500 rpm no load
  drive: cruise
table: |
  reading   idle   fast   drive   unit
  rpm       780    2500   2240    rpm
  map       13.1   9.8    17.0    inHg
  stft_b1   ${8 + (step % 3)}      ${2 + (step % 2)}      1       %
  ltft_b1   17     6      3       %
  iac       3      11     -       %
  ect       194    195    196     °F
---
readings: Gauge at idle
as: gauged
when: before
state: warm idle
values:
  vacuum:
    value: 16.4 inHg
    tool: gauge
    at: brake booster port
    saw: steady
---
reference: Maker's figures
as: spec
source: maker's service information, seen on the day
state: warm idle
values:
  vacuum: 17 .. 21 inHg
  back_pressure: at most 1.5 psi
---
check: Do the gauge and the sensor agree with the barometer?
as: sides
let:
  baro_seen: before.idle.map + gauged.vacuum
expect:
  - baro_seen within 0.5 inHg of koeo.map
  - koeo.map between 29 inHg and 31 inHg
because: |
  Manifold pressure and manifold vacuum are two sides of one number.
  When they do not add up to the barometer, one of the three is wrong, and it is found before anything is replaced.
---
check: Does the trim fall as the engine takes more air?
as: trims
shows: fault
let:
  idle: total_trim(before.idle.stft_b1, before.idle.ltft_b1)
  fast: total_trim(before.fast.stft_b1, before.fast.ltft_b1)
  drive: total_trim(before.drive.stft_b1, before.drive.ltft_b1)
expect:
  - idle > fast and fast > drive
  - expect: idle between -10 % and 10 %
    if fails: Look for unmetered air before fuel.
because: |
  A hole lets in about the same grams of air at every speed, which is a large part of a little and a small part of a lot.
  A weak pump or a lying meter shows itself the other way round.
---
test: Smoke into the intake
as: smoke
did: Half a psi of smoke through the booster hose, with the intake pipe closed.
at: rear corner of the plenum
found: Smoke at the gasket, none at the injector seals.
result: yes
---
suspects: Lean at idle only
consider:
  - name: air past the meter
    predicts:
      - trims.idle > trims.fast
      - smoke.result is yes
    ruled out if:
      - trims.fast > trims.idle + 5 %
  - name: weak fuel supply
    predicts:
      - trims.fast > trims.idle
---
readings: Idle, after
as: after
when: after
state: warm idle
tool: scan
values:
  map: ${inHg(11.2)}
  stft_b1: ${percent(-1)}
  ltft_b1: ${percent(1)}
  iac: 22 %
---
repair: New plenum gasket
done: Gasket replaced, plenum torqued in sequence, trims cleared, twenty minutes on the road at mixed loads.
verify:
  - after.ltft_b1 between -5 % and 5 %
  - after.stft_b1 between -5 % and 5 %
`;
}
