import { writeFile } from 'node:fs/promises';
import { allergens, costMoves, ingredientList, inWords, sheetSections, stationsByUse, wholeSheet, windowInWords } from '@barwright/line';
import { openPlant, type Opened, type PlantOptions } from '../plant.js';
import { table, wrap } from '../text.js';
import { brokenWindows } from '@barwright/chain';
import type { Out } from '../out.js';
import { printBroken } from './evaluate.js';

interface SheetOptions extends PlantOptions {
  readonly html?: string;
  readonly pdf?: string;
  readonly all?: boolean;
}

/** The whole bar on the whole line: as text, as JSON, as the run sheet in HTML or PDF. */
export async function sheetCommand(folder: string, options: SheetOptions, out: Out): Promise<void> {
  const opened = await openPlant(folder, options);
  if (options.html ?? options.pdf) {
    const { runSheetHtml, runSheetPdf } = await import('@barwright/paper');
    if (options.html) await writeFile(options.html, runSheetHtml(opened, opened.session, { units: opened.units }));
    if (options.pdf) await writeFile(options.pdf, await runSheetPdf(opened, opened.session, { units: opened.units }));
    for (const file of [options.html, options.pdf]) if (file) out.warn(`Run sheet written to ${file}`);
    if (!options.json) return;
  }
  if (options.json) out.json(wholeSheet(opened, opened.session, opened.units));
  else sheetText(opened, options.all ?? false, out);
}

function sheetText(opened: Opened, all: boolean, out: Out): void {
  const { chain, session, units, bar } = opened;
  const { strong, act, faint } = out.style;
  out.line(strong(`${bar.name}, ${bar.format}. ${opened.plant.name}${opened.line ? `, ${opened.line.name}` : ''}.`));
  const findings = session.findings();
  if (findings.length === 0 && brokenWindows(session).length === 0)
    out.line('Every quantity is inside its window, and no step has anything to say.');
  printBroken(opened, out);
  for (const finding of findings) {
    const mark = finding.level === 'incident' ? act('act:  ') : finding.level === 'query' ? 'query:' : 'note: ';
    for (const [i, line] of wrap(finding.message, out.width, '       ').entries()) out.line(i === 0 ? `${mark} ${line.trimStart()}` : line);
  }
  for (const section of sheetSections(opened)) {
    const quantities = section.ids
      .map((id) => chain.quantities[chain.index.get(id)!]!)
      .filter((quantity) => all || typeof session.value(quantity.id) === 'number');
    const shown = all
      ? quantities
      : quantities.filter((quantity) => worthALine(opened, quantity.id)).sort((a, b) => rank(a.id) - rank(b.id));
    if (shown.length === 0) continue;
    out.line();
    out.line(strong(section.title));
    const rows = shown.map((quantity) => {
      const status = session.status(quantity.id);
      const value = status.ok ? inWords(quantity, session.value(quantity.id), units) : 'cannot tell';
      return [
        `  ${quantity.meaning}`,
        value,
        faint(session.origin(quantity.id)),
        faint(windowInWords(quantity, units)),
        faint(quantity.id),
      ];
    });
    for (const line of table(rows, [false, true])) out.line(line);
  }
  ranked(opened, out);
}

/** What lies between the lines, and shares of something that is not in it, are left to `--all`. */
function worthALine(opened: Opened, id: string): boolean {
  if (/\.stage\.|^need\.|^material\.|_(wettest|driest)$|\.charge_sum$|\.count$|_offset$/.test(id)) return false;
  return !(
    /\.(cocoa_solids|nonfat_cocoa_solids|milk_solids|milk_fat|vegetable_fat|other_edible)$/.test(id) && opened.session.number(id) === 0
  );
}

/** Results first, then what was put in. */
function rank(id: string): number {
  return /\.charge\./.test(id) ? 2 : /\.target\./.test(id) ? 1 : 0;
}

function ranked(opened: Opened, out: Out): void {
  const { session, units } = opened;
  const { strong } = out.style;
  out.line();
  out.line(strong('Ingredients in order of mass as weighed in'));
  out.line(
    `  ${ingredientList(opened, session)
      .map(({ label }) => label)
      .join(', ')}.`,
  );
  out.line(`  Contains: ${[...allergens(opened).keys()].join(', ') || 'no allergen entered'}.`);
  const stations = stationsByUse(opened, session);
  if (stations.length > 0) {
    out.line();
    out.line(strong('Stations, fullest first'));
    for (const line of table(
      stations.slice(0, 6).map(({ name, utilisation }) => [`  ${name}`, `${(100 * utilisation).toFixed(1)} %`]),
      [false, true],
    ))
      out.line(line);
  }
  out.line();
  out.line(strong('What moves the cost of a bar most, for 10 % more'));
  const rows = costMoves(opened, session)
    .slice(0, 8)
    .map(({ quantity, up }) => [
      `  ${quantity.meaning}`,
      `${up >= 0 ? '+' : '−'}${(100 * Math.abs(up)).toFixed(3)} ct`,
      inWords(quantity, session.value(quantity.id), units),
    ]);
  for (const line of table(rows, [false, true])) out.line(line);
}
