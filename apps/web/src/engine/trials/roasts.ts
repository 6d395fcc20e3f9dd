import { windowsOfRoast } from '@barwright/day';
import { traces, type Trace } from '@barwright/drawing';
import { judgeRoast, NotOnLine, roastTable, validationsOf, withRawMoisture, type RoastAnswer, type RoastTable } from '@barwright/line';
import type { Station } from '@barwright/plant';
import type { KillStepQuantity } from '@barwright/science';
import type { Engine } from '../engine.js';
import type { AskedFor, FigureTable, Plate, TrialSheet } from '../trial-protocol.js';
import { clockEnds, clockTicks, inOrder, withGaps } from './clock-ticks.js';
import { fileOf, filesOf, keyOf, type HeldFile } from './files.js';
import { followedParts, logsBeside } from './followed.js';
import { longestAbove, reductionAlong, roastStages, stagesTable, type RoastStages } from './roast-stages.js';
import { askedNumber, cautions, choiceField, n, saying, sentences } from './words.js';

/** A roast log against the validation of its station: proven, not proven or cannot tell, with reasons; heating rates and stages. */
export function roastsSheet(engine: Engine, asked: AskedFor, width: number): TrialSheet {
  const { from } = engine;
  const file = fileOf('roast', asked.file);
  if (!file)
    throw new NotOnLine('There is no roast log yet. Drop one here: time, zone air, air velocity, bed depth and residence, or nib bed');
  const roasters = (from.line?.stations ?? []).filter(
    ({ name }) => from.plant.validations.some(({ step }) => step === name) || /roast/i.test(name),
  );
  if (roasters.length === 0)
    throw new NotOnLine(`${from.line?.name ?? from.bar.name} has no roaster, so a roast log belongs to nothing here`);
  const read = tableOfFile(file);
  const station = roasters.find(({ slug }) => slug === asked.station) ?? likeliest(engine, roasters, read);
  const table = { ...read, log: { ...read.log, roaster: station.name } };
  const moisture = askedNumber(asked, 'moisture');
  const options = moisture === undefined ? {} : { rawMoisture: moisture / 100 };
  const answer = judgeRoast(from, station, table, options);
  const log = withRawMoisture(from, station, table, options, []);
  const stages = roastStages(table);
  const logs = logsBeside(file);
  const bars = followedParts(engine, windowsOfRoast(from, engine.session, answer, logs), logs, width);
  return {
    part: 'roasts',
    ...(answer.verdict === 'proven' ? {} : { mark: 'act' as const }),
    title: titleOf(answer),
    sub: sentences(
      answer.claim && `${answer.validation}: ${answer.claim}`,
      answer.verdict === 'proven' ? nearest(answer) : 'Hold that product and every bar made from it',
      bars.sub,
      stages && stages.heating !== undefined ? `Heated at ${n(stages.heating, 1)} K/min, at most ${n(stages.curve.fastest, 1)}` : undefined,
    ),
    fields: [
      ...choiceField('station', 'Roaster', station.slug, roasters.map(({ slug, name }) => ({ value: slug, text: name }))), // prettier-ignore
      ...choiceField('file', 'Log', keyOf(file), filesOf('roast').map((one) => ({ value: keyOf(one), text: keyOf(one) }))), // prettier-ignore
      ...(table.log.rawMoisture === undefined && !table.lots
        ? [
            {
              kind: 'number' as const,
              key: 'moisture',
              label: 'Raw moisture',
              unit: '%',
              value: asked.moisture ?? '',
              given: moisture !== undefined,
            },
          ]
        : []),
    ],
    knobs: [],
    plates: [plate(engine, station, { ...table, log }, answer, stages, width), ...bars.plates],
    tables: [...bars.tables, ...marginTable(answer), ...(stages ? [stagesTable(stages)] : []), ...stretchTable(answer)],
    said: [
      ...saying('Because', answer.reasons),
      ...bars.said,
      ...saying(
        'Published studies beside, as plausibility only',
        answer.beside.map(({ found, conditions, here }) => `${found}. ${conditions}. ${here}`),
      ),
      ...saying(
        'Heating rate',
        stages
          ? [...stages.said, ...holdWords(engine, station, table)]
          : ['The log has no temperature of bed, nib or kernel: heating rates and stages cannot be told.'],
      ),
      ...saying('How the table was read', [...answer.read, ...answer.said]),
      ...cautions(answer.cautions),
    ],
  };
}

function titleOf({ station, verdict, rows, validation }: RoastAnswer): string {
  const all = rows.proven + rows.notProven + rows.cannotTell;
  if (verdict === 'proven')
    return `The kill step of the ${station} is proven: all ${n(all, 0)} readings lie inside every limit of ${validation!}.`;
  if (verdict === 'not proven')
    return `The kill step of the ${station} is not proven: ${rows.notProven > 0 ? `${n(rows.notProven, 0)} of ${n(all, 0)} readings fail` : `nothing validates it`}${validation ? ` ${validation}` : ''}.`;
  return `Whether the kill step of the ${station} is proven cannot be told from this log.`;
}

function nearest({ margins }: RoastAnswer): string | undefined {
  const zero = margins.filter(({ least }) => least === 0);
  if (zero.length > 0) return `${zero.map(({ quantity }) => quantity).join(' and ')} stood on the limit itself at least once`;
  const [first] = margins;
  return first && `${first.quantity} was within by ${+first.least.toPrecision(3)} ${first.unit} at its nearest`;
}

/** How long the product stayed at its limit: a reading beside the verdict, never part of it. */
function holdWords(engine: Engine, station: Station, { log, clock }: RoastTable): readonly string[] {
  const { validation } = validationsOf(engine.from.plant, station)[0] ?? {};
  const least = validation?.limits.productTemperature?.min;
  const column = log.productTemperature;
  if (least === undefined || column === undefined || typeof column === 'number') return [];
  const seconds = longestAbove(clock.seconds, Float64Array.from(column), least);
  const asked = validation!.limits.residence?.min;
  return [
    `The product read ${n(least, 1)} °C or more for ${n(seconds / 60, 1)} min on end${asked === undefined ? '' : `; ${validation!.id} asks for ${n(asked / 60, 1)} min`}. What of a log belongs to the hold is for the HACCP team to say.`,
  ];
}

let kept: { readonly file: HeldFile; readonly table: RoastTable } | undefined;

/** A long log is read once; which roaster it belongs to does not change what it says. */
function tableOfFile(file: HeldFile): RoastTable {
  if (kept?.file !== file) kept = { file, table: roastTable(file.cells, file.name, '') };
  return kept.table;
}

/** The roaster whose validation is about what the log holds. */
function likeliest(engine: Engine, roasters: readonly Station[], { columns }: RoastTable): Station {
  const told = (station: Station) => {
    const has = new Set(columns.map(({ quantity }) => quantity));
    const limits = validationsOf(engine.from.plant, station).flatMap(
      ({ validation }) => Object.keys(validation.limits) as KillStepQuantity[],
    );
    return limits.filter((quantity) => has.has(quantity)).length - limits.filter((quantity) => !has.has(quantity)).length / 10;
  };
  return roasters.map((station) => ({ station, fits: told(station) })).sort((a, b) => b.fits - a.fits)[0]!.station;
}

const shown: readonly (readonly [KillStepQuantity, name: string, factor: number, unit: string])[] = [
  ['productTemperature', 'Product', 1, '°C'],
  ['airTemperature', 'Zone air', 1, '°C'],
  ['airVelocity', 'Air velocity', 1, 'm/s'],
  ['bedDepth', 'Bed depth', 1000, 'mm'],
  ['residence', 'Residence', 1 / 60, 'min'],
  ['rawMoisture', 'Raw moisture', 100, '%'],
];

function plate(
  engine: Engine,
  station: Station,
  { log, clock }: RoastTable,
  answer: RoastAnswer,
  stages: RoastStages | undefined,
  width: number,
): Plate {
  const carried =
    validationsOf(engine.from.plant, station).find(({ validation }) => validation.id === answer.validation) ??
    validationsOf(engine.from.plant, station)[0];
  const limits = carried?.validation.limits ?? {};
  const order = inOrder(clock.seconds);
  const product = log.productTemperature;
  const reduction = product === undefined || typeof product === 'number' ? undefined : reductionAlong(log.time, Float64Array.from(product));
  const rows = shown.flatMap(([quantity, name, factor, unit]): Trace[] => {
    const column = log[quantity];
    const limit = limits[quantity];
    if (column === undefined && !limit) return [];
    const values =
      column === undefined
        ? undefined
        : typeof column === 'number'
          ? new Float64Array(clock.seconds.length).fill(column)
          : Float64Array.from(column);
    const tidy = (value: number | undefined) => (value === undefined ? undefined : +(factor * value).toPrecision(12));
    const [lo, hi] = [tidy(limit?.min), tidy(limit?.max)];
    const isProduct = quantity === 'productTemperature';
    const along = isProduct && stages ? reduction : undefined;
    return [
      {
        id: quantity,
        name,
        unit,
        points: values ? withGaps(order.map((i) => [clock.seconds[i]!, factor * values[i]!] as const)) : [],
        ...(lo === undefined ? {} : { lo, loText: `≥ ${lo}` }),
        ...(hi === undefined ? {} : { hi, hiText: `≤ ${hi}` }),
        ...(isProduct ? { height: 190 } : {}),
        ...(isProduct && stages ? { brackets: stages.brackets } : {}),
        ...(along ? { beside: along.points } : {}),
      },
    ];
  });
  const drawn = traces({
    width,
    x: clockEnds(clock.seconds),
    ticks: clockTicks(clock, width),
    rows: rows.length > 0 ? rows : [{ id: 'none', name: station.name, points: [] }],
  });
  return {
    name: `The log against the validated limits of ${answer.validation ?? 'the station'}: ${rows.map(({ name }) => name.toLowerCase()).join(', ')}`,
    marks: drawn.marks,
    width: drawn.width,
    height: drawn.height,
    caption: carried
      ? `Pale bands: the limits of ${carried.validation.id}, all of which must hold together. A wedge lies outside; a strip without readings proves nothing.${reduction && stages ? ` Dashed: log reduction gathered by published D values of Salmonella on cocoa beans, to ${reduction.words}; plausibility, no proof.` : ''}`
      : 'No validation is written for this station: there is no band to draw, and nothing is proven.',
  };
}

function marginTable({ margins }: RoastAnswer): readonly FigureTable[] {
  if (margins.length === 0) return [];
  return [
    {
      caption: 'How near each limit came',
      head: ['limit', 'least margin'],
      rows: margins.map(({ quantity, least, unit, limit }) => ({
        name: quantity,
        cells: [
          { text: limit },
          { text: `${least < 0 ? 'beyond by' : 'within by'} ${+Math.abs(least).toPrecision(3)} ${unit}`, act: least < 0 },
        ],
      })),
    },
  ];
}

function stretchTable({ stretches }: RoastAnswer): readonly FigureTable[] {
  const bad = stretches.filter(({ verdict }) => verdict !== 'proven').slice(0, 20);
  if (bad.length === 0) return [];
  return [
    {
      caption: 'Which product is meant',
      head: ['lines', 'product inside left by', 'at the cutter', 'reason'],
      words: [3],
      rows: bad.map(({ verdict, from, to, lines, exitTo, cut, reason }) => ({
        name: `${verdict}: ${from} to ${to}`,
        cells: [
          { text: `${lines[0]}–${lines[1]}` },
          { text: exitTo },
          { text: cut ? `${cut[0]} to ${cut[1]}` : '–' },
          { text: reason, act: verdict === 'not proven' },
        ],
      })),
    },
  ];
}
