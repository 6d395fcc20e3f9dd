/** Flow laws and their parameters by the words of the trade: words, unit, digits. */
export const flowLawNames = { casson: 'Casson', windhab: 'Windhab', 'herschel-bulkley': 'Herschel-Bulkley', bingham: 'Bingham' } as const;
export const flowParameterNames: Readonly<Record<string, readonly [words: string, unit: string, digits: number]>> = {
  yield_value_pa: ['yield value', 'Pa', 2],
  plastic_viscosity_pa_s: ['plastic viscosity', 'Pa·s', 3],
  structured_yield_pa: ['structured yield value', 'Pa', 1],
  breakdown_rate_s: ['breakdown rate', '1/s', 2],
  end_viscosity_pa_s: ['end viscosity', 'Pa·s', 3],
  consistency_pa_sn: ['consistency', 'Pa·sⁿ', 2],
  flow_index: ['index', '', 3],
};
