import type { Component, Plant } from '@barwright/plant';
import { chocolateContents, chocolateLaw, chocolateLaws, type ChocolateMarket, type Composition } from '@barwright/science';
import { percent, type Builder } from './builder.js';

/** Rule set for the market of the plant. Others fall back on the Codex standard. */
export function chocolateMarket(market: string): ChocolateMarket {
  if (/^(eu|uk|gb|eu\/uk)$/i.test(market)) return 'eu';
  if (/^us/i.test(market)) return 'us';
  return 'codex';
}

/** What the name in law asks of a chocolate, each requirement as a quantity standing on its limit. */
export function lawSteps(b: Builder, plant: Plant, component: Component): void {
  if (!component.legalName) return;
  const market = chocolateMarket(plant.market);
  const rule = chocolateLaws[market].names.find((name) => name.name.toLowerCase() === component.legalName!.toLowerCase());
  if (!rule) {
    const names = chocolateLaws[market].names.map((name) => name.name).join(', ');
    b.step({
      title: 'Composition in law',
      inputs: [`${component.slug}.composition`],
      outputs: [
        { id: `${component.slug}.law.rules`, meaning: `rules found for the name "${component.legalName}"`, unit: '1', decimals: 0 },
      ],
      equation: 'none of the names in our dated law data',
      run: () => 0,
      findings: () => [
        {
          code: 'NAME_UNKNOWN',
          level: 'note',
          quantity: `${component.slug}.law.rules`,
          message: `Cannot tell whether ${component.name} may be called "${component.legalName}": for market ${plant.market} we hold rules for ${names}.`,
        },
      ],
    });
    return;
  }
  const outputs = rule.rules.map((requirement) => ({
    id: `${component.slug}.law.${requirement.quantity}`,
    meaning: `${requirement.quantity.replaceAll('_', ' ')} of ${component.name} as "${rule.name}" counts it`,
    ...percent,
    window: {
      ...(requirement.bound === 'at least' ? { low: requirement.limit } : { high: requirement.limit }),
      reason: `legal limit of the name "${rule.name}"`,
      source: rule.reference,
    },
  }));
  b.step({
    title: `Composition in law: ${rule.name}`,
    inputs: [`${component.slug}.composition`],
    outputs,
    equation: 'on the basis that the market names: finished chocolate less other edible matter',
    sources: [chocolateLaws[market].source],
    run: (x: Composition) => {
      const result = chocolateLaw(chocolateContents(x), market).find((name) => name.name === rule.name)!;
      const values = result.requirements.map((requirement) => requirement.actual);
      return values.length === 1 ? values[0]! : values;
    },
    findings: (_, values) =>
      rule.rules.flatMap((requirement, i) => {
        const actual = values[i] as number;
        const met =
          requirement.bound === 'at least'
            ? actual >= requirement.limit - 1e-9
            : requirement.bound === 'below'
              ? actual < requirement.limit
              : actual <= requirement.limit + 1e-9;
        if (met) return [];
        return [
          {
            code: 'NAME_NOT_ALLOWED',
            level: 'incident' as const,
            quantity: outputs[i]!.id,
            message: `${component.name} may not be called "${rule.name}": ${requirement.quantity.replaceAll('_', ' ')} is ${(100 * actual).toFixed(2)} %, ${requirement.bound} ${+(100 * requirement.limit).toFixed(2)} % is asked (${rule.reference}).`,
          },
        ];
      }),
  });
}
