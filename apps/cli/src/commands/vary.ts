import { varyAsync, type Variation, type VaryInput } from '@barwright/chain';
import { inWords, presentation, tidy } from '@barwright/line';
import { openPlant, type Opened, type PlantOptions } from '../plant.js';
import { Misused, type Out } from '../out.js';
import { table } from '../text.js';

interface VaryOptions extends PlantOptions {
  readonly output?: readonly string[];
  readonly input?: readonly string[];
  readonly samples: string;
  readonly seed: string;
}

/** What the scatter of the inputs does to a result, and which input does most of it. */
export async function varyCommand(folder: string, options: VaryOptions, out: Out): Promise<void> {
  const opened = await openPlant(folder, options);
  const stop = new AbortController();
  const cancel = () => stop.abort();
  process.once('SIGINT', cancel);
  try {
    const variation = await varyAsync(opened.chain, opened.session, {
      outputs: options.output ?? ['bar.mass'],
      samples: whole('--samples', options.samples),
      seed: whole('--seed', options.seed),
      ...(options.input ? { inputs: options.input.map((text) => inputOf(opened, text)) } : {}),
      signal: stop.signal,
      onProgress: (done) => out.progress(`${Math.round(100 * done)} %`),
    });
    out.progress('');
    if (options.json) out.json(asJson(opened, variation));
    else print(opened, variation, out);
  } finally {
    process.off('SIGINT', cancel);
  }
}

function whole(name: string, text: string): number {
  const value = Number(text);
  if (!Number.isInteger(value) || value < 1) throw new Misused(`${name} is "${text}", but a whole number above 0 is expected`);
  return value;
}

/** 'caramel.moisture:0.2 %': a difference in the unit in which the quantity is shown. */
function inputOf(opened: Opened, text: string): VaryInput {
  const match = /^([^:]+):\s*([\d.]+)\s*(\S*)$/.exec(text);
  if (!match) throw new Misused(`--input is "${text}"; write id:standard deviation, such as caramel.moisture:0.2`);
  const [, id, number, unit] = match as unknown as [string, string, string, string];
  const quantity = opened.chain.quantities[opened.chain.index.get(id) ?? -1];
  if (!quantity) throw new Misused(`There is no quantity "${id}"; list them with: barwright quantities <plant folder>`);
  const shown = presentation(quantity, opened.units);
  if (unit !== '' && unit !== shown.unit)
    throw new Misused(`${id} is shown in ${shown.unit || 'plain numbers'}; write its standard deviation in that, not in ${unit}`);
  return { id, sd: Math.abs(shown.toInside(Number(number)) - shown.toInside(0)) };
}

function asJson(opened: Opened, variation: Variation): unknown {
  return {
    samples: variation.samples,
    inputs: variation.inputs,
    failures: variation.failures,
    outputs: variation.outputs.map((spread) => {
      const { unit, toShown } = shownOf(opened, spread.id);
      const difference = (x: number) => tidy(Math.abs(toShown(x) - toShown(0)));
      return {
        id: spread.id,
        unit,
        mean: tidy(toShown(spread.mean)),
        mean_error: difference(spread.meanError),
        sd: difference(spread.sd),
        p025: tidy(toShown(spread.p025)),
        p05: tidy(toShown(spread.p05)),
        p50: tidy(toShown(spread.p50)),
        p95: tidy(toShown(spread.p95)),
        p975: tidy(toShown(spread.p975)),
        tails: { p025: spread.tails.p025.map((x) => tidy(toShown(x))), p975: spread.tails.p975.map((x) => tidy(toShown(x))) },
        outside_window: spread.outside,
        missing: spread.missing,
        shares: spread.shares?.ranked.map(({ id, first, total, interaction, firstError, totalError }) => ({
          id,
          first,
          total,
          interaction,
          first_error: firstError,
          total_error: totalError,
        })),
      };
    }),
  };
}

function shownOf(opened: Opened, id: string) {
  return presentation(opened.chain.quantities[opened.chain.index.get(id.replace(/\[.*\]$/, ''))!]!, opened.units);
}

function print(opened: Opened, variation: Variation, out: Out): void {
  for (const spread of variation.outputs) {
    const quantity = opened.chain.quantities[opened.chain.index.get(spread.id.replace(/\[.*\]$/, ''))!]!;
    const finer = { ...quantity, decimals: (quantity.decimals ?? 2) + 1 };
    const words = (x: number) => inWords(finer, x, opened.units);
    const { toShown, unit } = presentation(quantity, opened.units);
    const difference = (x: number) => `${Math.abs(toShown(x) - toShown(0)).toPrecision(3)} ${unit}`.trim();
    out.line(
      out.style.strong(
        `${quantity.meaning}: mean ${words(spread.mean)} (± ${difference(spread.meanError)} by sampling), standard deviation ${difference(spread.sd)}`,
      ),
    );
    out.line(`  95 of 100 lie between ${words(spread.p025)} and ${words(spread.p975)}; half below ${words(spread.p50)}.`);
    if (spread.outside)
      out.line(
        `  Outside its window: ${(100 * spread.outside.low).toFixed(2)} % below, ${(100 * spread.outside.high).toFixed(2)} % above.`,
      );
    if (spread.missing > 0) out.line(`  ${spread.missing} samples had no value: ${variation.failures.message}`);
    const rows = (spread.shares?.ranked ?? []).map((share) => {
      const input = opened.chain.quantities[opened.chain.index.get(share.id)!]!;
      return [
        `  ${input.meaning}`,
        `${(100 * share.first).toFixed(1)} %`,
        `± ${(100 * share.firstError).toFixed(1)}`,
        `with others ${(100 * share.total).toFixed(1)} %`,
        out.style.faint(share.id),
      ];
    });
    for (const line of table(rows, [false, true, true])) out.line(line);
  }
  out.line(out.style.faint(`${variation.samples} evenly spread samples (scrambled Sobol), ${variation.inputs.length} inputs.`));
}
