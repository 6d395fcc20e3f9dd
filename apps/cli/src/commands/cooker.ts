import { cookerAnswers, cookerCautions, cookTable, type CookerAnswer } from '@barwright/line';
import type { Out } from '../out.js';
import { openPlant, type Opened, type PlantOptions } from '../plant.js';
import { maybeQuantity } from '../quantity-option.js';
import { readRows } from '../rows.js';
import { n, section } from '../say.js';
import { table } from '../text.js';

interface CookerOptions extends PlantOptions {
  readonly component?: string;
  readonly probe?: string;
}

/** Duty, steam, time and spread of the cookers, and what a wrong probe does. */
export async function cookerCommand(folder: string, log: string | undefined, options: CookerOptions, out: Out): Promise<void> {
  const opened = await openPlant(folder, options);
  const probe = maybeQuantity('--probe', options.probe, 'temperature difference', '1 K');
  const read = log === undefined ? undefined : await readRows(log);
  const answers = cookerAnswers(opened, opened.session, {
    ...(options.component === undefined ? {} : { component: options.component }),
    ...(probe === undefined ? {} : { probe }),
    ...(read ? { log: cookTable(read.rows, read.name) } : {}),
  });
  const asked = read && options.component === undefined ? answers.slice(0, 1) : answers; // a log is of one component
  if (options.json) out.json(asked.map((answer) => asJson(opened, answer)));
  else asked.forEach((answer, i) => print(opened, answer, i === asked.length - 1, out));
}

function asJson({ session }: Opened, { ids, usual, ...answer }: CookerAnswer): unknown {
  return {
    ...answer,
    probe: answer.probe ? { ...answer.probe, along: undefined } : null,
    kind: answer.kind ?? null,
    quantities: Object.fromEntries(ids.map((id) => [id, session.status(id).ok ? session.number(id) : null])),
    usual_heat_transfer_w_m2_k: usual,
  };
}

function print(opened: Opened, answer: CookerAnswer, last: boolean, out: Out): void {
  const { session, chain } = opened;
  out.line(out.style.strong(`${answer.component}, ${answer.stage}: ${answer.kind ?? 'cooker not described'}`));
  const rows = answer.ids
    .filter((id) => session.status(id).ok)
    .map((id) => [`  ${chain.quantities[chain.index.get(id)!]!.meaning}`, opened.words(id, session.number(id))]);
  for (const line of table(rows, [false, true])) out.line(line);
  const { probe } = answer;
  if (probe) {
    out.line();
    out.line(out.style.strong(`A probe that shows ${n(Math.abs(probe.kelvin), 1)} K too ${probe.kelvin < 0 ? 'little' : 'much'}`));
    const changed = probe.changes.map(({ id, meaning, before, after, broken }) => [
      `  ${meaning}`,
      opened.words(id, before),
      '→',
      opened.words(id, after),
      broken ? out.style.act('outside its window') : '',
    ]);
    for (const line of table(changed, [false, true, false, true])) out.line(line);
    if (probe.water !== undefined)
      out.line(`  ${n(1000 * Math.abs(probe.water), 3)} g ${probe.water < 0 ? 'less' : 'more'} water on a bar of the same mass`);
    if (probe.money !== undefined)
      out.line(
        `  ingredients of the order ${n(Math.abs(probe.money), 0)} ${opened.plant.currency} ${probe.money < 0 ? 'cheaper' : 'dearer'}: what is held or wasted is not in it`,
      );
  }
  section(out, 'So', answer.advice);
  section(out, 'Cannot tell yet', answer.needs);
  section(out, 'What it rests on', answer.notes);
  if (last) section(out, 'Mind', cookerCautions);
  else out.line();
}
