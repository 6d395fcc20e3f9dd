import type * as z from 'zod';
import type { checksFile, planFile } from '../schema/files.js';
import type { Plan, PlannedCheck } from '../types.js';
import { present, type Book, type Page } from './book.js';

export type PlanFile = z.output<typeof planFile>;
export type ChecksFile = z.output<typeof checksFile>;

/** What is to be made when, and of which lots. */
export function readPlans(book: Book, { tree, value }: Page<PlanFile>): Plan[] {
  return value.plans.map((written, index): Plan => {
    const path = ['plans', index];
    const lots = (written.lots ?? []).map(({ material, lot, note, results }, number) => {
      const named = book.named(tree, [...path, 'lots', number, 'results'], results);
      return { material, lot, ...present({ note }), ...(results ? { results: named } : {}) };
    });
    return {
      bar: written.bar,
      line: written.line,
      order: book.entered(tree, [...path, 'order'], written.order),
      lots,
      place: tree.place(path),
      ...present({
        date: written.date,
        start: written.start,
        plannedOee: written['planned OEE'] && book.entered(tree, [...path, 'planned OEE'], written['planned OEE']),
      }),
    };
  });
}

/** The control plan, one check after another. */
export function readChecks(book: Book, { tree, value }: Page<ChecksFile>): PlannedCheck[] {
  const checks = value.checks.map((written, index): PlannedCheck => {
    const path = ['checks', index];
    if (!written.limit && written.words === undefined) {
      book.complain(tree, path, {
        code: 'NOT_ONE_OF',
        message: `'${written.what}' has no limit`,
        expected: "'limit: 117.7 °C ± 0.5 °C', or 'words: all rejected'",
      });
    }
    return {
      at: written.at,
      what: written.what,
      slug: book.slug(tree, [...path, 'what'], `${written.at} ${written.what}`),
      every: written.every,
      kind: written.kind,
      writeIn: written['write in'] ?? (written.limit ? 'number' : 'pass'),
      place: tree.place(path),
      ...present({
        quantity: written.quantity,
        limit: written.limit && book.entered(tree, [...path, 'limit'], written.limit),
        words: written.words,
        by: written.by,
        reaction: written.reaction,
        hold: written.hold,
      }),
    };
  });
  book.refuseTwins(
    tree,
    checks.map(({ at, what, slug }, index) => ({ name: `${at}: ${what}`, slug, path: ['checks', index, 'what'] })),
  );
  return checks;
}
