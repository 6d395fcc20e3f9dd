import type { State } from '@barwright/chain';
import { toSvg } from '@barwright/drawing';
import type { PlantChain } from '@barwright/line';
import { formatNumber } from '@barwright/plant';
import { runSheet, type ChargeList, type RunSheet, type SheetOptions, type SheetRow } from './content.js';
import { pictureOf } from './picture.js';

/** The run sheet as one HTML file without scripts: the same content as on paper, each number named by its quantity. */
export function runSheetHtml(from: PlantChain, state: State, options: SheetOptions = {}): string {
  const sheet = runSheet(from, state, options);
  const picture = pictureOf(from, state, 7.56);
  const svg = toSvg(picture.marks, { width: picture.width, height: picture.height, title: `${from.bar.name} cut open, twice life size` });
  return `<!doctype html>
<html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width"><title>${escape(sheet.title)}</title><style>${css}</style></head>
<body><main class="run-sheet">${bodyOf(sheet, svg)}</main></body></html>
`;
}

/** The inside of the page, for a screen that brings its own styles. */
export function bodyOf(sheet: RunSheet, svg: string): string {
  const shifts = sheet.shifts.length > 0 ? sheet.shifts : ['reading'];
  return `<header><div><h1>${escape(sheet.title)}</h1>${sheet.facts.map((fact) => `<p>${escape(fact)}</p>`).join('')}${sheet.remarks.map((remark) => `<p>${escape(remark)}</p>`).join('')}<p class="faint">${escape(sheet.version)}</p></div><figure>${svg}<figcaption>twice life size</figcaption></figure></header>
${sheet.times.length ? `<p class="times">${sheet.times.map(([what, when]) => `${escape(what)} <b>${escape(when)}</b>`).join(' · ')}</p>` : ''}
<h2>Checks and set points</h2>
<table><thead><tr><th>where</th><th>what</th><th class="n">aim</th><th class="n">from</th><th class="n">to</th><th>how often</th><th>if outside</th><th>hold</th>${shifts.map((shift) => `<th class="box">${escape(shift)}</th>`).join('')}</tr></thead><tbody>
${sheet.rows.map((row) => rowHtml(row, shifts.length)).join('\n')}
</tbody></table>
<h2>Charges of one batch, in weighing order</h2><div class="charges">${sheet.charges.map(chargeHtml).join('')}</div>
<h2>Rework</h2>${sheet.rework.map((sentence) => `<p>${escape(sentence)}</p>`).join('')}
<h2>Lots in use</h2><ul class="lots">${sheet.lots.map((lot) => `<li>${escape(lot)}<span class="write"></span></li>`).join('')}</ul>
<h2>Changeover</h2>${sheet.changeover.map((sentence) => `<p>${escape(sentence)}</p>`).join('')}
<h2>Take care</h2><dl>${sheet.cautions.map(({ station, sentences }) => `<dt>${escape(station)}</dt>${sentences.map((sentence) => `<dd>${escape(sentence)}</dd>`).join('')}`).join('')}</dl>
<p>Local codes, the maker’s manual and the qualified HACCP team decide. Barwright advises; it sets nothing on a machine.</p>
<p class="sign">Made by <span class="write"></span> Freed for the line by <span class="write"></span> Taken over <span class="write"></span></p>`;
}

function rowHtml(row: SheetRow, boxes: number): string {
  const n = (value: number | undefined) => (value === undefined ? '' : formatNumber(value, row.decimals));
  const mark = row.kind === 'critical' ? ' <b>CCP</b>' : row.kind === 'law' ? ' <b>law</b>' : '';
  const link = row.quantity ? ` data-quantity="${escape(row.quantity)}"` : '';
  const numbers =
    row.words !== undefined && row.aim === undefined && row.low === undefined && row.high === undefined
      ? `<td colspan="3">${escape(row.words)}</td>`
      : `<td class="n aim">${n(row.aim)}</td><td class="n">${n(row.low)}</td><td class="n">${n(row.high)}</td>`;
  const write = row.writeIn === 'none' ? '' : `<span class="write ${row.writeIn}"></span>`;
  return `<tr${link}><th scope="row">${escape(row.where)}</th><td>${escape(row.what)}${row.unit ? `, ${escape(row.unit)}` : ''}${mark}</td>${numbers}<td>${escape(row.every)}</td><td>${escape(row.reaction)}</td><td>${escape(row.hold ?? '')}</td>${`<td class="box">${write}</td>`.repeat(boxes)}</tr>`;
}

function chargeHtml(list: ChargeList): string {
  const rows = list.rows
    .map(
      (row) =>
        `<tr data-quantity="${escape(row.quantity)}"><td>${escape(row.stage)}</td><td>${escape(row.name)}</td><td class="n">${formatNumber(100 * row.share, 2)}</td><td class="n aim">${formatNumber(row.mass, Math.max(0, -Math.floor(Math.log10(row.division) + 1e-9)))}</td></tr>`,
    )
    .join('');
  const batches = list.batches === undefined ? '' : `${formatNumber(list.batches, 0)} batches. `;
  return `<section><h3>${escape(list.component)}</h3><p>${batches}${formatNumber(list.charged, 1)} kg charged, ${formatNumber(list.finished, 1)} kg finished; rounding leaves ${formatNumber(list.residual, 3)} kg.</p><table><thead><tr><th>stage</th><th>ingredient</th><th class="n">%</th><th class="n">kg</th></tr></thead><tbody>${rows}</tbody></table>${list.notes.map((note) => `<p class="faint">${escape(note)}</p>`).join('')}</section>`;
}

function escape(text: string): string {
  return text.replace(/[&<>"]/g, (letter) => ({ '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' })[letter]!);
}

const css = `
@page{size:A4;margin:12mm}
:root{--paper:#fff;--ink:#000;--ink-2:#222;--ink-3:#444;--rule:#666;--hair:#aaa;--shade:#eee;--shade-2:#f6f6f6;--draw:#000;--coat:#eee;--act:#000;--held:#000;--paper-lift:#fff}
body{margin:0;font:14px/1.36 "Ysabeau Office",system-ui,sans-serif;color:var(--ink);background:var(--paper)}
.run-sheet{max-width:1000px;margin:0 auto;padding:24px}
header{display:flex;justify-content:space-between;gap:24px}h1{font:600 28px/1.2 Piazzolla,Georgia,serif;margin:0 0 8px}
h2{font:600 17px/1.2 Piazzolla,Georgia,serif;margin:24px 0 8px}h3{font:600 15px/1.2 Piazzolla,Georgia,serif;margin:8px 0}
p{margin:2px 0}.faint,figcaption{color:var(--ink-3);font-size:13px}figure{margin:0;text-align:right}
table{border-collapse:collapse;width:100%;border-top:2px solid var(--ink);border-bottom:2px solid var(--ink)}
th,td{text-align:left;vertical-align:top;padding:3px 8px 3px 0;border-top:1px solid var(--hair);font-weight:400}
tbody th{font-weight:600}thead th{color:var(--ink-3);font-size:13px}.n{text-align:right;font-variant-numeric:tabular-nums lining-nums}.aim{font-weight:600}
.write{display:inline-block;width:46px;height:20px;border:1px solid var(--rule)}.write.pass{width:20px;border-radius:50%}
.charges{display:grid;grid-template-columns:repeat(auto-fit,minmax(300px,1fr));gap:20px}.lots{columns:3;list-style:none;padding:0}.lots li{display:flex;justify-content:space-between;gap:8px;margin:4px 0}
.lots .write{width:70px}dt{font-weight:600}dd{margin:0 0 2px 20px}.sign .write{width:150px;border-width:0 0 1px}
tr{break-inside:avoid}`;
