import type { Item } from './item.ts';

/** What one controller answers to one request; a message with several parameters gives one of each. */
export interface Answer {
  /** As in `Message`. */
  readonly id: string;
  /** 1 to 10, as asked for. */
  readonly service: number;
  /** The parameter, test or kind of information; undefined for services that have none. */
  readonly parameter: number | undefined;
  /** Of service 02: which freeze frame. */
  readonly frame: number | undefined;
  readonly items: readonly Item[];
  /** Its bytes on the tape, the service included. */
  readonly from: number;
  readonly to: number;
}

export type CodeStatus = 'stored' | 'pending' | 'permanent';

/** A trouble code that a controller gave; its two bytes on the tape. */
export interface GivenCode {
  readonly id: string;
  readonly code: string;
  readonly status: CodeStatus;
  readonly from: number;
  readonly to: number;
}
