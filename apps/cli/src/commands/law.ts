import { chocolateNames, chocolateOf, type ChocolateNames } from '@barwright/line';
import { openPlant, type PlantOptions } from '../plant.js';
import type { Out } from '../out.js';
import { n, section } from '../say.js';
import { table } from '../text.js';

interface LawOptions extends PlantOptions {
  readonly component?: string;
}

/** The names in law that a chocolate may carry, market by market. */
export async function lawCommand(folder: string, options: LawOptions, out: Out): Promise<void> {
  const opened = await openPlant(folder, options);
  const names = chocolateNames(opened, opened.session, chocolateOf(opened, options.component));
  if (options.json) out.json(asJson(names));
  else print(names, out);
}

function asJson(names: ChocolateNames): unknown {
  const requirement = (r: ChocolateNames['markets'][number]['allowed'][number]['tightest']) => ({
    quantity: r.quantity,
    bound: r.bound,
    limit: r.limit,
    actual: r.actual,
    margin: r.margin,
    standing: r.standing,
  });
  return {
    component: names.component,
    wanted: names.wanted ? { name: names.wanted.name, market: names.wanted.market, allowed: names.wanted.result?.allowed ?? null } : null,
    markets: names.markets.map(({ market, source, edition, inForceFrom, basis, allowed, refused }) => ({
      market,
      source,
      edition,
      in_force_from: inForceFrom,
      basis,
      allowed: allowed.map(({ name, reference, tightest, requirements, condition }) => ({
        name,
        reference,
        tightest: requirement(tightest),
        requirements: requirements.map(requirement),
        ...(condition ? { condition } : {}),
      })),
      refused: refused.map(({ name, reference, change }) => ({ name, reference, change })),
    })),
    cautions: names.cautions,
  };
}

const titles = { eu: 'European Union', codex: 'Codex', us: 'United States' } as const;

function print(names: ChocolateNames, out: Out): void {
  const { wanted } = names;
  if (wanted)
    out.line(
      out.style.strong(
        wanted.result === undefined
          ? `We hold no rule for "${wanted.name}" in this market.`
          : wanted.result.allowed
            ? `${names.component} may be called "${wanted.name}" (${titles[wanted.market]}).`
            : `${names.component} may not be called "${wanted.name}" (${titles[wanted.market]}).`,
      ),
    );
  for (const { market, source, edition, basis, allowed, refused } of names.markets) {
    out.line();
    out.line(out.style.strong(titles[market]));
    out.line(out.style.faint(`  ${source}, ${edition}. Shares of ${basis}.`));
    if (allowed.length === 0) out.line('  No name that we hold a rule for.');
    const rows = allowed.map(({ name, reference, tightest: t, condition }) => [
      `  ${name}`,
      `${t.quantity.replaceAll('_', ' ')} ${n(100 * t.actual, 2)} %`,
      `${t.bound} ${+(100 * t.limit).toFixed(2)} %`,
      `${n(100 * t.margin, 2)} points of room`,
      `${reference}${condition ? `; ${condition}` : ''}`,
    ]);
    for (const line of table(rows, [false, true, true, true])) out.line(line);
    for (const { change } of refused.slice(0, 6)) for (const sentence of change) out.line(out.style.faint(`  not ${sentence}`));
  }
  section(out, 'Mind', names.cautions);
}
