/** What a controller says when it refuses (ISO 15031-5 and ISO 14229-1, from memory). */
export function refusal(code: number): string {
  return reasons[code] ?? 'a reason that is not known here';
}

/** The answer follows later: no refusal at all. */
export const pending = 0x78;

const reasons: Readonly<Record<number, string>> = {
  16: 'refused without a reason',
  17: 'it does not have this service',
  18: 'it does not have this parameter, or the request had a wrong form',
  19: 'the request had a wrong length',
  33: 'it is busy; ask again',
  34: 'not in this state, for example not while the engine runs',
  49: 'the value asked for is out of range',
  51: 'it is locked against it',
};
