import { fleetCase } from './fleetCase.ts';

/** A case of about two hundred cells: visit after visit of one van, each with names of its own. All numbers are synthetic. */
export function twoHundredCells(): string {
  let text = fleetCase(0);
  for (let visit = 1; visit < 18; visit++) {
    const next = fleetCase(visit);
    const cells = next.slice(next.indexOf('---\n'));
    // Names of cells are said once in a case: `koeo` becomes `koeo7`, where it is defined and where it is read.
    text += cells.replace(
      /\b(koeo|before|gauged|spec|sides|trims|smoke|after)(?=\.|\n)/g,
      (name: string, _: string, at: number) => (isName(cells, at) ? `${name}${visit}` : name),
    );
  }
  return text;
}

/** A cell's name stands behind `as:` or before a point and a member; the same word in a sentence is none. */
function isName(text: string, at: number): boolean {
  return text.startsWith('as: ', at - 4) || /^\w+\.\w/.test(text.slice(at, at + 20));
}
