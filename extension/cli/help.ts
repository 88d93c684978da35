/** What `casebook --help` and `casebook COMMAND --help` print, in a technician's words. */
export function help(command: string | undefined): string {
  return (command === undefined ? undefined : pages.get(command)) ?? overview;
}

const overview = `casebook: diagnostic cases as text, checked

  casebook check PATHS…           check cases: units, values, verdicts, findings
  casebook report PATHS… -o FILE  write the cases as one HTML page, to read or print
  casebook new [TEMPLATE] [FILE]  start a case from a template
  casebook import FILE [CASE]     cells for a scan log or a scope’s export, channels named
  casebook decode [FILE]          what recorded answers of the diagnostic link say
  casebook explain NAME           what a name means: a finding, function, signal, key …

PATHS are case files (name.diag), folders (all cases below them) or patterns like "vans/**/*.diag".

  casebook COMMAND --help         more about one command
  casebook --version

Ends with 0 when all is well, with 1 when a case has an error or a repair is not proven,
and with 2 when the command could not do its work.
`;

const pages: ReadonlyMap<string, string> = new Map([
  [
    'check',
    `casebook check PATHS…

Reads the cases, computes what they compute, and says of each expectation whether it
holds, fails, is too close to call, was not measured, or cannot be computed.
Below that stand the findings: what is wrong in the file, and where.

  --strict            an expectation that fails counts as an error,
                      unless its check says "shows: fault"
  --format json       for other programs; the shape is a promise (results.schema.json)
  --format text       for people (without --format)
  --record FILE       keep the verdicts and findings in FILE, to compare with later
  --recorded FILE     compare with what was kept: ends with 0 when nothing has changed,
                      even if the cases hold errors on purpose

A check that fails is a finding about the car and no error: cases are about faults.
Ends with 1 when a case has an error, or when something under "verify" does not hold.
Colours are used on a terminal only, and not when NO_COLOR is set.

  casebook check van14.diag
  casebook check cases --strict
`,
  ],
  [
    'report',
    `casebook report PATHS… -o FILE

Writes one HTML file with all the cases. It needs nothing but itself: pictures are inside,
no script runs, nothing is fetched. Opens in any browser, light or dark; prints on paper,
each case starting on a page, answers at each case's end.

  -o, --output FILE   the file to write; "-" writes to the screen or the next program
  --title WORDS       what stands on top when there are several cases

  casebook report cases -o cases.html
`,
  ],
  [
    'new',
    `casebook new [TEMPLATE] [FILE]

Starts a case from a template. Without FILE it is printed; a FILE that is there is left alone.
Without TEMPLATE the templates are listed.

  casebook new
  casebook new compression van14.diag
`,
  ],
  [
    'decode',
    `casebook decode [FILE]

Tells what recorded answers of the vehicle's diagnostic link say: generic data (SAE J1979),
freeze frame, trouble codes, monitors, test results, the vehicle's number.
FILE holds what the interface printed, as it is: with or without headers, spaces, echoes and
prompts, of one controller or several. Without FILE, or with -, what is piped in is read.

  --cell   print a cell of readings instead, to paste into a case

Each value is followed by its ± (half a step of its encoding), its unit and its bytes.
Ends with 1 when a line could not be read or nothing was answered.

  casebook decode answers.txt
  casebook decode answers.txt --cell >> van14.diag
`,
  ],
  [
    'import',
    `casebook import FILE [CASE]

Looks at a scan log or a scope’s export (delimited text, also packed with gzip) and writes
the cells for it: a capture with the file’s channels, named as cases name signals where the
headings say so, and readings with the mean of each. With CASE they are put at its end;
without, they are printed. How the file was read is said; nothing is guessed silently.

  --at SECONDS        readings at this moment of the file’s time instead of means
  --delimiter WORD    comma, semicolon, tab, pipe or space, where the file does not show it
  --decimal WORD      point or comma
  --heading-rows N    rows above the samples that name the columns and their units
  --skip N            lines before the heading

The file must lie in the case’s folder or below. Look the cells over: keep the channels that
matter, say the engine state, and give a unit where one is missing.

  casebook import captures/drive.csv
  casebook import captures/drive.csv van14.diag --at 12.5
`,
  ],
  [
    'explain',
    `casebook explain NAME

Tells what NAME is: the code of a finding (unit-slip), a function (total_trim), a signal (map),
a unit (inHg), an engine state ("warm idle"), a kind of cell (check), a key (expect), a trouble
code (P0171: what its letters and digits say) or a word of expressions (between). A name that is several of these gets a page of each.

  casebook explain unit-slip
  casebook explain fuel_pressure
`,
  ],
]);
