import { enroberAnswer, type EnroberAnswer, type Moved } from '@barwright/line';
import { openPlant, type PlantOptions } from '../plant.js';
import { maybeQuantity } from '../quantity-option.js';
import { Misused, type Out } from '../out.js';
import { n, section } from '../say.js';
import { table } from '../text.js';

interface EnroberOptions extends PlantOptions {
  readonly yield?: string;
  readonly plastic?: string;
  readonly blower?: string;
  readonly shaker?: string;
}

/** What-if at the enrober: coat, bar, money, tunnel, temper, and the ways back. */
export async function enroberCommand(folder: string, options: EnroberOptions, out: Out): Promise<void> {
  const opened = await openPlant(folder, options);
  const change = {
    yieldValue: maybeQuantity('--yield', options.yield, 'pressure', '12 Pa'),
    plasticViscosity: maybeQuantity('--plastic', options.plastic, 'viscosity', '2.3 Pa·s'),
    blowerSpeed: maybeQuantity('--blower', options.blower, 'speed', '24 m/s'),
    shakerFrequency: perSecond(maybeQuantity('--shaker', options.shaker, 'count rate', '600 1/min')),
  };
  const given = Object.fromEntries(Object.entries(change).filter(([, value]) => value !== undefined));
  if (Object.keys(given).length === 0) throw new Misused('Say what changes: --yield "12 Pa", --plastic, --blower or --shaker');
  const answer = enroberAnswer(opened, opened.session, given);
  if (options.json) out.json(asJson(answer));
  else print(answer, out);
}

const perSecond = (perMinute: number | undefined): number | undefined => (perMinute === undefined ? undefined : perMinute / 60);

function asJson(answer: EnroberAnswer): unknown {
  const moved = (of: Moved | undefined, factor = 1) => (of ? { before: factor * of.before, after: factor * of.after } : null);
  const coat = (of: EnroberAnswer['after']) => ({
    mass_g: 1000 * of.mass,
    low_g: 1000 * of.low,
    high_g: 1000 * of.high,
    top_mm: 1000 * of.top,
    side_mm: 1000 * of.side,
    bottom_mm: 1000 * of.bottom,
    top_set_by: of.topSetBy,
    calibrated_on: of.calibratedOn,
    calibration: of.calibration,
  });
  return {
    currency: answer.currency,
    target_g: 1000 * answer.target,
    coat_before: coat(answer.before),
    coat: coat(answer.after),
    bar_mass_g: moved(answer.barMass, 1000),
    giveaway_g: moved(answer.giveaway, 1000),
    cost_per_bar: moved(answer.cost),
    temperer_kg_per_h: moved(answer.throughput),
    tunnel_exit_c: moved(answer.tunnelExit),
    tunnel_load_kw: moved(answer.tunnelLoad, 1e-3),
    ways_back: {
      blower_m_per_s: answer.blower ?? null,
      addition: answer.correction?.best
        ? {
            name: answer.correction.best.name,
            add_cocoa_butter: answer.correction.best.add.cocoaButter,
            add_lecithin: answer.correction.best.add.lecithin,
            add_e476: answer.correction.best.add.e476,
            cost_per_kg: answer.correction.best.cost,
            lawful: answer.correction.best.lawful,
            law: answer.correction.best.law,
          }
        : null,
    },
    notes: answer.notes,
  };
}

function print(answer: EnroberAnswer, out: Out): void {
  const { before, after, window } = answer;
  const outside = (window.high !== undefined && after.mass > window.high) || (window.low !== undefined && after.mass < window.low);
  const words = `Expect a coat of ${n(1000 * after.mass, 1)} g (${n(1000 * after.low, 1)} to ${n(1000 * after.high, 1)}) instead of ${n(1000 * before.mass, 1)} g${outside ? ', outside its window' : ''}.`;
  out.line(outside ? out.style.act(words) : out.style.strong(words));
  out.line();
  const row = (name: string, of: Moved | undefined, factor: number, digits: number, unit: string): string[][] =>
    of ? [[`  ${name}`, `${n(factor * of.before, digits)} ${unit}`, '→', `${n(factor * of.after, digits)} ${unit}`]] : [];
  const face = (name: 'top' | 'side' | 'bottom') => row(`coat, ${name}`, { before: before[name], after: after[name] }, 1000, 2, 'mm');
  const rows = [
    ...face('top'),
    ...face('side'),
    ...(after.bottom > 0 ? face('bottom') : []),
    ...row('mass of a bar', answer.barMass, 1000, 2, 'g'),
    ...row('given away', answer.giveaway, 1000, 2, 'g'),
    ...row('cost of a bar', answer.cost, 100, 3, 'ct'),
    ...row('through the temperer', answer.throughput, 1, 0, 'kg/h'),
    ...row('bars leave the tunnel at', answer.tunnelExit, 1, 1, '°C'),
    ...row('heat from bars in the tunnel', answer.tunnelLoad, 1e-3, 1, 'kW'),
  ];
  for (const line of table(rows, [false, true, false, true])) out.line(line);
  const best = answer.correction?.best;
  section(out, `Ways back to ${n(1000 * answer.target, 1)} g`, [
    ...(answer.blower === undefined ? [] : [`Blower ${n(answer.blower, 1)} m/s: costs nothing; look at the top and the tails.`]),
    ...(best && best.name !== 'nothing'
      ? [
          `${best.name}: ${n(100 * (best.add.cocoaButter + best.add.lecithin + best.add.e476), 2)} % more, ${answer.currency} ${n(best.cost, 4)} a kg of chocolate. ${best.law.join(' ')}`,
        ]
      : []),
    'Nothing: live with the coat, and with what it gives away.',
  ]);
  section(out, 'Mind', answer.notes);
}
