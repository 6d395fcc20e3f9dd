import { slabHistory, type SlabAnswer } from '@barwright/line';
import { openPlant, type PlantOptions } from '../plant.js';
import { maybeQuantity } from '../quantity-option.js';
import type { Out } from '../out.js';
import { n, section } from '../say.js';
import { table } from '../text.js';

interface SlabCommandOptions extends PlantOptions {
  readonly air?: string;
  readonly rate?: string;
}

/** The slab through its cooler, and whether it can be slit. */
export async function slabCommand(folder: string, options: SlabCommandOptions, out: Out): Promise<void> {
  const opened = await openPlant(folder, options);
  const air = maybeQuantity('--air', options.air, 'temperature', '8 °C');
  const rate = maybeQuantity('--rate', options.rate, 'count rate', '1050 bars/min');
  const answer = slabHistory(opened, opened.session, { ...(air === undefined ? {} : { air }), ...(rate === undefined ? {} : { rate }) });
  if (options.json) out.json(asJson(answer));
  else print(answer, out);
}

function asJson(answer: SlabAnswer): unknown {
  const end = (x: number) => (Number.isFinite(x) ? x : null);
  return {
    station: answer.station,
    dwell_min: answer.dwell / 60,
    air_c: answer.air,
    layers: answer.layers.map(({ name, height, start }) => ({ name, height_mm: 1000 * height, laid_at_c: start })),
    exit_c: answer.exit,
    core_between_c: answer.hottestBetween,
    load_kw: answer.load / 1000,
    slit: { from_c: answer.slit.from, below_c: answer.slit.below, opens_m: end(answer.slit.opens), closes_m: end(answer.slit.closes), state: answer.slit.state }, // prettier-ignore
    along: answer.along,
    sentences: answer.sentences,
  };
}

function print(answer: SlabAnswer, out: Out): void {
  const [first, ...rest] = answer.sentences;
  out.line(out.style.strong(first!));
  out.line();
  const rows = [['', 'core', 'coldest', 'top', 'bottom', 'evened out'].map((cell) => out.style.faint(cell))];
  const last = answer.along.place.length - 1;
  for (let i = 0; i <= 8; i++) {
    const at = Math.round((i * last) / 8);
    rows.push([
      `  ${n(answer.along.place[at]!, 1)} m`,
      ...(['hottest', 'coldest', 'top', 'bottom', 'mean'] as const).map((key) => `${n(answer.along[key][at]!, 1)} °C`),
    ]);
  }
  for (const line of table(rows, [false, true, true, true, true, true])) out.line(line);
  section(out, 'Laid', answer.layers.map(({ name, height, start }) => `${name}, ${n(1000 * height, 1)} mm at ${n(start, 1)} °C`)); // prettier-ignore
  section(out, 'Mind', [`Heat taken out of the slab: ${n(answer.load / 1000, 1)} kW.`, ...rest]);
}
