/** A whole case of the island rental fleet: every kind of cell that is filled in by hand. Synthetic. */
export const exampleCase = `diag: 1
case: Hunts at idle after the intake was off
vehicle:
  description: island rental fleet, van 14
  year: 2011
  odometer: 128400 km
engine:
  displacement: 2.4 L
  cylinders: 4
  firing order: 1-3-4-2
  compression ratio: 10.5
  fuel: E10
  aspiration: natural
  metering: air flow            # air flow, manifold pressure, or both
  injection: port
  front sensor: zirconia        # zirconia, titania, wideband
  idle control: valve           # valve, throttle
  cam drive teeth: 40
site:
  altitude: 35 ft
  sea level pressure: 29.88 inHg   # the weather report's figure (altimeter setting, QNH)
tools:
  scan: {description: generic scan data}
  gauge: {description: vacuum gauge, accuracy: 0.2 inHg}
customer says: Idle swings at the lights, fine on the highway.
codes:
  - P0171
  - {code: P0507, status: pending}
outcome: solved
---
readings: Key on, engine off
as: koeo
state: key on engine off
values:
  map: 29.6 inHg
  ect: 68 °F
  iat: 67 °F
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
  stft_b1   +8     +2     +1      %
  ltft_b1   +17    +6     +3      %
  iac       3      11     -       %
---
readings: Gauge at idle
as: gauged
when: before
state: warm idle
values:
  vacuum: {value: 16.4 inHg, tool: gauge, at: brake booster port, saw: steady}
  loop: closed
---
readings: Compression, throttle open
as: cranked
when: before
state: cranking
values:
  compression: {1: 181 psi, 2: 178 psi, 3: 180 psi, 4: 179 psi}
---
reference: Maker's figures
as: spec
source: maker's service information, seen on the day
state: warm idle
values:
  vacuum: 17 .. 21 inHg
  back_pressure: at most 1.5 psi
  maf_curve: [[0.4 V, 2 g/s], [1.1 V, 9 g/s], [2.6 V, 55 g/s]]
---
check: Do the gauge and the sensor agree with the barometer?
let:
  baro_seen: before.idle.map + gauged.vacuum
expect:
  - baro_seen within 0.5 inHg of koeo.map
because: |
  Manifold pressure and manifold vacuum are two sides of one number.
---
check: Does the trim fall as the engine takes more air?
as: trims
shows: fault
let:
  idle: total_trim(before.idle.stft_b1, before.idle.ltft_b1)
  fast: total_trim(before.fast.stft_b1, before.fast.ltft_b1)
expect:
  - idle > fast
  - expect: idle between -10 % and 10 %
    if fails: Look for unmetered air before fuel.
---
capture: Sensors before and after the catalyst
as: o2
state: 2500 rpm no load
file: captures/o2-2500.csv
time: Time (s)
channels:
  front: {column: "O2 B1S1 [V]", unit: V, signal: o2_b1s1}
  rear: {column: "O2 B1S2 [V]", unit: V, signal: o2_b1s2}
chart: switching
---
test: Smoke into the intake
as: smoke
did: Half a psi of smoke through the booster hose.
at: rear corner of the plenum
found: Smoke at the gasket, none at the injector seals.
result: yes
---
picture: The gasket
file: pictures/gasket.jpg
alt: A paper gasket folded over at one corner.
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
question: What should the barometer read here?
ask: You are near sea level. Add the two readings and say what you get.
answer: before.idle.map + gauged.vacuum
accept: 0.3 inHg
points: 2
---
readings: Idle, after
as: after
when: after
state: warm idle
values:
  ltft_b1: +2 %
---
repair: New plenum gasket
done: Gasket replaced, plenum torqued in sequence, trims cleared.
verify:
  - after.ltft_b1 between -5 % and 5 %
`;
