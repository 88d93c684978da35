import type { Diagnostic } from './diagnostic.ts';
import { otherMessage } from './otherWords.ts';
import { ruleMessage } from './ruleWords.ts';

/** What is wrong and what to do about it, in a sentence or two. */
export function message(diagnostic: Diagnostic): string {
  // A sound case has findings of the rules only: the command line reads no other words for it.
  return ruleMessage(diagnostic) ?? otherMessage(diagnostic);
}
