import { marginOf, uses, type Quantity } from '@barwright/chain';
import { presentation, tidy } from '@barwright/line';
import type { Engine } from './engine.js';
import type { PostLine } from './protocol.js';

const points = 24;

/**
 * Limits that a knob may not pass: the law, the declared mass, a cap on rework, a station that can do no more. Each stands
 * where the number it is about reaches its end as the knob is turned, everything else as it is.
 *
 * @param low - ends of the rule, in the unit shown
 */
export function postsOf(engine: Engine, knob: string, low: number, high: number): readonly PostLine[] {
  const { chain } = engine.from;
  const root = engine.knobs.of(knob);
  const quantity = chain.quantities[chain.index.get(knob) ?? -1];
  if (root === undefined || !quantity) return [];
  const { toInside, toShown } = presentation(quantity, engine.shownUnits);
  const rules = uses(chain, root)
    .map((id) => chain.quantities[chain.index.get(id)!]!)
    .filter((each) => each.window && isRule(each, root));
  if (rules.length === 0) return [];
  // The knob may be a computed number, such as a cook temperature: its own value is read beside the root that is turned.
  const probe = engine.probe(root, knob);
  const start = engine.session.number(root);
  const ask = (x: number) => {
    const shown = toShown(probe.ask(x));
    const all = rules.map((rule) => marginOf(engine.session.value(rule.id), rule.window!));
    return { shown, margins: all.map(({ margin }) => margin), sides: all.map(({ side }) => side) };
  };
  const [from, to] = rootRange(root === knob ? [toInside(low), toInside(high)] : undefined, start);
  const walk = Array.from({ length: points + 1 }, (_, i) => from + ((to - from) * i) / points);
  const seen = walk.map((x) => ({ x, ...ask(x) }));
  const posts: PostLine[] = [];
  rules.forEach((rule, r) => {
    for (let i = 1; i < seen.length; i++) {
      const [a, b] = [seen[i - 1]!, seen[i]!];
      if (!(a.margins[r]! >= 0 !== b.margins[r]! >= 0) || Number.isNaN(a.margins[r]!) || Number.isNaN(b.margins[r]!)) continue;
      const at = halved((x) => ask(x).margins[r]!, a.x, b.x);
      posts.push({ at: tidy(ask(at).shown), text: wordsOf(rule, a.margins[r]! < 0 ? a.sides[r]! : b.sides[r]!) });
    }
  });
  probe.done();
  const now = toShown(engine.session.number(knob));
  // Of several on one side only the nearest can be reached.
  const inside = posts.filter(({ at }) => at > low && at < high);
  const below = inside.filter(({ at }) => at <= now).sort((a, b) => b.at - a.at)[0];
  const above = inside.filter(({ at }) => at > now).sort((a, b) => a.at - b.at)[0];
  return [below, above].filter((post) => post !== undefined);
}

function rootRange(given: readonly [number, number] | undefined, start: number): readonly [number, number] {
  return given ?? [start * 0.7, start * 1.3];
}

function isRule({ id }: Quantity, root: string): boolean {
  return /\.law\./.test(id) || id === 'bar.mass' || id === 'rework.share' || (root === 'line.slab_speed' && id.endsWith('.utilisation'));
}

function wordsOf({ id, meaning }: Quantity, side: 'low' | 'high'): string {
  if (/\.law\./.test(id)) return `law: ${meaning.split(' of ')[0]}`;
  if (id === 'bar.mass') return side === 'low' ? 'declared mass' : 'largest mass';
  if (id === 'rework.share') return 'cap on rework';
  return `${/^share of the (.*) that is used/.exec(meaning)?.[1] ?? 'station'} full`;
}

function halved(margin: (x: number) => number, low: number, high: number): number {
  let [a, b] = [low, high];
  const inside = margin(a) >= 0;
  for (let i = 0; i < 30; i++) {
    const middle = (a + b) / 2;
    if (margin(middle) >= 0 === inside) a = middle;
    else b = middle;
  }
  return a;
}
