import * as z from 'zod';
import { oneOf, quantity, standings } from './leaf.js';
import {
  anything,
  clock,
  composition,
  cookPressure,
  date,
  density,
  duration,
  format,
  ingredient,
  layerMass,
  length,
  loss,
  lossShare,
  mass,
  moisture,
  money,
  named,
  share,
  temperature,
  text,
  texts,
  time,
  variation,
} from './parts.js';

/** Rule sets that name, label and weight may follow. */
export const markets = ['EU', 'UK', 'US'] as const;

export const plantFile = z.strictObject({
  format,
  plant: z.strictObject({
    name: text('name of the plant'),
    altitude: quantity('length', { signed: true, possible: [-430, 5000] }),
    barometer: quantity('pressure', { possible: [40_000, 110_000] }).optional(),
    currency: text('ISO 4217 code, such as EUR'),
    'time zone': text('IANA name, such as Europe/London'),
    market: oneOf(markets, 'rule set for names, label and weight'),
  }),
  shifts: z.array(z.strictObject({ name: text('name of the shift'), from: clock, to: clock })).optional(),
  'start-up': duration.optional(),
  'shut-down and clean': duration.optional(),
  scales: z.array(z.strictObject({ 'up to': mass, division: mass })).optional(),
  validations: z
    .array(
      z.strictObject({
        id: text('number of the document'),
        step: text('station or step'),
        claim: text('what it proves'),
        kind: text('kind of study'),
        'holds for': named(anything),
      }),
    )
    .optional(),
  changeover: texts('one rule').optional(),
});

/** Packages that a price may be quoted for. */
export const packageWords = [
  'drum',
  'bag',
  'sack',
  'big bag',
  'box',
  'carton',
  'pail',
  'bucket',
  'can',
  'tote',
  'tanker',
  'pallet',
  'block',
  'bottle',
] as const;
const packages = Object.fromEntries(packageWords.map((word) => [word, mass.optional()])) as {
  [K in (typeof packageWords)[number]]: z.ZodOptional<typeof mass>;
};

export const materialsFile = z.strictObject({
  format,
  materials: named(
    z.strictObject({
      label: text('name on the label').optional(),
      price: quantity('money per mass').optional(),
      ...packages,
      composition: composition.optional(),
      syrup: z
        .strictObject({
          solids: share,
          DE: quantity('plain', { possible: [1, 100] }),
          conversion: oneOf(['acid', 'acid enzyme', 'high maltose'], 'how the starch was broken down').optional(),
          source: text('where the figures come from').optional(),
          standing: oneOf(standings, 'how far they may be trusted').optional(),
          note: text('what was changed').optional(),
        })
        .optional(),
      density: density.optional(),
      allergens: texts('an allergen').optional(),
      crystalline: z.boolean().optional(),
      quoted: z.boolean().optional(),
      category: text("class of additive, such as 'emulsifier'").optional(),
      texture: text('how it is drawn').optional(),
    }),
  ),
});

/** What a cooker is; what is left out is not computed from. */
const cooker = z.strictObject({
  kind: oneOf(['kettle', 'film'], 'a batch kettle or a continuous film'),
  'heating surface': quantity('area', { positive: true }).optional(),
  'heat transfer': quantity('heat transfer', { positive: true }).optional(),
  steam: quantity('pressure', { positive: true }).optional(),
  'heat loss': quantity('power').optional(),
  'boiler efficiency': quantity('fraction', { positive: true, possible: [0, 1] }).optional(),
  'temperature spread': quantity('temperature difference', { possible: [0, 20] }).optional(),
  'level spread': share.optional(),
  holds: mass.optional(),
});

const stage = z.strictObject({
  stage: text('name of the stage'),
  does: oneOf(['mix', 'cook', 'whip', 'blend', 'cool', 'roast', 'sort', 'refine', 'hydrate', 'temper'], 'what happens'),
  takes: texts('an earlier stage').optional(),
  add: named(ingredient).optional(),
  temperature: temperature.optional(),
  time: time.optional(),
  'finished moisture': moisture.optional(),
  moisture: moisture.optional(),
  'end temperature': temperature.optional(),
  pressure: cookPressure.optional(),
  'probe offset': quantity('temperature difference').optional(),
  'model offset': quantity('temperature difference').optional(),
  'refractometer offset': quantity('fraction', { signed: true, possible: [-0.2, 0.2] }).optional(),
  hold: time.optional(),
  cooker: cooker.optional(),
  'hold-up': quantity('fraction', { positive: true, possible: [0, 0.95] }).optional(),
  'air loss': lossShare.optional(),
  'to moisture': moisture.optional(),
  losses: named(lossShare).optional(),
});

export const componentsFile = z.strictObject({
  format,
  components: named(
    z.strictObject({
      label: text('name for people').optional(),
      'legal name': text('name in law').optional(),
      texture: text('how it is drawn'),
      batch: z
        .strictObject({ finished: mass.optional(), charge: mass.optional(), vessel: quantity('volume', { positive: true }).optional() })
        .optional(),
      lead: duration.optional(),
      'max age': duration.optional(),
      density: density.optional(),
      'water activity': quantity('plain', { possible: [0, 1] }).optional(),
      'activity offset': quantity('plain', { signed: true, possible: [-0.2, 0.2] }).optional(),
      'measured viscosity': z.strictObject({ viscosity: quantity('viscosity', { positive: true }), temperature, moisture }).optional(),
      'conversion cost': quantity('money per mass').optional(),
      'rework cap': share.optional(),
      composition: composition.optional(),
      stages: z.array(stage).min(1),
      targets: named(anything).optional(),
    }),
  ),
});

const amount = {
  mass: layerMass.optional(),
  thickness: length.optional(),
  'mass per area': quantity('mass per area', { positive: true }).optional(),
};

const three = z.tuple([length, length, length]);

export const barFile = z.strictObject({
  format,
  bar: z.strictObject({
    name: text('name of the bar'),
    format: text('what it is: 48 g single bar'),
    nominal: mass,
    target: mass,
    maximum: mass.optional(),
    'cut length': length,
    'cut width': length,
    varies: z.strictObject({ 'cut length': variation.optional(), 'cut width': variation.optional() }).optional(),
    size: three.optional(),
    'water activity step': quantity('plain', { possible: [0, 1] }).optional(),
    'best before': duration.optional(),
    line: text('name of the line that makes it').optional(),
    layers: z
      .array(
        z.strictObject({
          layer: text('name of the layer'),
          of: text('a component'),
          ...amount,
          varies: variation.optional(),
          loss: loss.optional(),
          'sunk into': text('another layer').optional(),
          voids: quantity('fraction', { possible: [0, 1], below: true }).optional(),
        }),
      )
      .min(1),
    coat: z
      .strictObject({
        of: text('a component'),
        ...amount,
        covers: oneOf(['all round', 'without underside'], 'which faces it covers'),
        varies: variation.optional(),
        loss: loss.optional(),
        minimum: z.strictObject({ top: length.optional(), side: length.optional(), bottom: length.optional() }).optional(),
      })
      .optional(),
    pack: z.strictObject({
      'bars per pack': quantity('count', { whole: true, positive: true }),
      film: z
        .strictObject({
          name: text('structure of the film'),
          web: length,
          'cut-off': length,
          weight: quantity('mass per area', { positive: true }),
          price: quantity('money per mass').optional(),
          loss: loss.optional(),
          reel: length.optional(),
          'water vapour transmission': quantity('vapour transmission').optional(),
          'seal window': temperature.optional(),
        })
        .optional(),
      code: text('pattern of the printed code').optional(),
      case: z
        .strictObject({
          packs: quantity('count', { whole: true, positive: true }),
          tare: quantity('mass').optional(),
          price: money.optional(),
          'glue and tape': money.optional(),
          size: three.optional(),
        })
        .optional(),
      pallet: z
        .strictObject({
          'cases per layer': quantity('count', { whole: true, positive: true }),
          layers: quantity('count', { whole: true, positive: true }),
          tare: quantity('mass').optional(),
        })
        .optional(),
    }),
  }),
});

const station = z.strictObject({
  station: text('name of the station'),
  works: text("a component, a material, or 'bar'").optional(),
  stage: text('the stage of that component it does').optional(),
  rate: quantity('any', { positive: true }).optional(),
  load: mass.optional(),
  cycle: duration.optional(),
  counts: oneOf(['in', 'out'], 'whether the rate counts what goes in or what comes out').optional(),
  count: quantity('count', { whole: true, positive: true }).optional(),
  'used elsewhere': quantity('any').optional(),
  holds: mass.optional(),
  length: length.optional(),
  width: length.optional(),
  'time between stops': duration.optional(),
  'time to repair': duration.optional(),
  'set points': named(quantity('any', { keys: ['reaction'] })).optional(),
  cautions: texts('one caution').optional(),
});

export const lineFile = z.strictObject({
  format,
  line: z.strictObject({
    name: text('name of the line'),
    lanes: quantity('count', { whole: true, positive: true }),
    'edge trim': quantity('length'),
    'slab speed': quantity('speed', { positive: true }),
    gap: quantity('length'),
    stations: z.array(station).min(1),
    accumulation: quantity('count').optional(),
    scrap: lossShare.optional(),
    'trim goes to': text('a component').optional(),
    transit: named(quantity('time', { signed: true })).optional(),
  }),
});

export const planFile = z.strictObject({
  format,
  plans: z.array(
    z.strictObject({
      bar: text('name of a bar'),
      line: text('name of a line'),
      date: date.optional(),
      start: clock.optional(),
      order: quantity('count', { whole: true, positive: true }),
      'planned OEE': share.optional(),
      lots: z
        .array(
          z.strictObject({
            material: text('a material'),
            lot: text('number of the lot'),
            note: text('a note').optional(),
            results: named(anything).optional(),
          }),
        )
        .optional(),
    }),
  ),
});

export const checksFile = z.strictObject({
  format,
  checks: z.array(
    z.strictObject({
      at: text('where'),
      what: text('what is checked'),
      quantity: text('id of the quantity it checks').optional(),
      limit: anything.optional(),
      words: text('a limit that is no number').optional(),
      every: text('how often'),
      by: text('by which means').optional(),
      reaction: text('what to do when it is outside').optional(),
      hold: text('what is held').optional(),
      kind: oneOf(['critical', 'law', 'house'], 'critical control point, law, or house rule'),
      'write in': oneOf(['number', 'pass', 'words'], 'what is written in').optional(),
    }),
  ),
});

/** Which schema a file has, by its name. */
export const fileKinds = {
  plant: plantFile,
  materials: materialsFile,
  components: componentsFile,
  bar: barFile,
  line: lineFile,
  plan: planFile,
  checks: checksFile,
} as const;
export type FileKind = keyof typeof fileKinds;

/** Kind of a definition file, or undefined where it is none. Paths have forward slashes. */
export function kindOf(file: string): FileKind | undefined {
  if (/^bars\/[^/]+\.ya?ml$/i.test(file)) return 'bar';
  if (/^lines\/[^/]+\.ya?ml$/i.test(file)) return 'line';
  const name = /^(plant|materials|components|plan|checks)\.ya?ml$/.exec(file)?.[1];
  return name as FileKind | undefined;
}

/** JSON Schema of each kind of file, for editors that complete and check while one types. */
export function jsonSchemas(): Readonly<Record<FileKind, object>> {
  const made = Object.entries(fileKinds).map(([kind, schema]) => [kind, z.toJSONSchema(schema, { io: 'input', target: 'draft-07' })]);
  return Object.fromEntries(made) as Record<FileKind, object>;
}
