import { explain, uses, type Explanation, type Quantity } from '@barwright/chain';
import { inWords, presentation } from '@barwright/line';
import { sources } from '@barwright/science';
import type { Engine } from './engine.js';
import { influences } from './influence.js';
import { withNumbers } from './with-numbers.js';
import type { InputLine, Inspection, SourceLine } from './protocol.js';

/** Where a number comes from, what it is made of, what it bears on, and what moves it. */
export function inspect(engine: Engine, id: string): Inspection {
  const { from, session, shownUnits: units } = engine;
  const { chain } = from;
  const node = explain(chain, session, id, 1);
  const { quantity, value } = node;
  const { toShown } = presentation(quantity, units);
  const keys = new Set([...node.sources, ...(quantity.window?.source && isSource(quantity.window.source) ? [quantity.window.source] : [])]);
  return {
    id,
    standing: standingOf(node, engine),
    ...(node.step ? { title: node.step.title } : {}),
    ...(node.equation ? { equation: node.equation } : {}),
    ...optional('numbers', withNumbers(node, units)),
    said: session
      .findings()
      .filter(({ quantity: about, step }) => about === id || (about === undefined && step !== undefined && step === node.step?.id))
      .map(({ message, level }) => ({ text: message, act: level === 'incident' })),
    inputs: node.inputs.map((input) => line(engine, input.quantity)),
    uses: direct(engine, id),
    sources: [...keys].map(sourceLine),
    ...optional('standingOfSource', node.standing),
    ...optional('place', node.place),
    ...optional('note', node.note),
    ...(node.status.ok ? {} : { reason: node.status.reason }),
    ...(node.uncertainty === undefined ? {} : { uncertainty: Math.abs(toShown(node.uncertainty) - toShown(0)) }),
    knobs: typeof value === 'number' ? influences(engine, id) : [],
    ...(typeof value === 'number' ? {} : { elements: elementsOf(quantity, value) }),
  };
}

const wordOf = {
  computed: 'computed',
  measured: 'measured',
  entered: 'entered by the plant',
  assumed: 'assumed, nobody has measured it',
  default: 'taken by default, nobody entered one',
} as const;

function standingOf(node: Explanation, engine: Engine): string {
  if (engine.changes.has(node.id)) return 'pulled here for a trial';
  const half = node.uncertainty === undefined ? '' : `, ± ${inWords(finer(node.quantity), node.uncertainty, engine.shownUnits)}`;
  if (node.origin === 'computed' && node.inputs.length > 0) return `computed${half}`;
  return `${wordOf[node.origin]}${half}`;
}

/** An uncertainty is a difference: it is written with the digits of its number, and a kelvin is a kelvin. */
function finer(quantity: Quantity): Quantity {
  return quantity.unit === '°C' ? { ...quantity, unit: 'K' } : quantity;
}

function line({ session, shownUnits }: Engine, quantity: Quantity): InputLine {
  const value = session.value(quantity.id);
  const text = !session.status(quantity.id).ok
    ? 'cannot tell'
    : typeof value === 'number'
      ? inWords(quantity, value, shownUnits)
      : `${value.length} parts`;
  return { id: quantity.id, meaning: quantity.meaning, text, origin: session.origin(quantity.id) };
}

/** What is computed straight from it. */
function direct(engine: Engine, id: string): readonly InputLine[] {
  const { chain } = engine.from;
  return uses(chain, id, 'direct').map((other) => line(engine, chain.quantities[chain.index.get(other)!]!));
}

export function sourceLine(key: string): SourceLine {
  const known = (sources as Readonly<Record<string, { readonly title: string }>>)[key];
  return { key, title: known?.title ?? key };
}

const isSource = (key: string): boolean => key in sources;

function elementsOf(quantity: Quantity, value: Float64Array): { readonly label: string; readonly value: number }[] {
  return Array.from(value, (x, i) => ({ label: (quantity.labels?.[i] ?? String(i)).replaceAll('_', ' '), value: x })).filter(
    ({ value: x }) => x !== 0,
  );
}

function optional<K extends string>(key: K, value: string | undefined): Partial<Record<K, string>> {
  return value === undefined || value === '' ? {} : ({ [key]: value } as Record<K, string>);
}
