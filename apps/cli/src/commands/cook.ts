import {
  batchAnswer,
  cookElsewhere,
  cookTable,
  judgeCooks,
  type BatchAnswer,
  type CookLogAnswer,
  type ElsewhereAnswer,
} from '@barwright/line';
import { windowsOfCooks } from '@barwright/day';
import { follow, followedJson, logsBeside, printFollowed, type BesideOptions } from '../affected.js';
import { openPlant, type Opened, type PlantOptions } from '../plant.js';
import { maybeQuantity } from '../quantity-option.js';
import { readRows } from '../rows.js';
import { Misused, type Out } from '../out.js';
import { n, section } from '../say.js';
import { table } from '../text.js';

interface CookOptions extends PlantOptions, BesideOptions {
  readonly component?: string;
  readonly moisture?: string;
  readonly temperature?: string;
  readonly refractometer?: string;
  readonly viscosity?: string;
  readonly deposit?: string;
  readonly altitude?: string;
  readonly pressure?: string;
}

/** A batch that came out wet or dry, a log of cooks, or the cooks under another pressure. */
export async function cookCommand(folder: string, log: string | undefined, options: CookOptions, out: Out): Promise<void> {
  const opened = await openPlant(folder, options);
  const readings = {
    moisture: maybeQuantity('--moisture', options.moisture, 'fraction', '10.3 %'),
    temperature: maybeQuantity('--temperature', options.temperature, 'temperature', '117.7 °C'),
    refractometer: maybeQuantity('--refractometer', options.refractometer, 'fraction', '89.4 %'),
    viscosity: maybeQuantity('--viscosity', options.viscosity, 'viscosity', '26 Pa·s'),
    depositTemperature: maybeQuantity('--deposit', options.deposit, 'temperature', '78 °C'),
  };
  const altitude = maybeQuantity('--altitude', options.altitude, 'length', '1600 m');
  const pressure = maybeQuantity('--pressure', options.pressure, 'pressure', '400 mbar');
  const given = Object.fromEntries(Object.entries(readings).filter(([, value]) => value !== undefined));
  const kinds = [log !== undefined, Object.keys(given).length > 0, altitude !== undefined || pressure !== undefined].filter(Boolean);
  if (kinds.length !== 1)
    throw new Misused(
      'Say one thing: readings of a batch (--moisture "10.3 %" …), a log of cooks, or another pressure (--altitude "1600 m", --pressure "400 mbar")',
    );
  if (log !== undefined) {
    const { name, rows } = await readRows(log);
    const answer = judgeCooks(opened, opened.session, cookTable(rows, name), options.component);
    const followed = follow(opened, await logsBeside(log, options), windowsOfCooks(answer));
    if (options.json) out.json({ ...logJson(answer), affected: followedJson(followed) });
    else printLog(opened, answer, followed, out);
    return;
  }
  if (altitude !== undefined || pressure !== undefined) {
    const there =
      altitude === undefined
        ? { pressure: pressure!, ...(options.component === undefined ? {} : { component: options.component }) }
        : { altitude };
    const answer = cookElsewhere(opened, opened.session, there);
    if (options.json) out.json(elsewhereJson(answer));
    else printElsewhere(answer, out);
    return;
  }
  const answer = batchAnswer(opened, opened.session, given, options.component);
  if (options.json) out.json(batchJson(answer));
  else printBatch(opened, answer, out);
}

function batchJson(answer: BatchAnswer): unknown {
  const { probe, slump, deposit } = answer;
  return {
    component: answer.component,
    aim: answer.aim,
    moisture: answer.moisture,
    window: answer.window,
    readings: answer.says,
    probe: probe
      ? {
          shown_c: probe.shown,
          boils_at_c: probe.boilsAt,
          error_k: probe.error,
          or_pressure_pa: probe.pressure,
          contradicts: probe.contradicts,
          cook_to_as_shown_c: probe.indicated,
        }
      : null,
    changes: answer.changes.map(({ id, before, after, broken }) => ({ id, before, after, broken })),
    neighbours: answer.neighbours.map(({ other, step, rest }) => ({
      other,
      step_before: step.before,
      step: step.after,
      limit: step.limit ?? null,
      rest_activity_before: rest.before.activity,
      rest_activity: rest.after.activity,
      rest_moisture_before: rest.before.own,
      rest_moisture: rest.after.own,
      other_rest_moisture_before: rest.before.other,
      other_rest_moisture: rest.after.other,
    })),
    slump: slump
      ? {
          days: slump.after.time / 86_400,
          run_out_before_mm: 1000 * slump.before.runOut,
          run_out_mm: 1000 * slump.after.runOut,
          hours_to_1_mm_before: slump.before.toOneMillimetre / 3600,
          hours_to_1_mm: slump.after.toOneMillimetre / 3600,
          half_width_mm: Array.from(slump.after.shape.x, (x) => 1000 * x),
          height_mm: Array.from(slump.after.shape.height, (h) => 1000 * h),
        }
      : null,
    deposit: deposit ? { now_c: deposit.now, wanted_c: deposit.wanted, in_window: deposit.inWindow } : null,
    grows: answer.grows,
    advice: answer.advice,
    notes: answer.notes,
  };
}

const percent = (x: number, digits = 2) => `${n(100 * x, digits)} %`;

function printBatch(opened: Opened, answer: BatchAnswer, out: Out): void {
  out.line(out.style.strong(`${answer.component} at ${percent(answer.moisture)} water instead of ${percent(answer.aim)}.`));
  if (answer.says.length > 1)
    section(
      out,
      'What each reading says',
      answer.says.map(({ reading, moisture }) => `${reading}: ${percent(moisture, 1)}`),
    );
  section(out, 'So', answer.advice);
  out.line();
  out.line(out.style.strong('What it does'));
  printChanges(opened, answer.changes, out);
  for (const { other, step, rest } of answer.neighbours)
    section(out, `Beside the ${other}`, [
      `step in water activity ${n(step.before, 3)} → ${n(step.after, 3)}${step.limit === undefined ? '' : `, at most ${n(step.limit, 3)} permitted`}.`,
      `at rest with each other: water activity ${n(rest.before.activity, 3)} → ${n(rest.after.activity, 3)}; ${answer.component} ${percent(rest.before.own, 1)} → ${percent(rest.after.own, 1)}, ${other} ${percent(rest.before.other, 1)} → ${percent(rest.after.other, 1)} water.`,
    ]);
  const { slump } = answer;
  if (slump)
    section(out, `How it would sag in ${n(slump.after.time / 86_400, 0)} days, nothing holding it`, [
      `foot ${n(1000 * slump.before.runOut, 1)} → ${n(1000 * slump.after.runOut, 1)} mm out on each side; middle ${n(1000 * slump.before.shape.centre, 1)} → ${n(1000 * slump.after.shape.centre, 1)} mm high of ${n(1000 * slump.after.start.height, 1)} mm.`,
      `the first millimetre takes ${duration(slump.before.toOneMillimetre)} → ${duration(slump.after.toOneMillimetre)}: ${n(slump.before.toOneMillimetre / slump.after.toOneMillimetre, 1)} times as fast.`,
    ]);
  section(out, 'Mind', answer.notes);
}

function duration(seconds: number): string {
  if (seconds < 5400) return `${n(seconds / 60, 0)} min`;
  return seconds < 172_800 ? `${n(seconds / 3600, 1)} h` : `${n(seconds / 86_400, 1)} d`;
}

function printChanges(opened: Opened, changes: BatchAnswer['changes'], out: Out): void {
  const rows = changes.map(({ id, meaning, before, after, broken }) => [
    `  ${meaning}`,
    opened.words(id, before),
    '→',
    opened.words(id, after),
    broken ? out.style.act('outside its window') : '',
  ]);
  for (const line of table(rows, [false, true, false, true])) out.line(line);
}

function logJson(answer: CookLogAnswer): object {
  return {
    component: answer.component,
    good: answer.good,
    batches: answer.batches,
    incidents: answer.incidents.map(({ answer: one, at: _, ...rest }) => ({ ...rest, answer: batchJson(one) })),
    offsets: answer.offsets,
    said: answer.said,
  };
}

function printLog(opened: Opened, answer: CookLogAnswer, followed: ReturnType<typeof follow>, out: Out): void {
  const odd = answer.batches.filter(({ verdict }) => verdict !== 'good' && verdict !== 'repeat');
  out.line(
    out.style.strong(
      `${answer.component}: ${answer.batches.filter(({ verdict }) => verdict !== 'repeat').length} cooks, ${answer.good} good${odd.length > 0 ? `, ${odd.length} not` : ''}.`,
    ),
  );
  out.line();
  const rows = [['', 'ended', 'laid', 'water', ''].map((cell) => out.style.faint(cell))];
  for (const { name, ended, laid, moisture, verdict, why } of answer.batches)
    rows.push([
      `  ${name}`,
      ended,
      laid ?? '',
      percent(moisture),
      verdict === 'good' ? '' : `${verdict === 'repeat' ? verdict : out.style.act(verdict)}: ${why}`,
    ]);
  for (const line of table(rows, [false, false, false, true])) out.line(line);
  for (const { batches, verdict, known, laid, answer: one } of answer.incidents)
    section(out, `${batches.join(', ')}: ${verdict}, told by ${known}${laid ? `, laid ${laid}` : ''}`, one.advice);
  printFollowed(followed, out);
  section(
    out,
    'What the good cooks teach',
    answer.offsets.map(({ id, estimate, low, high, write, batches }) => {
      const words = (x: number) => opened.words(id, x);
      return `${id} ${words(estimate)} (95 %: ${words(low)} to ${words(high)}, ${batches} cooks). Write "${write}".`;
    }),
  );
  section(out, 'How the log was read', answer.said);
}

function elsewhereJson(answer: ElsewhereAnswer): unknown {
  return {
    pressure_pa: answer.pressure,
    altitude_m: answer.altitude ?? null,
    cooks: answer.cooks.map((cook) => ({
      component: cook.component,
      moisture: cook.moisture,
      pressure_before_pa: cook.pressure.before,
      indicated_before_c: cook.indicated.before,
      indicated_c: cook.indicated.after,
      difference_k: cook.indicated.after - cook.indicated.before,
      set_point_before_c: cook.setPoint?.before ?? null,
      set_point_c: cook.setPoint?.after ?? null,
      refractometer: cook.refractometer.after,
      heat_before_j_per_kg: cook.heat.before,
      heat_j_per_kg: cook.heat.after,
      k_per_kpa: cook.perKilopascal,
    })),
    notes: answer.notes,
  };
}

function printElsewhere(answer: ElsewhereAnswer, out: Out): void {
  out.line(
    out.style.strong(
      `At ${n(answer.pressure / 100, 0)} mbar${answer.altitude === undefined ? '' : ` (standard atmosphere at ${n(answer.altitude, 0)} m)`}, the same moistures:`,
    ),
  );
  out.line();
  const rows = [
    ['', 'water', 'cook to, as shown', '', '', 'set point', '', 'heat per kg charged', '', 'K/kPa there'].map((cell) =>
      out.style.faint(cell),
    ),
  ];
  for (const cook of answer.cooks)
    rows.push([
      `  ${cook.component}`,
      percent(cook.moisture),
      `${n(cook.indicated.before, 1)} °C`,
      `→ ${n(cook.indicated.after, 1)} °C`,
      `${n(cook.indicated.after - cook.indicated.before, 1)} K`,
      cook.setPoint ? `${n(cook.setPoint.before, 1)} °C` : '',
      cook.setPoint ? `→ ${n(cook.setPoint.after, 1)} °C` : '',
      `${n(cook.heat.before / 1000, 0)} kJ`,
      `→ ${n(cook.heat.after / 1000, 0)} kJ`,
      n(cook.perKilopascal, 2),
    ]);
  for (const line of table(rows, [false, true, true, true, true, true, true, true, true, true])) out.line(line);
  section(out, 'Mind', answer.notes);
}
