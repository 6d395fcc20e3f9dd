import type { Entered, PlannedCheck, Plant } from '@barwright/plant';

/** The plan has no such lot; the sentence says which it has. */
export class UnknownLot extends RangeError {
  readonly code = 'UNKNOWN_LOT';
}

/** One intake result of a lot against the control plan. */
export interface LotResult {
  readonly name: string;
  readonly slug: string;
  readonly value: Entered;
  readonly limit?: Entered;
  readonly verdict: 'inside' | 'outside' | 'no limit';
  /** 'law' where the limit is one of law. */
  readonly kind?: PlannedCheck['kind'];
  readonly reaction?: string;
  readonly by?: string;
}

/** A lot of a material with its results. */
export interface NamedLot {
  readonly material: string;
  readonly lot: string;
  readonly note?: string;
  readonly results: NonNullable<Plant['plans'][number]['lots'][number]['results']>;
}

/** The lot that is meant; the material may be left out where one lot only has that name. @throws UnknownLot */
export function lotNamed(plant: Plant, lot: string, material?: string): NamedLot {
  const all = plant.plans.flatMap((plan) => plan.lots);
  const wanted = lot.toLowerCase();
  const of = material?.toLowerCase();
  const found = all.find((other) => other.lot.toLowerCase() === wanted && (of === undefined || other.material.toLowerCase() === of));
  if (found) return { ...found, results: found.results ?? [] };
  const near = all.filter((other) => of === undefined || other.material.toLowerCase() === of);
  const list = (near.length > 0 ? near : all).map((other) => `${other.lot} (${other.material})`).join(', ');
  throw new UnknownLot(`The plan of ${plant.name} has no lot "${lot}"${material ? ` of ${material}` : ''}; it has ${list || 'none'}`);
}

/** Checks of the control plan at the intake of a material: 'bean intake' for cocoa beans, 'glucose syrup' for a glucose syrup. */
export function intakeChecks(plant: Plant, material: string): readonly PlannedCheck[] {
  const words = wordsOf(material);
  return plant.checks.filter(({ at }) => {
    const place = wordsOf(at).filter((word) => word !== 'intake');
    return place.length > 0 && place.every((word) => words.includes(word));
  });
}

/** Words without a plural s. */
function wordsOf(text: string): readonly string[] {
  return text
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u)
    .filter(Boolean)
    .map((word) => word.replace(/s$/, ''));
}

/** Every result against its limit, and the checks that have no result. */
export function judgeResults(
  plant: Plant,
  lot: NamedLot,
): { readonly results: readonly LotResult[]; readonly missing: readonly PlannedCheck[] } {
  const checks = intakeChecks(plant, lot.material);
  const used = new Set<PlannedCheck>();
  const results = lot.results.map(({ name, slug, value }): LotResult => {
    const words = wordsOf(name);
    const check = checks.find(({ what, limit }) => {
      const of = wordsOf(what);
      return words.every((word) => of.includes(word)) && (!limit || limit.dimension === value.dimension);
    });
    if (check) used.add(check);
    const limit = check?.limit;
    const outside =
      limit !== undefined &&
      ((limit.low !== undefined && value.value < limit.low) || (limit.high !== undefined && value.value > limit.high));
    return {
      name,
      slug,
      value,
      verdict: limit === undefined ? 'no limit' : outside ? 'outside' : 'inside',
      ...(limit ? { limit } : {}),
      ...(check ? { kind: check.kind } : {}),
      ...(check?.reaction ? { reaction: check.reaction } : {}),
      ...(check?.by ? { by: check.by } : {}),
    };
  });
  return { results, missing: checks.filter((check) => !used.has(check)) };
}
