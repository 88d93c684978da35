/*
 * Counters of service 09, kinds 08 (spark ignition) and 0B (compression ignition): how often a monitor came to a result
 * and how often the conditions for it were met (SAE J1979, INFOTYPE 08 and 0B; values from memory).
 */

const monitored = (monitor: string): readonly string[] => [
  `${monitor} came to a result`,
  `Conditions for the ${monitor.charAt(0).toLowerCase()}${monitor.slice(1)} were met`,
];

const always = ['Conditions for monitoring were met', 'Starts of the engine'];

/** In the order of their two bytes; newer controllers answer more of them. */
export const inUseCounters: ReadonlyMap<number, readonly string[]> = new Map([
  [
    0x08,
    [
      ...always,
      ...monitored('Catalyst monitor of bank 1'),
      ...monitored('Catalyst monitor of bank 2'),
      ...monitored('Oxygen sensor monitor of bank 1'),
      ...monitored('Oxygen sensor monitor of bank 2'),
      ...monitored('Exhaust gas recirculation or valve timing monitor'),
      ...monitored('Secondary air monitor'),
      ...monitored('Evaporative system monitor'),
      ...monitored('Rear oxygen sensor monitor of bank 1'),
      ...monitored('Rear oxygen sensor monitor of bank 2'),
      ...monitored('Monitor of uneven cylinders of bank 1'),
      ...monitored('Monitor of uneven cylinders of bank 2'),
      ...monitored('Particulate filter monitor of bank 1'),
      ...monitored('Particulate filter monitor of bank 2'),
    ],
  ],
  [
    0x0b,
    [
      ...always,
      ...monitored('Hydrocarbon catalyst monitor'),
      ...monitored('Monitor of the NOx catalyst'),
      ...monitored('Monitor of the NOx adsorber'),
      ...monitored('Particulate filter monitor'),
      ...monitored('Exhaust gas sensor monitor'),
      ...monitored('Exhaust gas recirculation or valve timing monitor'),
      ...monitored('Charge pressure monitor'),
      ...monitored('Fuel system monitor'),
    ],
  ],
]);
