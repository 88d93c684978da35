import { diagnose } from '../../diagnostics/diagnostic.ts';
import type { Finding } from '../../study/types.ts';
import type { CaseRule } from '../rule.ts';
import { byCylinder, nameOf, visitsOf, writtenOf } from './bySet.ts';

/** Most of the tester's air lost in a cylinder whose compression is even with the best. */
export const leakageAgainstCompression: CaseRule = {
  code: 'leakage-against-compression',
  of: ['leakdown'],
  check: (ruled) => {
    const sets = ruled.sets();
    const found: Finding[] = [];
    for (const when of visitsOf(sets, 'leakdown')) {
      const compressions = byCylinder(sets, 'compression', when);
      const best = Math.max(...compressions.map(({ si }) => si));
      if (!(best >= sealed) || compressions.length < 2) continue;
      for (const leakage of byCylinder(sets, 'leakdown', when)) {
        if (leakage.si - leakage.halfWidth < most) continue;
        const same = compressions.filter(({ cylinder }) => cylinder === leakage.cylinder);
        const [one] = same;
        if (one === undefined || same.some(({ si }) => si < even * best)) continue;
        const facts = {
          leakage: nameOf(leakage),
          written: writtenOf(leakage),
          compression: nameOf(one),
          compressionWritten: writtenOf(one),
        };
        const { cell, valueSpan } = leakage.reading;
        found.push({ cell, diagnostic: diagnose('leakage-against-compression', valueSpan, facts) });
      }
    }
    return found;
  },
};

/** Shares, and Pa for a cylinder that seals: common practice; what a leak shows also depends on the tester. */
const most = 0.7;
const even = 0.8;
const sealed = 690_000;
