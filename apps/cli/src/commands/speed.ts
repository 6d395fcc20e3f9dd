import { atSpeed, type SpeedAnswer } from '@barwright/line';
import { openPlant, type PlantOptions } from '../plant.js';
import { quantityOption } from '../quantity-option.js';
import { Misused, type Out } from '../out.js';
import { n, section } from '../say.js';
import { table } from '../text.js';

interface SpeedOptions extends PlantOptions {
  readonly rate: string;
  readonly margin?: string;
}

/** What breaks first at another line speed. */
export async function speedCommand(folder: string, options: SpeedOptions, out: Out): Promise<void> {
  const opened = await openPlant(folder, options);
  const rate = quantityOption('--rate', options.rate, 'count rate', '1050 bars/min');
  if (!(rate > 0)) throw new Misused(`--rate is "${options.rate}", but a rate above 0 is expected`);
  const margin = options.margin === undefined ? undefined : quantityOption('--margin', options.margin, 'fraction', '5 %');
  const answer = atSpeed(opened, opened.session, rate, margin === undefined ? {} : { margin });
  if (options.json) out.json(asJson(answer));
  else print(answer, out);
}

function asJson(answer: SpeedAnswer): unknown {
  const { tunnel } = answer;
  return {
    rate_before: answer.before,
    rate: answer.after,
    first: answer.first?.name ?? null,
    most_possible: answer.mostPossible,
    most_with_margin: answer.mostWithMargin,
    stations: answer.stations.map(({ name, before, after, can, asked, unit, fullAt, verdict }) => ({
      name,
      used_before: before,
      used: after,
      asked,
      can,
      unit,
      full_at_bars_per_min: fullAt,
      verdict,
    })),
    buffers: answer.buffers.map(({ station, oneDown }) => ({
      station,
      one_down_before_min: minutes(oneDown.before),
      one_down_min: minutes(oneDown.after),
    })),
    belt_speed_m_per_min: 60 * answer.beltSpeed.after,
    tunnel: tunnel
      ? {
          dwell_before_min: tunnel.before.dwell / 60,
          dwell_min: tunnel.after.dwell / 60,
          exit_before_c: tunnel.before.exitSurface.value,
          exit_c: tunnel.after.exitSurface.value,
          exit_change_k: tunnel.after.exitSurface.value - tunnel.before.exitSurface.value,
          load_before_kw: tunnel.before.load / 1000,
          load_kw: tunnel.after.load / 1000,
        }
      : null,
    broken_windows: answer.broken.map(({ id }) => id),
    advice: answer.advice,
    cautions: answer.cautions,
  };
}

const minutes = (seconds: number): number | null => (Number.isFinite(seconds) ? seconds / 60 : null);

function print(answer: SpeedAnswer, out: Out): void {
  out.line(
    out.style.strong(
      `${n(answer.after, 0)} bars/min instead of ${n(answer.before, 0)}: ${answer.first ? `the ${answer.first.name} gives out first` : 'every station can'}.`,
    ),
  );
  out.line();
  const rows = [['', 'used', 'now', 'asked', 'can', '', 'full at bars/min', ''].map((cell) => out.style.faint(cell))];
  for (const { name, before, after, asked, can, unit, fullAt, verdict } of answer.stations) {
    const words = verdict === 'can' ? '' : verdict === 'cannot' ? out.style.act('cannot') : 'no room to catch up';
    rows.push([
      `  ${name}`,
      `${n(100 * after, 1)} %`,
      `${n(100 * before, 1)} %`,
      n(asked, 0),
      n(can, 0),
      unit,
      n(Math.floor(fullAt + 1e-9), 0),
      words,
    ]);
  }
  for (const line of table(rows, [false, true, true, true, true, false, true])) out.line(line);
  const minutesOr = (seconds: number) => (Number.isFinite(seconds) ? `${n(seconds / 60, 1)} min` : 'without end');
  section(
    out,
    'The accumulation with one machine down, full speed upstream',
    answer.buffers.map(({ station, oneDown }) => `${station}: ${minutesOr(oneDown.after)} instead of ${minutesOr(oneDown.before)}.`),
  );
  section(out, 'So', answer.advice);
  section(
    out,
    'Newly outside',
    answer.broken.map(({ id }) => id),
  );
  section(out, 'Mind', answer.cautions);
}
