import type { Session } from '@barwright/chain';
import { carryValidation } from './kill-steps.js';
import { aflatoxinOdds, beanGrade, usualBelief, type AflatoxinBelief, type AflatoxinOdds, type BeanGrade } from './lot-grades.js';
import { judgeResults, lotNamed, type LotResult, type NamedLot } from './lot-results.js';
import { lotWorth, type LotWorth } from './lot-worth.js';
import type { PlantChain } from './plant-chain.js';

/** What a lot is: its results against the control plan, its grade, its worth, what it means for the kill step. */
export interface LotAnswer {
  readonly material: string;
  readonly lot: string;
  readonly note?: string;
  readonly results: readonly LotResult[];
  /** Checks of the control plan without a result: a missing check is never good. */
  readonly missing: readonly string[];
  /** What the control plan says to do, the law first; empty where every result is inside. */
  readonly reactions: readonly string[];
  readonly grade?: BeanGrade;
  readonly aflatoxin: readonly AflatoxinOdds[];
  readonly worth?: LotWorth;
  /** Against the validations of the roaster that will take it. */
  readonly killStep: readonly string[];
  readonly cautions: readonly string[];
}

export interface LotOptions {
  readonly material?: string;
  /** Another lot to compare the worth with; left out: the recipe as costed. */
  readonly reference?: string;
  readonly belief?: Partial<AflatoxinBelief>;
}

/**
 * Everything that the intake results of a lot say. The session is left as it was.
 * @throws UnknownLot with the lots there are
 */
export function lotAnswer(from: PlantChain, session: Session, lot: string, options: LotOptions = {}): LotAnswer {
  const named = lotNamed(from.plant, lot, options.material);
  const reference = options.reference === undefined ? undefined : lotNamed(from.plant, options.reference, named.material);
  const { results, missing } = judgeResults(from.plant, named);
  const grade = /bean/i.test(named.material) ? beanGrade(results) : undefined;
  const worth = lotWorth(from, session, named, reference);
  const outside = results
    .filter(({ verdict }) => verdict === 'outside')
    .sort((a, b) => Number(b.kind === 'law') - Number(a.kind === 'law'));
  return {
    material: named.material,
    lot: named.lot,
    ...(named.note ? { note: named.note } : {}),
    results,
    missing: missing.map(({ what }) => what),
    reactions: outside.map(
      ({ name, value, limit, kind, reaction }) =>
        `${capital(name)} ${value.text}, limit ${limit!.text}${kind === 'law' ? ' (law)' : ''}: ${reaction ?? 'no reaction is written'}.`,
    ),
    ...(grade ? { grade } : {}),
    aflatoxin: aflatoxinOdds(results, { ...usualBelief, ...options.belief }),
    ...(worth ? { worth } : {}),
    killStep: killStepOf(from, named),
    cautions: [
      'Worth counts what the lot makes, not flavour, fat or defects. A claim rests on the contract and its sampling law.',
      'A sample says little about a lot in which few pieces carry the harm; accept, hold and reject are for the qualified person.',
    ],
  };
}

/** Raw moisture against the limits of the roasters that take the material. */
function killStepOf(from: PlantChain, lot: NamedLot): readonly string[] {
  const moisture = lot.results.find(({ slug }) => slug === 'moisture')?.value;
  if (!moisture) return [];
  const takers = [...from.plant.components.values()].filter((component) =>
    component.stages.some((stage) => stage.adds.some(({ name }) => name === lot.material)),
  );
  const stations = from.line?.stations.filter(({ works }) => takers.some(({ name }) => name === works)) ?? [];
  return from.plant.validations.flatMap((validation) => {
    if (!stations.some(({ name }) => name === validation.step)) return [];
    const { limits } = carryValidation(validation).validation;
    if (!limits.rawMoisture) return [`${validation.id} of the ${validation.step} names no raw moisture.`];
    const { min = -Infinity, max = Infinity } = limits.rawMoisture;
    const inside = moisture.value >= min && moisture.value <= max;
    return [
      inside
        ? `Raw moisture ${moisture.text} lies inside ${validation.id} of the ${validation.step}.`
        : `Raw moisture ${moisture.text} lies outside ${validation.id} of the ${validation.step}: roasted from this lot, the kill step is not proven.`,
    ];
  });
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
