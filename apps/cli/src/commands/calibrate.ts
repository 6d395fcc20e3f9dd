import { readFile } from 'node:fs/promises';
import { calibrate, type CalibrateParameter, type Calibrated, type Datum } from '@barwright/chain';
import { inWords, presentation, tidy } from '@barwright/line';
import { openPlant, valueFor, type Opened, type PlantOptions } from '../plant.js';
import { Misused, Refused, type Out } from '../out.js';
import { table } from '../text.js';
import { whyUnread } from '../rows.js';

interface CalibrateOptions extends PlantOptions {
  readonly parameter: readonly string[];
  readonly data: string;
  readonly observed?: readonly string[];
}

/** Fits the plant's own constants to its logs. */
export async function calibrateCommand(folder: string, options: CalibrateOptions, out: Out): Promise<void> {
  const opened = await openPlant(folder, options);
  const { header, rows } = await readTable(options.data);
  const observed = options.observed ?? header.slice(-1);
  for (const id of observed)
    if (!header.includes(id)) throw new Refused(`${options.data}: there is no column "${id}"; the columns are ${header.join(', ')}`);
  const data = rows.map(({ cells, line }) => datumOf(opened, options.data, header, cells, line, observed));
  const result = calibrate(opened.chain, opened.session, { parameters: options.parameter.map((text) => parameterOf(opened, text)), data });
  if (!result.found) throw new Refused(`Cannot tell: ${result.reason}`);
  if (options.json) out.json(asJson(opened, result));
  else print(opened, result, out);
}

function parameterOf(opened: Opened, text: string): CalibrateParameter {
  const [id, low, high] = text.split(':');
  if (!id || (low === undefined) !== (high === undefined))
    throw new Misused(`--parameter is "${text}"; write id or id:low:high, such as caramel.cook_model_offset:-5:5`);
  return { id, ...(low === undefined || high === undefined ? {} : { low: valueFor(opened, id, low), high: valueFor(opened, id, high) }) };
}

async function readTable(file: string): Promise<{ header: string[]; rows: { cells: string[]; line: number }[] }> {
  let text: string;
  try {
    text = await readFile(file, 'utf8');
  } catch (error) {
    throw new Refused(whyUnread(file, error, 'file', 'give the path of a CSV file'));
  }
  const { parse } = await import('csv-parse/sync');
  let records: { record: string[]; info: { lines: number } }[];
  try {
    records = parse(text, {
      bom: true,
      trim: true,
      skip_empty_lines: true,
      info: true,
      delimiter: [',', ';', '\t'],
    }) as unknown as typeof records;
  } catch (error) {
    throw new Refused(`${file} is no table: ${(error as Error).message}`);
  }
  if (records.length < 2)
    throw new Refused(
      `${file} has ${records.length === 0 ? 'no header' : 'a header but no readings'}; write a header of quantity ids and one line for each reading`,
    );
  return { header: records[0]!.record, rows: records.slice(1).map(({ record, info }) => ({ cells: record, line: info.lines })) };
}

function datumOf(
  opened: Opened,
  file: string,
  header: readonly string[],
  cells: readonly string[],
  line: number,
  observed: readonly string[],
): Datum {
  const inputs: Record<string, number> = {};
  const found: Record<string, number> = {};
  header.forEach((id, i) => {
    const cell = cells[i] ?? '';
    if (cell === '' || !opened.chain.index.has(id.replace(/\[.*\]$/, ''))) return;
    try {
      (observed.includes(id) ? found : inputs)[id] = valueFor(opened, id, cell);
    } catch (error) {
      throw new Refused(`${file}:${line}, ${id}: ${(error as Error).message}`);
    }
  });
  return { inputs, observed: found };
}

function asJson(opened: Opened, result: Calibrated): unknown {
  const shown = (id: string, x: number) =>
    tidy(presentation(opened.chain.quantities[opened.chain.index.get(id)!]!, opened.units).toShown(x));
  return {
    parameters: result.parameters.map((p) => ({
      ...p,
      estimate: shown(p.id, p.estimate),
      low: shown(p.id, p.low),
      high: shown(p.id, p.high),
      start: shown(p.id, p.start),
    })),
    correlation: result.correlation,
    residuals: result.residuals.map((r) => ({ ...r, observed: shown(r.id, r.observed), computed: shown(r.id, r.computed) })),
    residual_sd: result.residualSd,
    freedom: result.freedom,
  };
}

function print(opened: Opened, result: Calibrated, out: Out): void {
  const quantity = (id: string) => opened.chain.quantities[opened.chain.index.get(id)!]!;
  for (const p of result.parameters) {
    const finer = { ...quantity(p.id), decimals: (quantity(p.id).decimals ?? 2) + 1 };
    out.line(out.style.strong(`${quantity(p.id).meaning}: ${inWords(finer, p.estimate, opened.units)}`));
    out.line(
      `  95 % limits ${inWords(finer, p.low, opened.units)} to ${inWords(finer, p.high, opened.units)}; was ${inWords(finer, p.start, opened.units)}${p.atLimit ? `; it lies at the ${p.atLimit} limit of the search, so the readings ask for more` : ''}.`,
    );
  }
  out.line();
  const rows = result.residuals.map((r) => [
    `  reading ${r.datum + 1}`,
    inWords(quantity(r.id), r.observed, opened.units),
    inWords(quantity(r.id), r.computed, opened.units),
    r.id,
  ]);
  for (const line of table([['', 'read', 'computed', ''], ...rows], [false, true, true])) out.line(line);
  out.line(`${result.residuals.length} readings, ${result.freedom} to spare. Write the constant into the definition to use it.`);
}
