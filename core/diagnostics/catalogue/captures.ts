import { didYouMean, oneOf, type Rows } from '../row.ts';

/** Findings about captures: their files, how these are written, and what their columns hold. */
export interface CaptureFacts {
  readonly 'capture-file-missing': { readonly file: string };
  readonly 'capture-file-outside': {
    readonly file: string;
    readonly how: 'absolute path' | 'parent folder' | 'address' | 'link' | 'link not resolved';
  };
  readonly 'capture-file-too-large': {
    readonly file: string;
    readonly size: string;
    readonly most: string;
    /** The size is that of the content of a packed file. */
    readonly packed: boolean;
  };
  readonly 'capture-file-unreadable': { readonly file: string; readonly why: string };
  readonly 'capture-no-samples': { readonly file: string; readonly why: string };
  readonly 'capture-two-readings': {
    readonly file: string;
    readonly line: string;
    readonly readings: readonly string[];
  };
  readonly 'capture-names-run-out': {
    readonly file: string;
    readonly line: string;
    readonly columns: number;
    readonly names: number;
  };
  readonly 'capture-recognised': { readonly file: string; readonly how: string };
  readonly 'capture-lines-refused': {
    readonly file: string;
    readonly lines: number;
    readonly fields: number;
    readonly rows: number;
    readonly first: readonly string[];
  };
  readonly 'capture-too-long': { readonly file: string; readonly rows: number };
  readonly 'capture-no-time': { readonly columns: readonly string[] };
  readonly 'capture-channels-in-rows': {
    readonly file: string;
    readonly column: string;
    readonly names: readonly string[];
  };
  readonly 'capture-clock-unclear': { readonly column: string; readonly text: string };
  readonly 'capture-one-sample': { readonly what: string };
  readonly 'channel-without-unit': {
    readonly name: string;
    readonly column: string;
    readonly units: readonly string[];
  };
  readonly 'channel-without-samples': { readonly name: string; readonly column: string };
  readonly 'channel-never-changes': {
    readonly name: string;
    readonly value: string;
    readonly samples: number;
  };
  readonly 'channel-by-other-time': { readonly name: string; readonly own: string; readonly read: string };
  readonly 'time-runs-back': { readonly time: string; readonly place: string };
  readonly 'column-stands-twice': { readonly column: string; readonly columns: readonly string[] };
  readonly 'unknown-column': {
    readonly column: string;
    readonly columns: readonly string[];
    readonly nearest: readonly string[];
  };
}

export const captureRows: Rows<CaptureFacts> = {
  'capture-file-missing': {
    severity: 'error',
    title: 'A capture whose file is not there',
    say: ({ file }) =>
      `There is no file \`${file}\` in the case’s folder. Copy it there, or write its name as it is, letter for letter${file.includes('\\') ? ' and with `/` between folders' : ''}.`,
    why: 'What is computed from the capture cannot be computed without it. Upper and lower case are different letters on many machines.',
    wrong: 'file: captures/O2.csv      # the file is named o2.csv',
    right: 'file: captures/o2.csv',
  },
  'capture-file-outside': {
    severity: 'error',
    title: 'A file outside the case’s folder',
    say: ({ file, how }) => `${outside(file, how)} Copy it beside the case, or into a folder below.`,
    why: 'A case may come from a stranger. It reads nothing but what lies beside it, so that opening it never opens anything else.',
    wrong: 'file: ../van14/o2.csv',
    right: 'file: captures/o2.csv',
  },
  'capture-file-too-large': {
    severity: 'error',
    title: 'A capture that is too large',
    say: ({ file, size, most, packed }) =>
      `\`${file}\` has ${size}${packed ? ' or more when it is unpacked' : ''} and was not read; a capture may have ${most}. Export a shorter stretch or fewer channels from the tool, or keep its first lines: \`head -n 1000000 long.csv > short.csv\`.`,
    why: 'The bound keeps one file from filling the memory. A million samples of four channels are a seventh of it.',
    wrong: 'file: captures/whole-week.csv',
    right: 'file: captures/cold-start.csv',
  },
  'capture-file-unreadable': {
    severity: 'error',
    title: 'A capture that cannot be read',
    say: ({ file, why }) => `\`${file}\` cannot be read: ${why}.`,
    why: 'What is computed from the capture cannot be computed without it.',
    wrong: 'file: captures/o2.csv.gz   # its download was cut off',
    right: 'file: captures/o2.csv',
  },
  'capture-no-samples': {
    severity: 'error',
    title: 'A file without samples',
    say: ({ file, why }) => `No samples were found in \`${file}\`: ${why}.`,
    why: 'A capture is delimited text: a heading row, then a row for each moment, its columns parted by commas, semicolons, tabs or spaces.',
    wrong: 'file: captures/scope.bin',
    right: 'file: captures/scope.csv   # exported from the tool as text',
  },
  'capture-two-readings': {
    severity: 'error',
    title: 'A file that can be read in two ways',
    say: ({ file, line, readings }) =>
      `The line \`${line}\` of \`${file}\` can be read in ${readings.length === 2 ? 'two' : readings.length} ways: ${readings.map((each, at) => `(${at + 1}) ${each}`).join('; ')}. Say which with \`format\`.`,
    why: 'A comma may part two columns or be a decimal mark. Where the file does not show which, a guess would be right half the time.',
    wrong: 'file: captures/log.csv',
    right: 'file: captures/log.csv\nformat: {delimiter: comma, decimal: point, heading rows: 1}',
  },
  'capture-names-run-out': {
    severity: 'error',
    title: 'More columns than the heading names',
    say: ({ file, line, columns, names }) =>
      `The line \`${line}\` of \`${file}\` has ${columns} columns, and its heading names ${names}. If its commas are decimal marks, they cannot part the columns, too: export it with semicolons, with tabs or with decimal points. If commas do part the columns, say so: \`format: {delimiter: comma}\`.`,
    why: 'Commas that are decimal marks tear every number into two, and each column is then half of another.',
    wrong: 'Time (s),Front (V)\n0,5,0,12\n0,6,0,80',
    right: 'Time (s);Front (V)\n0,5;0,12\n0,6;0,80',
  },
  'capture-recognised': {
    severity: 'info',
    title: 'How a capture was read',
    say: ({ file, how }) => `\`${file}\` was read so: ${how}.`,
    why: 'What the cell does not say is recognised from the file, and shown, so that a wrong reading is seen. `format` and `time` make it certain.',
    wrong: 'file: captures/log.csv',
    right: 'file: captures/log.csv\nformat: {delimiter: semicolon, decimal: comma, heading rows: 2}',
  },
  'capture-lines-refused': {
    severity: 'warning',
    title: 'Lines of a capture that were not read',
    say: ({ file, lines, fields, rows, first }) =>
      `In \`${file}\` ${refused(lines, fields)} not read; ${rows} ${rows === 1 ? 'row was' : 'rows were'}. ${first.join(' ')}${lines + fields > first.length ? ' The others are like these or different.' : ''}`,
    why: 'Nothing is left out silently: a tool’s remark between the samples does no harm, a column of words is none of numbers.',
    wrong: '12.50,0.45\n12.60,ERR\n12.70',
    right: '12.50,0.45\n12.60,\n12.70,0.47',
  },
  'capture-too-long': {
    severity: 'error',
    title: 'More samples than are read',
    say: ({ file, rows }) =>
      `\`${file}\` has more rows than the ${rows} that are read for so many channels. Name fewer channels, or cut the file.`,
    why: 'The bound keeps one file from filling the memory.',
    wrong: 'a day at ten thousand samples a second',
    right: 'the minute that matters',
  },
  'capture-no-time': {
    severity: 'error',
    title: 'A capture without its time',
    say: ({ columns }) =>
      columns.length === 1
        ? `The only column is \`${columns[0]}\`, and there is no time. Export the file with its time.`
        : `No column is headed as a time. Say which one it is: \`time: …\`. ${headed(columns)}`,
    why: 'Rates, crossings and windows need to know when each sample was taken.',
    wrong: 'file: captures/log.csv     # columns: n, map, rpm',
    right: 'file: captures/log.csv\ntime: {column: n, unit: ms}',
  },
  'capture-channels-in-rows': {
    severity: 'warning',
    title: 'Channels that take turns in one column',
    say: ({ file, column, names }) =>
      `The rows of \`${file}\` seem to hold one channel each, named under \`${column}\`: ${names.map((each) => `\`${each}\``).join(', ')} … Their values stand in one column and are read as one channel. Export the file with a column for each channel.`,
    why: 'A mean or a crossing over the values of several channels means nothing.',
    wrong: 'time,channel,value\n0.0,rpm,780\n0.0,map,34\n0.1,rpm,785',
    right: 'time,rpm,map\n0.0,780,34\n0.1,785,34',
  },
  'capture-clock-unclear': {
    severity: 'error',
    title: 'A clock that can be read in two ways',
    say: ({ column, text }) =>
      `\`${text}\` under \`${column}\` may be hours and minutes or minutes and seconds. Say which: \`unit: hh:mm\` or \`unit: mm:ss\`.`,
    why: 'The one is sixty times the other, and the file does not show which it is.',
    wrong: 'file: captures/log.csv     # Elapsed: 00:05, 00:10, 00:15',
    right: 'file: captures/log.csv\ntime: {column: Elapsed, unit: mm:ss}',
  },
  'capture-one-sample': {
    severity: 'warning',
    title: 'A capture of one sample',
    say: ({ what }) =>
      `${what} has one sample: it has a value, but no rate, no crossing and no duration. Was the right stretch exported?`,
    why: 'A capture shows how something changes. A single value is a reading.',
    wrong: 'rows: |\n  time  front\n  0 s   0.12 V',
    right: 'values:\n  o2_b1s1: 0.12 V',
  },
  'channel-without-unit': {
    severity: 'error',
    title: 'A channel without its unit',
    say: ({ name, column, units }) =>
      `The column \`${column}\` gives no unit that is known here, and \`${name}\` needs one. Write ${oneOf(units.map((unit) => `\`unit: ${unit}\``))}.`,
    why: 'Half of all misreadings are a number in one unit read as another.',
    wrong: 'channels:\n  map: Manifold pressure',
    right: 'channels:\n  map: {column: Manifold pressure, unit: kPa}',
  },
  'channel-without-samples': {
    severity: 'warning',
    title: 'A channel without a number',
    say: ({ name, column }) =>
      `The column \`${column}\` holds no number at all, so \`${name}\` has no samples. Was the channel connected and switched on?`,
    why: 'A channel of nothing but blanks or words cannot be computed with.',
    wrong: 'time,front\n0,---\n1,---',
    right: 'time,front\n0,0.12\n1,0.80',
  },
  'channel-never-changes': {
    severity: 'info',
    title: 'A channel that never changes',
    say: ({ name, value, samples }) =>
      `\`${name}\` reads ${value} in all its ${samples} samples. A live signal moves a little: is it a substituted value, or an input that is not connected?`,
    why: 'A control unit that has lost a sensor goes on showing a fixed value.',
    wrong: 'time,ect\n0,-40\n1,-40\n2,-40',
    right: 'time,ect\n0,88.2\n1,88.3\n2,88.3',
  },
  'channel-by-other-time': {
    severity: 'warning',
    title: 'A channel that has a time of its own',
    say: ({ name, own, read }) =>
      `\`${name}\` stands behind \`${own}\` in the file and is read by \`${read}\`, whose moments are other ones. Say whose they are: \`time: ${own}\` with the channel, or \`time: ${read}\` if that is meant.`,
    why: 'A recorder that samples its channels at different rates writes a time for each. By another’s time a channel is stretched or shifted.',
    wrong: 'channels:\n  rear: rear (V)        # columns: front time, front, rear time, rear',
    right: 'channels:\n  rear: {column: rear (V), time: rear time (s)}',
  },
  'time-runs-back': {
    severity: 'error',
    title: 'A time that runs backwards',
    say: ({ time, place }) =>
      `In ${place} the time goes back to ${time}. Put the rows in order, or cut the capture where its clock was set.`,
    why: 'Rates, crossings and times between two samples mean nothing when the clock runs backwards.',
    wrong: 'rows: |\n  time  front\n  0 s   0.12 V\n  2 s   0.15 V\n  1 s   0.40 V',
    right: 'rows: |\n  time  front\n  0 s   0.12 V\n  1 s   0.40 V\n  2 s   0.15 V',
  },
  'column-stands-twice': {
    severity: 'error',
    title: 'A heading that stands twice',
    say: ({ column, columns }) =>
      `${columns.length} columns are headed \`${column}\`. Say which by its number, counted from the left: ${oneOf(columns.map((each) => `\`${each}\``))}.`,
    why: 'The first is no likelier than the second. Tools that record several devices head their columns alike.',
    wrong: 'channels:\n  rear: O2 (V)          # columns: Time (s), O2 (V), O2 (V)',
    right: 'channels:\n  rear: "O2 (V) #2"',
  },
  'unknown-column': {
    severity: 'error',
    title: 'A column that the samples do not have',
    say: ({ column, columns, nearest }) =>
      `No column is headed \`${column}\`.${didYouMean(nearest)} ${headed(columns)}`,
    why: 'A channel takes its samples from the column whose heading it names, letter for letter.',
    wrong: 'rows: |\n  time  front\n  0 s   0.12 V\nchannels:\n  o2: {column: Front}',
    right: 'rows: |\n  time  front\n  0 s   0.12 V\nchannels:\n  o2: {column: front}',
  },
};

/** The columns that are there; of many the first 12. */
function headed(columns: readonly string[]): string {
  const all = columns.map((each) => `\`${each}\``);
  if (all.length < 2) return `There is only ${all.join('')}.`;
  if (all.length > 12) return `There are ${all.slice(0, 12).join(', ')} and ${all.length - 12} more.`;
  return `There are ${all.slice(0, -1).join(', ')} and ${all[all.length - 1]}.`;
}

function outside(file: string, how: CaptureFacts['capture-file-outside']['how']): string {
  switch (how) {
    case 'absolute path':
      return `\`${file}\` names a place on this machine, and a case reads only what lies in its own folder.`;
    case 'parent folder':
      return `\`${file}\` leads out of the case’s folder by \`..\`.`;
    case 'address':
      return `\`${file}\` is an address, and a case fetches nothing.`;
    case 'link':
      return `\`${file}\` is a link that leads out of the case’s folder.`;
    case 'link not resolved':
      return `\`${file}\` is a link, and where it leads cannot be seen here.`;
  }
}

function refused(lines: number, fields: number): string {
  const some = (count: number, one: string): string => `${count} ${count === 1 ? one : `${one}s`}`;
  if (fields === 0) return `${some(lines, 'line')} ${lines === 1 ? 'was' : 'were'}`;
  if (lines === 0) return `${some(fields, 'value')} ${fields === 1 ? 'was' : 'were'}`;
  return `${some(lines, 'line')} and ${some(fields, 'value')} were`;
}
