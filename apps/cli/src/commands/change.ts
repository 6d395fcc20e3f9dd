import { compare, type Comparison, type State } from '@barwright/chain';
import { inWords, presentation, tidy, windowInWords, type Units } from '@barwright/line';
import { assignment, openPlant, type Opened, type PlantOptions } from '../plant.js';
import { Misused, type Out } from '../out.js';
import { table } from '../text.js';
import { printBroken, printFindings } from './evaluate.js';

interface ObserveOptions extends PlantOptions {
  readonly note?: string;
}

/** Puts measurements in place of values and says what that changes. */
export async function observeCommand(folder: string, texts: readonly string[], options: ObserveOptions, out: Out): Promise<void> {
  if (texts.length === 0) throw new Misused('Name at least one measurement: id=value, such as caramel.moisture="10.3 %"');
  const opened = await openPlant(folder, options);
  const before = opened.session.snapshot();
  const observations = Object.fromEntries(
    texts.map((text) => {
      const [id, value] = assignment(opened, text);
      return [id, { value, ...(options.note ? { note: options.note } : {}) }];
    }),
  );
  opened.session.observe(observations);
  const comparison = compare(before, opened.session);
  if (options.json) out.json({ observed: texts, ...comparisonJson(comparison, opened.units), findings: opened.session.findings() });
  else {
    printComparison(opened, comparison, out, 'before', 'with the measurement');
    printBroken(opened, out);
    printFindings(opened.session.findings(), out);
  }
}

interface CompareOptions extends PlantOptions {
  readonly with?: string;
  readonly withBar?: string;
}

/** Two versions side by side: another folder, another bar, or the same plant with changes. */
export async function compareCommand(folder: string, options: CompareOptions, out: Out): Promise<void> {
  const { set, ...plain } = options;
  const first = await openPlant(folder, plain);
  if (!options.with && !options.withBar && !set?.length)
    throw new Misused('Say what to compare with: another folder (--with), another bar (--with-bar) or changes (--set id=value)');
  const second = await openPlant(options.with ?? folder, { ...options, ...(options.withBar ? { bar: options.withBar } : {}) });
  const comparison = compare(first.session, second.session);
  if (options.json) out.json(comparisonJson(comparison, first.units));
  else {
    printComparison(second, comparison, out, first.bar.name, options.withBar ?? options.with ?? 'changed');
    for (const [words, ids] of [
      ['Only in the first', comparison.onlyBefore],
      ['Only in the second', comparison.onlyAfter],
    ] as const) {
      if (ids.length > 0) out.line(`${words}: ${ids.length} quantities, such as ${ids.slice(0, 5).join(', ')}`);
    }
  }
}

export function comparisonJson(comparison: Comparison, units: Units): Record<string, unknown> {
  const value = (quantity: Comparison['differences'][number]['quantity'], x: State extends never ? never : number | Float64Array) =>
    typeof x === 'number' ? tidy(presentation(quantity, units).toShown(x)) : Array.from(x, tidy);
  return {
    differences: comparison.differences.map(({ id, quantity, before, after, relative, kind }) => ({
      id,
      meaning: quantity.meaning,
      unit: presentation(quantity, units).unit,
      before: value(quantity, before),
      after: value(quantity, after),
      relative: Number.isFinite(relative) ? tidy(relative) : null,
      kind,
    })),
    only_before: comparison.onlyBefore,
    only_after: comparison.onlyAfter,
  };
}

export function printComparison(opened: Opened, comparison: Comparison, out: Out, before: string, after: string): void {
  const numbers = comparison.differences.filter(
    (difference) =>
      typeof difference.before === 'number' && !/\.stage\.|^need\.|^(flow|order)\.material\.|^label\.(input|share)\./.test(difference.id),
  );
  if (numbers.length === 0) {
    out.line('Nothing differs.');
    return;
  }
  const rows = [['', before, after, 'change', 'window', ''].map((cell) => out.style.faint(cell))];
  for (const { id, quantity, before: old, after: now, relative } of numbers) {
    const change = Number.isFinite(relative) ? `${relative >= 0 ? '+' : '−'}${Math.abs(100 * relative).toFixed(1)} %` : '';
    rows.push([
      quantity.meaning,
      inWords(quantity, old, opened.units),
      inWords(quantity, now, opened.units),
      change,
      windowInWords(quantity, opened.units),
      out.style.faint(id),
    ]);
  }
  for (const line of table(rows, [false, true, true, true])) out.line(line);
}
