import { brokenWindows, type Finding } from '@barwright/chain';
import { inWords, sheetEntry, windowInWords } from '@barwright/line';
import { openPlant, type Opened, type PlantOptions } from '../plant.js';
import { Misused, type Out } from '../out.js';
import { table, wrap } from '../text.js';

/** Values of the quantities asked for; all of them when none is named. */
export async function evaluateCommand(folder: string, ids: readonly string[], options: PlantOptions, out: Out): Promise<void> {
  const opened = await openPlant(folder, options);
  const { chain, session } = opened;
  const names = ids.length > 0 ? ids : chain.quantities.map((quantity) => quantity.id);
  if (options.json) {
    out.json(Object.fromEntries(names.map((id) => [id, entryOf(opened, id)])));
    return;
  }
  printValues(opened, names, out);
  printFindings(session.findings(), out);
}

/** A quantity, or an element of a vector: 'caramel.composition[water]'. */
export function entryOf(opened: Opened, id: string): unknown {
  const { chain, session, units } = opened;
  const quantity = chain.quantities[chain.index.get(id.replace(/\[.*\]$/, '')) ?? -1];
  if (!quantity) throw new Misused(`There is no quantity "${id}"; list them with: barwright quantities <plant folder>`);
  if (!id.includes('[')) return sheetEntry(session, quantity, units);
  return {
    value: session.number(id),
    unit: quantity.unit,
    origin: session.origin(id),
    meaning: `${quantity.meaning}, ${id.replace(/^.*\[|\]$/g, '')}`,
  };
}

export function printValues(opened: Opened, ids: readonly string[], out: Out): void {
  const { chain, session, units } = opened;
  const rows = ids.map((id) => {
    const quantity = chain.quantities[chain.index.get(id.replace(/\[.*\]$/, '')) ?? -1];
    if (!quantity) throw new Misused(`There is no quantity "${id}"; list them with: barwright quantities <plant folder>`);
    const status = session.status(id);
    const value = status.ok
      ? inWords(quantity, id.includes('[') ? session.number(id) : session.value(id), units)
      : status.reason.startsWith('cannot tell')
        ? status.reason
        : `cannot tell: ${status.reason}`;
    return [id, value, session.origin(id), windowInWords(quantity, units)];
  });
  for (const line of table(rows, [false, true])) out.line(line);
}

export function printFindings(findings: readonly Finding[], out: Out): void {
  if (findings.length === 0) return;
  out.line();
  for (const finding of findings) {
    const mark = finding.level === 'incident' ? out.style.act('act:  ') : finding.level === 'query' ? 'query:' : 'note: ';
    for (const [i, line] of wrap(finding.message, out.width, '       ').entries()) out.line(i === 0 ? `${mark} ${line.trimStart()}` : line);
  }
}

/** Windows that do not hold, as sentences. */
export function printBroken(opened: Opened, out: Out): void {
  for (const broken of brokenWindows(opened.session)) {
    if (/\.utilisation$|\.law\./.test(broken.id)) continue; // a finding says it in words
    const quantity = opened.chain.quantities[opened.chain.index.get(broken.id)!]!;
    out.line(
      `${out.style.act('outside:')} ${quantity.meaning} is ${inWords(quantity, opened.session.value(broken.id), opened.units)}, ${windowInWords(quantity, opened.units)} (${quantity.window?.reason ?? 'window'}; ${broken.id})`,
    );
  }
}
