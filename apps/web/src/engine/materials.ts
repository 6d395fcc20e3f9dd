import type { Material } from '@barwright/drawing';

/** The small texture of a bought material or a component, by what its name or texture says. */
export function materialOf(name: string, texture?: string): Material {
  const words = `${texture ?? ''} ${name}`;
  for (const [pattern, material] of byWord) if (pattern.test(words)) return material;
  return 'dry';
}

const byWord: readonly (readonly [RegExp, Material])[] = [
  [/white chocolate/i, 'white-chocolate'],
  [/(dark|plain) chocolate/i, 'dark-chocolate'],
  [/chocolate/i, 'milk-chocolate'],
  [/nougat|mallow|foam/i, 'nougat'],
  [/caramel|toffee|fudge/i, 'caramel'],
  [/wafer/i, 'wafer'],
  [/biscuit|cookie|crumb/i, 'biscuit'],
  [/jelly|fruit/i, 'jelly'],
  [/paste|praline|marzipan/i, 'paste'],
  [/bean|nib/i, 'cocoa-bean'],
  [/peanut|almond|hazel|nut\b|nuts\b|kernel/i, 'nut'],
  [/cocoa butter|\bfat\b|butter|\boil\b|shortening/i, 'fat'],
  [/syrup|honey|invert|sorbitol|glycerol/i, 'syrup'],
  [/milk|cream|whey/i, 'milk'],
  [/\bwater\b/i, 'water'],
  [/sugar|sucrose|dextrose|lactose/i, 'sugar'],
  [/film/i, 'film'],
  [/liquor|cocoa mass/i, 'paste'],
];
