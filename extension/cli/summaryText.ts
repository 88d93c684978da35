import type { Summary } from '../../core/study/summary.ts';

/** The last lines of a check: all cases together. */
export function summaryText(summary: Summary): string {
  const verdicts = [
    `${summary.holds} ${summary.holds === 1 ? 'holds' : 'hold'}`,
    `${summary.fails} ${summary.fails === 1 ? 'fails' : 'fail'}`,
    `${summary['too close to call']} too close to call`,
    `${summary['not measured']} not measured`,
    `${summary['cannot compute']} cannot compute`,
  ].join(', ');
  const found = [
    counted(summary.errors, 'error'),
    counted(summary.warnings, 'warning'),
    counted(summary.infos, 'note'),
  ].join(', ');
  return `${counted(summary.cases, 'case')}: ${verdicts}; ${found}.\n`;
}

const counted = (count: number, what: string): string => `${count} ${what}${count === 1 ? '' : 's'}`;
