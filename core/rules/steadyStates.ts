/** States of a warm engine that hold still, by the air that it takes, from the least. */
export const steadyStates: readonly string[] = [
  'warm idle',
  'idle in gear',
  '1500 rpm no load',
  '2500 rpm no load',
  'light cruise',
  'cruise',
  'heavy load',
];
