import type { Rows } from '../row.ts';

/** Findings of whoever fetches a case file, before a character of it is read. */
export interface FileAccessFacts {
  readonly 'unreadable-file': { readonly why: string };
  readonly 'file-too-large': { readonly size: string; readonly most: string };
}

export const fileAccessRows: Rows<FileAccessFacts> = {
  'unreadable-file': {
    severity: 'error',
    title: 'The file cannot be read',
    say: ({ why }) => `The file cannot be read: ${why}. The other cases are checked all the same.`,
    why: 'A folder of cases is checked as a whole; one that cannot be read must not go unnoticed among them.',
    wrong: 'a link `van14.diag` to a file that was moved',
    right: 'the file itself, or a link to where it is now',
  },
  'file-too-large': {
    severity: 'error',
    title: 'The file is too large for a case',
    say: ({ size, most }) =>
      `The file has ${size} and was not read; a case may have ${most}. Put sampled data into a capture file beside the case.`,
    why: 'A case is read by people. The bound keeps a wrong or damaged file from stopping the program.',
    wrong: 'a recording of an hour pasted into the case',
    right: 'capture: The hour\nfile: captures/hour.csv',
  },
};
