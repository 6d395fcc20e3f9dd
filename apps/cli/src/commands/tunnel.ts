import { tunnelHistory, tunnelOffset, tunnelTable, type TunnelFit, type TunnelRun } from '@barwright/line';
import { openPlant, type PlantOptions } from '../plant.js';
import { maybeQuantity } from '../quantity-option.js';
import { readRows } from '../rows.js';
import type { Out } from '../out.js';
import { between, n, section } from '../say.js';
import { table } from '../text.js';

interface TunnelOptions extends PlantOptions {
  readonly rate?: string;
  readonly log?: string;
}

/** How a bar passes the tunnel, and what a log of it asks of the model. */
export async function tunnelCommand(folder: string, options: TunnelOptions, out: Out): Promise<void> {
  const opened = await openPlant(folder, options);
  const rate = maybeQuantity('--rate', options.rate, 'count rate', '1050 bars/min');
  const run = tunnelHistory(opened, opened.session, rate === undefined ? {} : { rate });
  const log = options.log === undefined ? undefined : await readRows(options.log);
  const fit = log && tunnelOffset(opened, opened.session, tunnelTable(log.rows, log.name), log.name);
  if (options.json) out.json({ ...asJson(run), ...(fit ? { log: fitJson(fit) } : {}) });
  else print(run, fit, out);
}

function asJson(run: TunnelRun): Record<string, unknown> {
  return {
    station: run.station,
    rate: run.rate,
    belt_speed_m_per_min: 60 * run.beltSpeed,
    dwell_min: run.dwell / 60,
    exit_surface_c: run.exitSurface,
    exit_mean_c: run.exitMean,
    exit_centre_c: run.exitCentre,
    coldest_surface_c: run.coldestSurface,
    solid_fat: run.solids,
    least_solid_fat: run.leastSolids,
    solid_fat_at_20_c: run.solidsAt20,
    heat_left_j_per_kg: run.heatLeft,
    load_kw: run.load / 1000,
    load_by_zone_kw: run.loadByZone.map((load) => load / 1000),
    room_dew_point_c: run.dewPoint,
    dew_margin_k: run.dewMargin,
    zones: run.zones.map(({ name, air, from, to }) => ({ name, air_c: air, from_m: from, to_m: to })),
    along: {
      place_m: run.along.place,
      surface_c: run.along.surface,
      centre_c: run.along.centre,
      mean_c: run.along.mean,
      solid_fat: run.along.solids,
    },
    notes: run.notes,
  };
}

function fitJson(fit: TunnelFit): unknown {
  return {
    readings: fit.readings,
    left_out: fit.leftOut,
    measured_c: fit.measured,
    computed_c: fit.computed,
    offset_k: fit.offset,
    offset_low_k: fit.low,
    offset_high_k: fit.high,
    sd_k: fit.sd,
    said: fit.said,
  };
}

function print(run: TunnelRun, fit: TunnelFit | undefined, out: Out): void {
  out.line(
    out.style.strong(
      `Bars leave the ${run.station} at ${n(run.exitSurface.value, 1)} °C (${between(run.exitSurface, 1)}) at ${n(run.rate, 0)} bars/min.`,
    ),
  );
  out.line(
    `The interval is what ±20 % of heat transfer does. ${n(run.dwell / 60, 2)} min in the tunnel at ${n(60 * run.beltSpeed, 2)} m/min.`,
  );
  out.line();
  const { place, surface, centre, mean, solids } = run.along;
  const rows = [['  place', 'time', 'air', 'top surface', 'centre', 'mean', 'solid fat'].map((cell) => out.style.faint(cell))];
  const end = place.at(-1)!;
  for (let k = 0; k <= 12; k++) {
    const at = (end * k) / 12;
    const i = place.reduce((best, x, j) => (Math.abs(x - at) < Math.abs(place[best]! - at) ? j : best), 0);
    const zone = run.zones.find(({ to }) => place[i]! <= to + 1e-9) ?? run.zones.at(-1)!;
    rows.push([
      `${n(place[i]!, 1)} m`,
      `${n(place[i]! / run.beltSpeed / 60, 1)} min`,
      `${n(zone.air, 1)} °C`,
      `${n(surface[i]!, 1)} °C`,
      `${n(centre[i]!, 1)} °C`,
      `${n(mean[i]!, 1)} °C`,
      `${n(100 * solids[i]!, 0)} %`,
    ]);
  }
  for (const line of table(rows, [true, true, true, true, true, true, true])) out.line(`  ${line}`);
  out.line();
  out.line(
    `The bar evens out at ${n(run.exitMean.value, 1)} °C; ${n(100 * run.solids, 0)} % of the fat of the coat is solid, ${n(100 * run.solidsAt20, 0)} % would be at 20 °C.`,
  );
  out.line(
    `Heat from bars ${n(run.load / 1000, 1)} kW (${run.loadByZone.map((load) => n(load / 1000, 1)).join(' + ')} by zone). Coldest surface ${n(run.dewMargin.value, 1)} K above the dew point of the room, ${n(run.dewPoint, 1)} °C.`,
  );
  if (fit) {
    section(out, 'Against the log', [
      `${fit.readings} readings: measured ${n(fit.measured, 1)} °C, computed ${n(fit.computed, 1)} °C without offset.${fit.leftOut > 0 ? ` ${fit.leftOut} with marks of the belt were left out: temper or setting was off.` : ''}`,
      `Offset ${n(fit.offset, 2)} K, 95 % limits ${n(fit.low, 2)} to ${n(fit.high, 2)} K; one reading scatters by ${n(fit.sd, 2)} K. Write it into the definition as the set point "exit offset" of the tunnel to use it.`,
      ...fit.said,
    ]);
  }
  section(out, 'Mind', [...run.notes, 'Never chill harder to make up for temper. Barwright advises; it sets nothing on a machine.']);
}
