import { explain, type Explanation } from '@barwright/chain';
import { sources } from '@barwright/science';
import { inWords, presentation, shownWindow, tidy, windowInWords } from '@barwright/line';
import { openPlant, type Opened, type PlantOptions } from '../plant.js';
import type { Out } from '../out.js';

interface ExplainOptions extends PlantOptions {
  readonly depth?: string;
}

/** Where a number comes from: equation, inputs, sources, back to what the plant entered. */
export async function explainCommand(folder: string, id: string, options: ExplainOptions, out: Out): Promise<void> {
  const opened = await openPlant(folder, options);
  const tree = explain(opened.chain, opened.session, id, options.depth === undefined ? Infinity : Number(options.depth));
  if (options.json) {
    out.json(asJson(opened, tree));
    return;
  }
  print(opened, tree, '', '', out);
  const keys = [...cited(tree)].sort();
  if (keys.length === 0) return;
  out.line();
  out.line(out.style.strong('Sources'));
  for (const key of keys) out.line(`  ${key}: ${titleOf(key)}`);
}

export function titleOf(key: string): string {
  return (sources as Readonly<Record<string, { title: string }>>)[key]?.title ?? key;
}

function print(opened: Opened, node: Explanation, lead: string, below: string, out: Out): void {
  const { quantity, status } = node;
  const value = status.ok ? inWords(quantity, node.value, opened.units) : `cannot tell (${status.reason})`;
  const window = windowInWords(quantity, opened.units);
  out.line(
    `${lead}${out.style.strong(quantity.meaning)}: ${value}  ${out.style.faint(`${node.origin}${window ? `, ${window}` : ''}  [${node.id}]`)}`,
  );
  const facts: string[] = [];
  if (node.equation) facts.push(node.equation);
  if (node.uncertainty !== undefined)
    facts.push(`± ${inWords({ ...quantity, decimals: (quantity.decimals ?? 2) + 1 }, node.uncertainty, opened.units)} (95 %)`);
  if (node.sources.length > 0) facts.push(`source: ${node.sources.join(', ')}${node.standing ? ` (${node.standing})` : ''}`);
  else if (node.standing) facts.push(`standing: ${node.standing}`);
  if (node.place) facts.push(`written in ${node.place}`);
  if (node.note) facts.push(node.note);
  for (const fact of facts) out.line(`${below}${node.inputs.length > 0 ? '│ ' : '  '}${out.style.faint(fact)}`);
  if (node.repeated) out.line(`${below}  ${out.style.faint('its inputs are shown elsewhere in this tree')}`);
  if (node.cut) out.line(`${below}  ${out.style.faint('its inputs lie deeper; ask with a larger --depth')}`);
  node.inputs.forEach((input, i) => {
    const last = i === node.inputs.length - 1;
    print(opened, input, `${below}${last ? '└ ' : '├ '}`, `${below}${last ? '  ' : '│ '}`, out);
  });
}

function asJson(opened: Opened, node: Explanation): unknown {
  const { unit, toShown } = presentation(node.quantity, opened.units);
  const labels = node.quantity.labels;
  const value =
    typeof node.value === 'number'
      ? tidy(toShown(node.value))
      : Object.fromEntries(Array.from(node.value, (x, i) => [labels?.[i] ?? String(i), tidy(x)]));
  return {
    id: node.id,
    meaning: node.quantity.meaning,
    value: node.status.ok ? value : null,
    unit,
    origin: node.origin,
    window: shownWindow(node.quantity, opened.units),
    equation: node.equation,
    step: node.step?.title,
    sources: node.sources.map((key) => ({ key, title: titleOf(key) })),
    standing: node.standing,
    place: node.place,
    note: node.note,
    reason: node.status.ok ? undefined : node.status.reason,
    repeated: node.repeated,
    inputs: node.inputs.map((input) => asJson(opened, input)),
  };
}

function cited(node: Explanation, keys = new Set<string>()): Set<string> {
  for (const key of node.sources) keys.add(key);
  for (const input of node.inputs) cited(input, keys);
  return keys;
}
