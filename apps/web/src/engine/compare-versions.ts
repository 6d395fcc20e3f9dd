import { compare, evaluate } from '@barwright/chain';
import { inWords, plantChain } from '@barwright/line';
import type { Plant } from '@barwright/plant';
import { askedFirst, seldomAsked } from './consequences.js';
import type { Engine } from './engine.js';
import type { DifferenceLine, VersionComparison } from './protocol.js';

/** What lies between the lines of a comparison. */
const between = /\.stage\.|^need\.|composition$|charge_(dry|sum)$/;

/** Another version of the same bar beside this one as it stands: what it was there, what it is here, entered numbers first. */
export function compareVersions(engine: Engine, other: Plant): VersionComparison {
  const { from, session, shownUnits: units } = engine;
  const bar = [...other.bars.values()].find(({ slug }) => slug === from.bar.slug);
  const before = evaluate(plantChain(other, bar?.name).chain);
  const { differences, onlyBefore, onlyAfter } = compare(before, session);
  const lines = differences
    .filter(({ id, before: was, after: is }) => !between.test(id) && typeof was === 'number' && typeof is === 'number')
    .map(({ id, quantity, before: was, after: is, relative, kind }): DifferenceLine => ({
      id,
      meaning: quantity.meaning,
      before: inWords(quantity, was, units),
      after: inWords(quantity, is, units),
      kind: kind === 'changed' && session.origin(id) !== 'computed' ? 'entered' : kind,
      ...(Number.isFinite(relative) ? { relative } : {}),
    }))
    .filter(({ before: was, after: is, kind }) => was !== is || kind === 'entered');
  const rank = ({ id, kind }: DifferenceLine) => (kind === 'entered' ? 0 : askedFirst.test(id) ? 1 : seldomAsked.test(id) ? 3 : 2);
  return {
    differences: lines.sort((a, b) => rank(a) - rank(b)),
    onlyBefore: onlyBefore.length,
    onlyAfter: onlyAfter.length,
  };
}
