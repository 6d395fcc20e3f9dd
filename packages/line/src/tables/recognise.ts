import { BadTable } from './bad-table.js';
import { tableOf, type DataTable } from './table.js';

/** What a table holds, as its headings say. */
export type TableKind = 'viscometer' | 'roast' | 'temper' | 'tunnel' | 'lanes' | 'stops' | 'counts' | 'cooks' | 'pallets';

/** Headings of each kind, the most telling first: a kind fits where every one of its words is found. */
const kinds: readonly (readonly [TableKind, readonly RegExp[]])[] = [
  ['lanes', [/\blane\b/, /centre|center/, /finished|enrobed|coated/]],
  ['cooks', [/cook|kettle/, /end|time/, /moisture|refracto|solids|brix|cook.*temp/]],
  ['pallets', [/\bpallet\b/, /\b(first|from|start)\b/, /\b(last|to|end)\b/]],
  ['stops', [/^(start|from|begin)/, /^(end|to|until)/]],
  ['viscometer', [/shear|gamma|γ|^rate$|^d$/, /stress|tau|τ|visco|eta|η/]],
  ['temper', [/slope|temper (index|unit|value)|\bctu\b/]],
  ['roast', [/veloc|bed|nib|residence|dwell|raw (lot|moist)|roast|drum/, /time|date|clock/]],
  ['tunnel', [/bar (exit|out)|belt marks?|zone ?1\b/]],
  ['counts', [/bars? cut|cut bars?|^packs? \w/]],
  ['roast', [/zone|air|bean temp|product temp/, /time|date|clock/]],
];

/**
 * What a table holds, by the words of its headings. A time and one temperature alone is a cooling curve of temper.
 * @throws BadTable where no heading tells
 */
export function tableKind(rows: readonly (readonly string[])[], name: string): TableKind {
  // Headings stand above the readings; a long log need not be read whole for them.
  const table = tableOf(rows.slice(0, 400), name);
  const fits = (words: RegExp) => table.columns.some((column) => words.test(column.words));
  const found = kinds.find(([, all]) => all.every(fits));
  if (found) return found[0];
  if (isCurve(table)) return 'temper';
  const names = table.columns.map(({ header }) => `"${header}"`).join(', ');
  throw new BadTable(
    `${name} has the columns ${names}, which tell no log that is known here; expected are those of a viscometer (shear rate, stress), a roast log (time, zone air, air velocity, bed depth, residence, or nib bed), temper tests (time, slope or index), a cooling curve (time, temperature), a tunnel log (time, zones, bar exit), lane weights (lane, centre, finished), a log of cooks (batch, cook end, cook temperature, refractometer, moisture), counts (time, bars cut, packs of each wrapper) or pallets (pallet, first pack, last pack)`,
  );
}

function isCurve({ columns }: DataTable): boolean {
  const times = columns.filter(({ words }) => /time|elapsed|^t$|clock/.test(words));
  const temperatures = columns.filter(({ words }) => /temp|choc|sample|°c|^t ?choc/.test(words));
  return times.length > 0 && temperatures.length === 1 && columns.length <= times.length + 2;
}
