import type { KindName } from '../casefile/kinds/kinds.ts';

import { blank } from './offer.ts';

/** What a new cell of a kind starts with: the keys that most of them have, with places to fill in. */
export const kindSnippets: Readonly<Record<KindName, string>> = {
  diag: `diag: 1\ncase: ${blank(1, 'title')}\nvehicle:\n  description: ${blank(2, 'which vehicle')}\nengine:\n  displacement: ${blank(3, '2.4 L')}\n  cylinders: ${blank(4, '4')}\ncustomer says: ${blank(5, 'complaint')}\noutcome: open$0`,
  note: `note: |\n  ${blank(1, 'text')}$0`,
  readings: `readings: ${blank(1, 'title')}\nas: ${blank(2, 'name')}\nstate: ${blank(3, 'warm idle')}\nvalues:\n  $0`,
  reference: `reference: ${blank(1, 'title')}\nas: ${blank(2, 'spec')}\nsource: ${blank(3, 'where it is known from')}\nvalues:\n  $0`,
  capture: `capture: ${blank(1, 'title')}\nas: ${blank(2, 'name')}\nstate: ${blank(3, 'warm idle')}\nfile: ${blank(4, 'captures/file.csv')}\nchannels:\n  $0`,
  check: `check: ${blank(1, 'question')}\nlet:\n  ${blank(2, 'name')}: ${blank(3, 'expression')}\nexpect:\n  - $0`,
  test: `test: ${blank(1, 'question')}\nas: ${blank(2, 'name')}\ndid: ${blank(3, 'what was done')}\nfound: ${blank(4, 'what was seen')}\nresult: ${blank(5, 'yes')}$0`,
  picture: `picture: ${blank(1, 'title')}\nfile: ${blank(2, 'pictures/file.jpg')}\nalt: ${blank(3, 'the picture in words')}$0`,
  chart: `chart: ${blank(1, 'title')}\nkind: ${blank(2, 'trace')}\nplot:\n  - $0`,
  suspects: `suspects: ${blank(1, 'title')}\nconsider:\n  - name: ${blank(2, 'fault')}\n    predicts:\n      - $0`,
  question: `question: ${blank(1, 'title')}\nask: ${blank(2, 'question')}\nanswer: $0`,
  repair: `repair: ${blank(1, 'title')}\ndone: ${blank(2, 'what was done')}\nverify:\n  - $0`,
  caution: `caution: ${blank(1, 'what to take care of')}$0`,
};
