import type { Quantity } from '@barwright/chain';
import { presentation } from '@barwright/line';
import type { Engine } from './engine.js';
import { rangeOf } from './knobs.js';
import type { CurveData, KnobLine } from './protocol.js';

/** Roots that are facts of the place or limits; turning them is no remedy. */
const notTurned =
  /\.(count|nominal|altitude|lanes)$|^(bar\.nominal|plant\.altitude|order\.bars|deviation\.|variation\.|pack\.)|\.density$|rate_each$|_offset$|_entered$|^transit\.|\.loss(\.|$)|\.voids$|conversion_cost/;

/**
 * The roots that move a number, the most influential first: each is turned over its range and the number is asked at both ends.
 * Settings come before facts such as densities and losses.
 */
export function influences(engine: Engine, id: string, count = 6): readonly KnobLine[] {
  const { from, session, knobs, shownUnits: units } = engine;
  const { chain } = from;
  const asked = chain.quantities[chain.index.get(id)!]!;
  const { toShown } = presentation(asked, units);
  const found: (KnobLine & { readonly rank: number })[] = [];
  for (const root of chain.roots) {
    if (knobs.of(root.id) !== root.id || !knobs.moves(root.id, id)) continue;
    const now = session.number(root.id);
    const [low, high] = rangeOf(chain, root.id, now);
    if (!(high > low)) continue;
    const probe = engine.probe(root.id, id);
    const step = (high - low) * 0.05;
    const [up, down] = [probe.ask(Math.min(high, now + step)), probe.ask(Math.max(low, now - step))];
    probe.done();
    const width = Math.min(high, now + step) - Math.max(low, now - step);
    const effect = Number.isFinite(up) && Number.isFinite(down) ? ((toShown(up) - toShown(down)) / width) * (high - low) : NaN;
    if (!(Math.abs(effect) > 0)) continue;
    const shown = presentation(root as Quantity, units);
    found.push({
      id: root.id,
      meaning: root.meaning,
      unit: shown.unit,
      decimals: shown.decimals,
      low: shown.toShown(low),
      high: shown.toShown(high),
      value: shown.toShown(now),
      effect,
      rank: Math.abs(effect) * (notTurned.test(root.id) ? 0.05 : 1),
    });
  }
  return found
    .sort((a, b) => b.rank - a.rank)
    .slice(0, count)
    .map(({ rank: _rank, ...line }) => line);
}

const points = 33;

/** A number over one knob, with what the model says of how far it may be off; nothing where the number does not follow. */
export function curveOf(engine: Engine, id: string, knob: string): CurveData | undefined {
  const { from, session, shownUnits: units, knobs } = engine;
  const { chain } = from;
  if (knobs.of(knob) !== knob || !knobs.moves(knob, id)) return undefined;
  const inward = presentation(chain.quantities[chain.index.get(knob)!]!, units);
  const { toShown } = presentation(chain.quantities[chain.index.get(id)!]!, units);
  const [low, high] = rangeOf(chain, knob, session.number(knob));
  const probe = engine.probe(knob, id);
  const x: number[] = [];
  const y: number[] = [];
  const lo: number[] = [];
  const hi: number[] = [];
  for (let i = 0; i < points; i++) {
    const at = low + ((high - low) * i) / (points - 1);
    const value = probe.ask(at);
    if (!Number.isFinite(value)) continue;
    const half = session.uncertainty(id) ?? 0;
    x.push(inward.toShown(at));
    y.push(toShown(value));
    lo.push(toShown(value - half));
    hi.push(toShown(value + half));
  }
  probe.done();
  return x.length < 2 ? undefined : { knob, x, y, lo, hi };
}
