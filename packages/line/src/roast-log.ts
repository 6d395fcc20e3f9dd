import type { Station } from '@barwright/plant';
import {
  judgeKillStep,
  type KillStepJudgement,
  type KillStepValidation,
  type KillStepVerdict,
  type RoastLog,
  type StudyBeside,
} from '@barwright/science';
import { validationsOf } from './kill-steps.js';
import { NotOnLine } from './not-on-line.js';
import type { PlantChain } from './plant-chain.js';
import type { RoastTable } from './tables/roast-table.js';

/** A stretch of a roast log with its verdict, in the words of its clock, and the bars that carry its product. */
export interface RoastStretch {
  readonly verdict: KillStepVerdict;
  readonly from: string;
  readonly to: string;
  /** Lines of the file, from 1. */
  readonly lines: readonly [number, number];
  /** Product that was inside has left the roaster by then. */
  readonly exitTo: string;
  /** The stretch and the exit of its last product, s on the clock of the log. */
  readonly at: { readonly from: number; readonly to: number; readonly exitTo: number };
  /** When that product passes the cutter, where the plant wrote the transit; the widest it may be. */
  readonly cut?: readonly [from: string, to: string];
  readonly reason: string;
}

/** Whether a roast log proves the kill step, which lines, and what lies beside. */
export interface RoastAnswer {
  readonly station: string;
  readonly verdict: KillStepVerdict;
  readonly reason: string;
  readonly reasons: readonly string[];
  readonly validation?: string;
  readonly claim?: string;
  readonly rows: { readonly proven: number; readonly notProven: number; readonly cannotTell: number };
  /** Those that are not proven first; then what cannot be told; proven stretches last. */
  readonly stretches: readonly RoastStretch[];
  /** Least margin of each logged limit over the whole log, in its unit: how near it came. */
  readonly margins: readonly { readonly quantity: string; readonly least: number; readonly unit: string; readonly limit: string }[];
  /** Published studies, as plausibility. They never enter the verdict. */
  readonly beside: readonly StudyBeside[];
  /** What was read for what, and sentences on the table. */
  readonly read: readonly string[];
  readonly said: readonly string[];
  readonly cautions: readonly string[];
}

export interface RoastOptions {
  /** Raw moisture of the product where the log has none, mass fraction. */
  readonly rawMoisture?: number;
}

const cautions = [
  'Barwright advises only: the qualified HACCP team decides on release, hold and roasting again.',
  'Colour, moisture and published studies support a record; they never replace it. There is no credit for being close, nor between two validations.',
  'After the roaster nothing kills Salmonella: hold everything made from product that is not proven, bars included.',
];

/** The station that is meant: by name, with what there is when it is not found. @throws NotOnLine */
export function roasterNamed(from: PlantChain, name?: string): Station {
  const stations = from.line?.stations ?? [];
  const roasters = stations.filter(
    (station) => from.plant.validations.some(({ step }) => step === station.name) || /roast/i.test(station.name),
  );
  const wanted = name?.toLowerCase();
  const found =
    wanted === undefined
      ? roasters.length === 1
        ? roasters[0]
        : undefined
      : stations.find((station) => station.name.toLowerCase() === wanted || station.slug === wanted);
  if (found) return found;
  const list = roasters.map((station) => `"${station.name}"`).join(', ') || 'none';
  throw new NotOnLine(
    wanted === undefined
      ? `the log may belong to ${list}; name its station`
      : `${from.line?.name ?? from.bar.name} has no station "${name}"; its roasters are ${list}`,
  );
}

/**
 * Judges a roast log against the plant's own validation of that station, all limits together.
 * Raw moisture comes from the log, else from the intake result of the lot that each line names, else from `rawMoisture`.
 */
export function judgeRoast(from: PlantChain, station: Station, table: RoastTable, options: RoastOptions = {}): RoastAnswer {
  const said = [...table.said];
  const log = withRawMoisture(from, station, table, options, said);
  const carried = validationsOf(from.plant, station);
  const usable = carried.filter(({ unread }) => unread.length === 0).map(({ validation }) => validation);
  let judgement = judgeKillStep(usable, log);
  const unread = carried.find((other) => other.unread.length > 0);
  if (unread && usable.length === 0) {
    const reason = `${unread.validation.id} also holds only within ${unread.unread.join(', ')}, which no log is judged by here: whether the step is proven cannot be told.`;
    judgement = { ...judgeKillStep([], log), verdict: 'cannot tell', reason, reasons: [reason], validation: unread.validation.id };
  }
  const validation = usable.find(({ id }) => id === judgement.validation);
  const margins = validation ? marginsOf(validation, log) : [];
  const onLimit = margins.filter(({ quantity, least }) => least === 0 && /air|product/.test(quantity)).map(({ quantity }) => quantity);
  if (onLimit.length > 0 && judgement.verdict === 'proven')
    said.push(
      `${onLimit.join(' and ')} stood exactly on the limit at least once: what the instrument may be off by is for the HACCP team to weigh.`,
    );
  return {
    station: station.name,
    verdict: judgement.verdict,
    reason: judgement.reason,
    reasons: judgement.reasons,
    ...(judgement.validation ? { validation: judgement.validation } : {}),
    ...(validation ? { claim: validation.claim } : {}),
    rows: judgement.rows,
    stretches: stretchesOf(from, station, table, judgement),
    margins,
    beside: judgement.beside,
    read: table.columns.map(({ quantity, headers }) => `${words[quantity]} from ${headers.map((header) => `"${header}"`).join(', ')}`),
    said,
    cautions,
  };
}

const words = {
  airTemperature: 'air temperature',
  airVelocity: 'air velocity',
  bedDepth: 'bed depth',
  residence: 'residence time',
  rawMoisture: 'raw moisture',
  productTemperature: 'product temperature',
  colour: 'colour (not used in the verdict)',
} as const;

/**
 * The log with raw moisture, where it can be known: as logged, else by the intake result of the lot of each line, else as entered.
 * @param said - what was taken is told here
 */
export function withRawMoisture(from: PlantChain, station: Station, table: RoastTable, options: RoastOptions, said: string[]): RoastLog {
  const { log, lots } = table;
  if (log.rawMoisture !== undefined) return log;
  if (lots) {
    const results = new Map(
      from.plant.plans
        .flatMap((plan) => plan.lots)
        .map(({ lot, results: list }) => [lot, list?.find(({ slug }) => slug === 'moisture')?.value.value]),
    );
    const column = Float64Array.from(lots, (lot) => results.get(lot) ?? options.rawMoisture ?? NaN);
    const known = [...new Set(lots)].filter((lot) => results.get(lot) !== undefined);
    const unknown = [...new Set(lots)].filter((lot) => results.get(lot) === undefined);
    if (known.length > 0)
      said.push(
        `Raw moisture is the intake result of each lot: ${known.map((lot) => `${lot} ${(100 * results.get(lot)!).toFixed(1)} %`).join(', ')}.`,
      );
    if (unknown.length > 0 && options.rawMoisture === undefined)
      said.push(`No intake moisture is written for ${unknown.map((lot) => lot || 'lines without a lot').join(', ')}.`);
    return { ...log, rawMoisture: column };
  }
  if (options.rawMoisture === undefined) return log;
  said.push(`Raw moisture ${(100 * options.rawMoisture).toFixed(1)} % was entered for the whole log into the ${station.name}.`);
  return { ...log, rawMoisture: options.rawMoisture };
}

function stretchesOf(from: PlantChain, station: Station, table: RoastTable, judgement: KillStepJudgement): readonly RoastStretch[] {
  const { clock, rowNumbers, log } = table;
  const transit = from.line?.transit.find(({ slug }) => slug === station.slug)?.time;
  const rank = { 'not proven': 0, 'cannot tell': 1, proven: 2 } as const;
  const n = log.time.length;
  const linesOf = (start: number, end: number): readonly [number, number] => {
    let [first, last] = [-1, 0];
    for (let i = 0; i < n; i++) {
      const time = log.time[i]!;
      if (!(time >= start && (time < end || (i === n - 1 && time === end)))) continue;
      if (first < 0) first = i;
      last = i;
    }
    return [rowNumbers[Math.max(first, 0)]!, rowNumbers[last]!];
  };
  return judgement.stretches
    .map((stretch): RoastStretch & { readonly order: number } => {
      // Transit is counted from the cutter: negative before it. The widest window takes the quickest first and the slowest last.
      const [quick, slow] = transit ? [-(transit.high ?? transit.value), -(transit.low ?? transit.value)] : [0, 0];
      return {
        verdict: stretch.verdict,
        from: clock.words(stretch.from),
        to: clock.words(stretch.to),
        lines: linesOf(stretch.from, stretch.to),
        exitTo: clock.words(stretch.exitTo),
        at: { from: stretch.from, to: stretch.to, exitTo: stretch.exitTo },
        ...(transit ? { cut: [clock.words(stretch.from + quick), clock.words(stretch.exitTo + slow)] as const } : {}),
        reason: stretch.reason,
        order: rank[stretch.verdict],
      };
    })
    .sort((a, b) => a.order - b.order)
    .map(({ order: _, ...stretch }) => stretch);
}

/** How near each logged quantity came to its limit. */
function marginsOf(validation: KillStepValidation, log: RoastLog): RoastAnswer['margins'] {
  const shown = {
    airTemperature: [1, '°C', 'K'],
    airVelocity: [1, 'm/s', 'm/s'],
    bedDepth: [1000, 'mm', 'mm'],
    residence: [1 / 60, 'min', 'min'],
    rawMoisture: [100, '%', 'points'],
    productTemperature: [1, '°C', 'K'],
  } as const;
  return (Object.keys(shown) as (keyof typeof shown)[]).flatMap((quantity) => {
    const limit = validation.limits[quantity];
    const column = log[quantity];
    if (!limit || column === undefined) return [];
    const [factor, unit, difference] = shown[quantity];
    let margin = Infinity;
    let known = false;
    const values = typeof column === 'number' ? [column] : column;
    for (let i = 0; i < values.length; i++) {
      const value = values[i]!;
      if (!Number.isFinite(value)) continue;
      known = true;
      margin = Math.min(margin, value - (limit.min ?? -Infinity), (limit.max ?? Infinity) - value);
    }
    if (!known) return [];
    const ends = [
      limit.min === undefined ? '' : `≥ ${+(factor * limit.min).toFixed(3)}`,
      limit.max === undefined ? '' : `≤ ${+(factor * limit.max).toFixed(3)}`,
    ];
    return [
      {
        quantity: words[quantity],
        least: +(factor * margin).toPrecision(6),
        unit: difference,
        limit: `${ends.filter(Boolean).join(' and ')} ${unit}`,
      },
    ];
  });
}
