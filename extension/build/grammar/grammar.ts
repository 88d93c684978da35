import { kindNames } from '../../../core/casefile/kinds/kinds.ts';
import { cellEntries, unknownKey } from './keys.ts';
import { entry } from './layout.ts';
import { escapePattern, type Grammar, include, type Rule } from './rule.ts';
import { repository } from './sorts.ts';

/**
 * The TextMate grammar of a case file, made from the tables of kinds, units, signals, states and functions,
 * so that it colours what the core reads. It serves whole files and single cells of a notebook alike.
 */
export function grammar(): Grammar {
  return {
    name: 'Diagnostic case',
    scopeName: 'source.diag',
    fileTypes: ['diag'],
    patterns: [separator, mergeMarker, include('comment'), ...kindNames.map(cell), unknownCell],
    repository: repository(),
  };
}

/** A cell reaches to the next `---` line, whatever stands in it. */
const endOfCell = String.raw`^(?=---(?:\s|$)|<{7} |={7}$|>{7} )`;

function cell(kind: (typeof kindNames)[number]): Rule {
  return {
    name: `meta.cell.${kind}.diag`,
    begin: `^(?=${escapePattern(kind)}\\s*:(?:\\s|$))`,
    end: endOfCell,
    patterns: [include('comment'), ...cellEntries(kind)],
  };
}

const unknownCell: Rule = {
  name: 'meta.cell.unknown.diag',
  begin: String.raw`^(?=[^\s#-][^:]*:(?:\s|$))`,
  end: endOfCell,
  patterns: [include('comment'), entry(unknownKey)],
};

const separator: Rule = {
  match: String.raw`^(---)(?:\s+(#.*)|\s*(\S.*))?$`,
  captures: {
    1: { name: 'entity.other.document.begin.diag' },
    2: { name: 'comment.line.number-sign.diag' },
    3: { name: 'invalid.illegal.behind-separator.diag' },
  },
};

const mergeMarker: Rule = {
  match: String.raw`^(?:<{7} |={7}$|>{7} |\|{7} ).*$`,
  name: 'invalid.illegal.merge-marker.diag',
};
