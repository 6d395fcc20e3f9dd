import { cookTable, foamAnswer, judgeFoam, type FoamAnswer, type FoamLogAnswer } from '@barwright/line';
import { Misused, type Out } from '../out.js';
import { openPlant, type Opened, type PlantOptions } from '../plant.js';
import { maybeQuantity } from '../quantity-option.js';
import { readRows } from '../rows.js';
import { n, section } from '../say.js';
import { table } from '../text.js';

interface FoamOptions extends PlantOptions {
  readonly component?: string;
  readonly density?: string;
  readonly pressure?: string;
  readonly temperature?: string;
  readonly power?: string;
}

/** A whipped mass that came out light or dense, another whip, a weak albumen; or a log of whipped batches. */
export async function foamCommand(folder: string, log: string | undefined, options: FoamOptions, out: Out): Promise<void> {
  const opened = await openPlant(folder, options);
  const asked = {
    density: maybeQuantity('--density', options.density, 'density', '0.95 g/cm³'),
    pressure: maybeQuantity('--pressure', options.pressure, 'pressure', '3.2 bar'),
    temperature: maybeQuantity('--temperature', options.temperature, 'temperature', '80 °C'),
    power: maybeQuantity('--power', options.power, 'fraction', '85 %'),
  };
  const given = Object.fromEntries(Object.entries(asked).filter(([, value]) => value !== undefined));
  if (asked.density !== undefined && asked.power !== undefined)
    throw new Misused('A measured density tells what the albumen holds; give --density or --power, not both');
  if (log === undefined) {
    const answer = foamAnswer(opened, opened.session, given, options.component);
    if (options.json) out.json(asJson(answer));
    else print(opened, answer, out);
    return;
  }
  if (Object.keys(given).length > 0) throw new Misused('A log tells its own densities and pressures; leave the other options out');
  const { name, rows } = await readRows(log);
  const answer = judgeFoam(opened, opened.session, cookTable(rows, name), options.component);
  if (options.json) out.json(logJson(answer));
  else printLog(answer, out);
}

function asJson(answer: FoamAnswer): unknown {
  const changes = (list: FoamAnswer['constantWeight']) => list.map(({ id, before, after, broken }) => ({ id, before, after, broken }));
  return {
    component: answer.component,
    aim_kg_m3: answer.aim,
    density_kg_m3: answer.density,
    measured: answer.measured,
    window_kg_m3: [answer.window.low ?? null, answer.window.high ?? null],
    state: answer.state,
    air_before: answer.air.before,
    air: answer.air.after,
    overrun: answer.overrun.after,
    gas_held_plan: answer.held.plan,
    gas_held: answer.held.now,
    power: answer.power,
    whip_pressure_pa: answer.whip.pressure,
    whip_temperature_c: answer.whip.temperature,
    pressure_for_the_aim_pa: answer.restore.pressure,
    stiffness_ratio: answer.stiffness ?? null,
    at_constant_thickness: changes(answer.constantThickness),
    at_constant_weight: changes(answer.constantWeight),
    advice: answer.advice,
    notes: answer.notes,
  };
}

function print(opened: Opened, answer: FoamAnswer, out: Out): void {
  const c = (rho: number) => `${n(rho / 1000, 3)} g/cm³`;
  out.line(
    out.style.strong(
      `${answer.component} at ${c(answer.density)}${answer.measured ? ', measured' : ''}: ${answer.state}; ${n(100 * answer.air.after, 1)} % air, overrun ${n(100 * answer.overrun.after, 0)} %.`,
    ),
  );
  out.line();
  const rows = [['', 'planned', 'sheet as thick', 'bar as heavy'].map((cell) => out.style.faint(cell))];
  answer.constantThickness.forEach(({ id, meaning, before, after, broken }, i) => {
    const weight = answer.constantWeight[i]!;
    const told = (value: number, act: boolean) => (act ? out.style.act(opened.words(id, value)) : opened.words(id, value));
    rows.push([`  ${meaning}`, opened.words(id, before), told(after, broken), told(weight.after, weight.broken)]);
  });
  for (const line of table(rows, [false, true, true, true])) out.line(line);
  section(out, 'So', answer.advice);
  section(out, 'What it rests on', answer.notes);
  section(out, 'Mind', cautions);
}

const cautions = [
  'Albumen is an allergen (egg) and may carry Salmonella: only lots with a positive release.',
  'A whip is a pressure vessel: vent it before it is opened; only trained people work on it. Barwright advises and sets nothing.',
];

function logJson(answer: FoamLogAnswer): unknown {
  return { ...answer, incidents: answer.incidents.map(({ answer: one, ...rest }) => ({ ...rest, answer: asJson(one) })) };
}

function printLog(answer: FoamLogAnswer, out: Out): void {
  const odd = answer.batches.filter(({ verdict }) => verdict !== 'good');
  out.line(out.style.strong(`${answer.component}: ${answer.batches.length} batches, ${answer.good} good${odd.length > 0 ? `, ${odd.length} not` : ''}.`)); // prettier-ignore
  out.line();
  const cup = (rho: number) => (Number.isFinite(rho) ? n(rho / 1000, 3) : '–');
  const rows = [['', 'ended', 'density', 'expected', 'gas held', ''].map((cell) => out.style.faint(cell))];
  for (const { name, ended, density, expected, held, verdict, why } of answer.batches)
    rows.push([
      `  ${name}`,
      ended,
      cup(density),
      cup(expected),
      Number.isFinite(held) ? `${n(100 * held, 1)} %` : '–',
      verdict === 'good' ? '' : `${out.style.act(verdict)}: ${why}`,
    ]);
  for (const line of table(rows, [false, false, true, true, true])) out.line(line);
  for (const { batches, verdict, laid, answer: one } of answer.incidents)
    section(out, `${batches.join(', ')}: ${verdict}${laid ? `, laid ${laid}` : ''}`, one.advice);
  const { held } = answer;
  section(out, 'What the good batches teach', [
    ...(held
      ? [
          `The whip holds ${n(100 * held.mean, 1)} % gas (95 %: ${n(100 * held.low, 1)} to ${n(100 * held.high, 1)} %, ${held.batches} batches); one batch scatters by ± ${n(100 * held.sd, 1)} points. Write "${answer.write}" at the stage of the whip.`,
        ]
      : []),
    ...answer.lots.map(
      ({ lot, mean, low, high, batches, differs }) =>
        `Albumen ${lot}: ${n(100 * mean, 1)} % (${n(100 * low, 1)} to ${n(100 * high, 1)} %, ${batches} batches)${differs ? '; it differs from the others' : '; no difference from the others is proven'}.`,
    ),
  ]);
  section(out, 'How the log was read', answer.said);
  section(out, 'Mind', cautions);
}
