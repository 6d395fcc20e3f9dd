import { judgeRoast, roasterNamed, roastTable, type RoastAnswer } from '@barwright/line';
import { windowsOfRoast } from '@barwright/day';
import { follow, followedJson, logsBeside, printFollowed, type BesideOptions } from '../affected.js';
import { openPlant, type PlantOptions } from '../plant.js';
import { maybeQuantity } from '../quantity-option.js';
import { readRows } from '../rows.js';
import type { Out } from '../out.js';
import { section } from '../say.js';

interface RoastOptions extends PlantOptions, BesideOptions {
  readonly station?: string;
  readonly rawMoisture?: string;
}

/** Whether a roast log proves the kill step. */
export async function roastCommand(folder: string, file: string, options: RoastOptions, out: Out): Promise<void> {
  const opened = await openPlant(folder, options);
  const station = roasterNamed(opened, options.station);
  const { name, rows } = await readRows(file);
  const rawMoisture = maybeQuantity('--raw-moisture', options.rawMoisture, 'fraction', '6.2 %');
  const answer = judgeRoast(opened, station, roastTable(rows, name, station.name), rawMoisture === undefined ? {} : { rawMoisture });
  const logs = await logsBeside(file, options);
  const followed = follow(opened, logs, windowsOfRoast(opened, opened.session, answer, logs));
  if (options.json) out.json({ ...asJson(answer), affected: followedJson(followed) });
  else print(answer, followed, out);
}

function asJson(answer: RoastAnswer): object {
  const { rows, stretches, ...rest } = answer;
  return {
    ...rest,
    rows: { proven: rows.proven, not_proven: rows.notProven, cannot_tell: rows.cannotTell },
    stretches: stretches.map(({ exitTo, cut, at: _, ...stretch }) => ({
      ...stretch,
      product_left_by: exitTo,
      ...(cut ? { passes_cutter: cut } : {}),
    })),
  };
}

function print(answer: RoastAnswer, followed: ReturnType<typeof follow>, out: Out): void {
  const { verdict, rows } = answer;
  const words = `${answer.station}: the kill step is ${verdict === 'proven' ? 'proven' : verdict === 'not proven' ? 'not proven' : 'neither proven nor disproven; the log cannot tell'}.`;
  out.line(verdict === 'proven' ? out.style.strong(words) : out.style.act(words));
  if (answer.claim) out.line(out.style.faint(`  ${answer.validation}: ${answer.claim}`));
  section(out, 'Because', answer.reasons);
  if (rows.notProven + rows.cannotTell > 0) {
    section(
      out,
      `Which lines (${rows.proven} proven, ${rows.notProven} not proven, ${rows.cannotTell} that cannot be told)`,
      answer.stretches
        .filter(({ verdict: of }) => of !== 'proven')
        .slice(0, 20)
        .map(
          ({ verdict: of, from, to, lines, exitTo, cut, reason }) =>
            `${of}: ${from} to ${to} (lines ${lines[0]} to ${lines[1]}); product inside left by ${exitTo}${cut ? `, at the cutter ${cut[0]} to ${cut[1]}` : ''}. ${reason}`,
        ),
    );
    out.line();
    out.line(out.style.act('Hold that product and every bar made from it.'));
    printFollowed(followed, out);
  }
  section(
    out,
    'How near each limit came',
    answer.margins.map(
      ({ quantity, least, unit, limit }) =>
        `${quantity}: ${least < 0 ? 'beyond by' : 'within by'} ${+Math.abs(least).toPrecision(3)} ${unit} (${limit})`,
    ),
  );
  section(
    out,
    'Published studies beside, as plausibility only',
    answer.beside.map(({ found, conditions, here }) => `${found}. ${conditions}. ${here}`),
  );
  section(out, 'How the table was read', [...answer.read, ...answer.said]);
  section(out, 'Mind', answer.cautions);
}
