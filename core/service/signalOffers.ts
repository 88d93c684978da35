import { signalPage } from '../report/pages.ts';
import { allSignals } from '../signals/lookup.ts';
import type { Signal } from '../signals/types.ts';
import { offer } from './offer.ts';
import { pageMarkdown } from './pageMarkdown.ts';
import type { Standing } from './standing.ts';
import type { Completion } from './types.ts';
import { type Typing, wordBefore } from './typing.ts';

/** The vocabulary, the case's own signals first; what is behind a signal's name in `values`. */
export function signalOffers(
  { names }: Standing,
  typing: Pick<Typing, 'before' | 'start' | 'siblings'>,
  after: string,
): readonly Completion[] {
  const span = wordBefore(typing.before, typing.start);
  return [...names.ownSignals.values(), ...allSignals()]
    .filter(({ name }) => !typing.siblings.includes(name))
    .map((signal) => ({
      ...offer('signal', signal.name, signal.meaning, span),
      newText: `${signal.name}${after}`,
      markdown: pageOf(signal),
      rank: signal.family === 'own' ? 1 : 2,
      filter: [signal.name, signal.meaning, ...(signal.alsoCalled ?? [])].join(' '),
    }));
}

const pages = new WeakMap<Signal, string>();

function pageOf(signal: Signal): string {
  let page = pages.get(signal);
  if (page === undefined) {
    page = pageMarkdown(signalPage(signal));
    pages.set(signal, page);
  }
  return page;
}
