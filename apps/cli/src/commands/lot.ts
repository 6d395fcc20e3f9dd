import { lotAnswer, type LotAnswer } from '@barwright/line';
import { openPlant, type PlantOptions } from '../plant.js';
import { maybeQuantity } from '../quantity-option.js';
import type { Out } from '../out.js';
import { n, section } from '../say.js';
import { table } from '../text.js';

interface LotOptions extends PlantOptions {
  readonly lot: string;
  readonly material?: string;
  readonly reference?: string;
  readonly sample?: string;
  readonly prior?: string;
}

/** What a lot is worth and what its results say. */
export async function lotCommand(folder: string, options: LotOptions, out: Out): Promise<void> {
  const opened = await openPlant(folder, options);
  const sample = maybeQuantity('--sample', options.sample, 'mass', '20 kg');
  const prior = maybeQuantity('--prior', options.prior, 'fraction', '1 µg/kg');
  const answer = lotAnswer(opened, opened.session, options.lot, {
    ...(options.material === undefined ? {} : { material: options.material }),
    ...(options.reference === undefined ? {} : { reference: options.reference }),
    belief: {
      ...(sample === undefined ? {} : { sampleMass: 1000 * sample }),
      ...(prior === undefined ? {} : { priorMedian: 1e9 * prior }),
    },
  });
  if (options.json) out.json(asJson(answer));
  else print(answer, out);
}

function asJson(answer: LotAnswer): unknown {
  const { worth, grade } = answer;
  return {
    material: answer.material,
    lot: answer.lot,
    results: answer.results.map(({ name, value, limit, verdict, kind, reaction }) => ({
      name,
      value: value.text,
      limit: limit?.text ?? null,
      verdict,
      ...(kind ? { kind } : {}),
      ...(reaction ? { reaction } : {}),
    })),
    not_reported: answer.missing,
    reactions: answer.reactions,
    grade: grade
      ? {
          beans_cut: grade.beans,
          grade: grade.grade,
          settled: grade.settled,
          doubtful: grade.doubtful,
          shares: grade.shares,
          not_reported: grade.missing,
          beans_per_100_g: grade.count ?? null,
          size: grade.size ?? null,
          bean_mass_g: grade.beanMass ?? null,
          said: grade.said,
        }
      : null,
    worth: worth
      ? {
          component: worth.component,
          against: worth.against,
          currency: worth.currency,
          price_per_kg: worth.price,
          fair_price_per_kg: worth.fairPrice,
          discount: worth.discount,
          yield_reference: worth.yieldReference,
          yield: worth.yieldLot,
          extra_for_order_kg: worth.extraForOrder ?? null,
          extra_money: worth.extraMoney ?? null,
          stages: worth.stages,
          cost_after: worth.costAfter ?? null,
          effects: worth.effects.map(({ name, yieldChange, priceChange, extraForOrder, extraMoney }) => ({
            name,
            yield_change: yieldChange,
            price_change_per_kg: priceChange,
            extra_for_order_kg: extraForOrder ?? null,
            extra_money: extraMoney ?? null,
          })),
          not_counted: worth.notCounted,
        }
      : null,
    aflatoxin: answer.aflatoxin.map(({ what, result, limit, chanceAbove, chanceRange, acceptance, belief }) => ({
      what,
      result_ug_per_kg: result,
      limit_ug_per_kg: limit,
      chance_lot_above: chanceAbove,
      chance_if_three_times_cleaner_or_dirtier: chanceRange,
      acceptance: acceptance.map(({ mean, chance }) => ({ lot_mean_ug_per_kg: mean, chance_accepted: chance })),
      assumed: {
        sample_g: belief.sampleMass,
        portion_g: belief.portionMass,
        prior_median_ug_per_kg: belief.priorMedian,
        prior_spread: belief.priorSpread,
      },
    })),
    kill_step: answer.killStep,
    cautions: answer.cautions,
  };
}

function print(answer: LotAnswer, out: Out): void {
  const { results, reactions, grade, worth } = answer;
  const outside = results.filter(({ verdict }) => verdict === 'outside').length;
  out.line(
    out.style.strong(
      `${answer.lot}, ${answer.material}: ${outside === 0 ? 'every result is inside' : `${outside} result${outside === 1 ? '' : 's'} outside`} the control plan.`,
    ),
  );
  out.line();
  const rows = results.map(({ name, value, limit, verdict, by }) => [
    `  ${name}`,
    value.text,
    limit?.text ?? '',
    verdict === 'outside' ? out.style.act('outside') : verdict === 'no limit' ? out.style.faint('no limit') : '',
    out.style.faint(by ?? ''),
  ]);
  for (const line of table(rows, [false, true, true])) out.line(line);
  if (answer.missing.length > 0) out.line(`  Not reported: ${answer.missing.join(', ')}. A missing check is not a good one.`);
  section(out, 'What the control plan says', reactions);
  if (grade) {
    section(out, 'Cut test and count', [
      `Grade ${grade.grade}${grade.settled ? '' : `, as far as reported: ${grade.missing.join(', ')} beans are not`}.${grade.doubtful ? ' Another sample of this size may grade otherwise.' : ''}`,
      ...grade.shares.map(
        ({ name, counted, share, low, high }) =>
          `${name} ${counted} of ${grade.beans}: ${n(100 * share, 1)} %, 95 % interval ${n(100 * low, 1)} to ${n(100 * high, 1)} %.`,
      ),
      ...(grade.count
        ? [
            `${n(grade.count, 0)} beans per 100 g: ${grade.size}, ${n(grade.beanMass!, 2)} g a bean. Small beans carry more shell and roast faster: roast by size.`,
          ]
        : []),
      ...grade.said,
    ]);
  }
  if (worth) {
    const money = (x: number, digits = 3) => `${worth.currency} ${n(x, digits)}`;
    section(out, `Worth against ${worth.against}`, [
      `${worth.component}: ${n(100 * worth.yieldLot, 2)} kg from 100 kg instead of ${n(100 * worth.yieldReference, 2)}; fair price ${money(worth.fairPrice)}/kg instead of ${money(worth.price)} (${n(100 * worth.discount, 2)} % less, ${money(1000 * (worth.price - worth.fairPrice), 0)} a tonne).`,
      ...(worth.extraForOrder === undefined
        ? []
        : [`For the order ${n(worth.extraForOrder, 1)} kg more are needed: ${money(worth.extraMoney!, 0)} at the price asked.`]),
      ...worth.effects.map(
        ({ name, yieldChange, priceChange, extraForOrder, extraMoney }) =>
          `${name} alone: yield ${n(100 * yieldChange, 2)} %, ${money(1000 * priceChange, 0)} a tonne${extraForOrder === undefined ? '' : `, ${n(extraForOrder, 1)} kg and ${money(extraMoney!, 0)} for the order`}.`,
      ),
      ...(worth.costAfter
        ? [
            `After ${worth.costAfter.stage}: ${money(worth.costAfter.lot, 2)} for a usable kg instead of ${money(worth.costAfter.reference, 2)}.`,
          ]
        : []),
      ...(worth.notCounted.length > 0 ? [`Not in it: ${worth.notCounted.join(', ')}.`] : []),
    ]);
  }
  for (const { what, result, limit, chanceAbove, chanceRange, acceptance, belief } of answer.aflatoxin)
    section(out, 'What one aflatoxin result leaves open', [
      `${what} ${n(result, 1)} µg/kg, limit ${n(limit, 0)}: chance that the mean of the lot is above ${n(100 * chanceAbove, 0)} % (${n(100 * chanceRange[0], 0)} to ${n(100 * chanceRange[1], 0)} % if such lots are three times cleaner or dirtier than believed).`,
      `Such a test accepts a lot of ${acceptance.map(({ mean, chance }) => `${n(mean, 0)} µg/kg with ${n(100 * chance, 0)} %`).join(', ')}.`,
      `Assumed: ${n(belief.sampleMass / 1000, 0)} kg sample, ${n(belief.portionMass, 0)} g portion, such lots around ${n(belief.priorMedian, 1)} µg/kg. Scatter between samples of shelled peanuts from memory of Whitaker 1974.`,
    ]);
  section(out, 'Kill step', answer.killStep);
  section(out, 'Mind', answer.cautions);
}
