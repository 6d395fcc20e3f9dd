import type * as z from 'zod';
import type { Path, Tree } from '../read/tree.js';
import type { componentsFile } from '../schema/files.js';
import type { AmountReading } from '../schema/parts.js';
import type { Addition, BatchSize, Component, CookEnd, Cooker, Entered, Stage } from '../types.js';
import { present, type Book, type Page } from './book.js';
import { readComposition } from './composition.js';

type ComponentsFile = z.output<typeof componentsFile>;
type WrittenComponent = ComponentsFile['components'][string];
type WrittenStage = WrittenComponent['stages'][number];

/** Everything the plant makes, by name. */
export function readComponents(book: Book, page: Page<ComponentsFile>): Map<string, Component> {
  const { tree, value } = page;
  const made = new Map<string, Component>();
  for (const [name, written] of Object.entries(value.components)) {
    const path = ['components', name];
    const at = (key: string): Path => [...path, key];
    const { composition, batch, 'measured viscosity': measured } = written;
    const vector = composition && readComposition(book, tree, at('composition'), composition);
    made.set(name, {
      name,
      slug: book.slug(tree, path, name),
      label: written.label ?? name,
      texture: written.texture,
      stages: readStages(book, tree, at('stages'), written.stages),
      targets: book.named(tree, at('targets'), written.targets),
      place: tree.place(path),
      ...present({
        batch: batch && batchOf(book, tree, at('batch'), batch),
        conversionCost: written['conversion cost'] && book.entered(tree, at('conversion cost'), written['conversion cost']),
        density: written.density && book.entered(tree, at('density'), written.density),
        waterActivity: written['water activity'] && book.entered(tree, at('water activity'), written['water activity']),
        activityOffset: written['activity offset'] && book.entered(tree, at('activity offset'), written['activity offset']),
        measuredViscosity: measured && {
          viscosity: book.entered(tree, [...at('measured viscosity'), 'viscosity'], measured.viscosity),
          temperature: book.entered(tree, [...at('measured viscosity'), 'temperature'], measured.temperature),
          moisture: book.entered(tree, [...at('measured viscosity'), 'moisture'], measured.moisture),
        },
        composition: vector && {
          value: vector,
          place: tree.place(at('composition')),
          ...present({ source: composition.source, standing: composition.standing }),
        },
        legalName: written['legal name'],
        lead: written.lead && book.entered(tree, at('lead'), written.lead),
        maxAge: written['max age'] && book.entered(tree, at('max age'), written['max age']),
        reworkCap: written['rework cap'] && book.entered(tree, at('rework cap'), written['rework cap']),
      }),
    });
  }
  return made;
}

function batchOf(book: Book, tree: Tree, path: Path, batch: NonNullable<WrittenComponent['batch']>): BatchSize | undefined {
  const { finished, charge, vessel } = batch;
  if ([finished, charge, vessel].filter((one) => one !== undefined).length !== 1) {
    book.complain(tree, path, {
      code: 'NOT_ONE_OF',
      message: 'A batch is limited by one thing',
      expected: 'one of: finished, charge, vessel',
    });
    return undefined;
  }
  if (finished) return { by: 'finished', mass: book.entered(tree, [...path, 'finished'], finished) };
  if (charge) return { by: 'charge', mass: book.entered(tree, [...path, 'charge'], charge) };
  return { by: 'vessel', volume: book.entered(tree, [...path, 'vessel'], vessel!) };
}

function readStages(book: Book, tree: Tree, path: Path, written: readonly WrittenStage[]): Stage[] {
  const shares = readShares(book, tree, path, written);
  const cut = tree.cutWithin(path);
  let unknown = 0;
  const stages = written.map((stage, index): Stage => {
    const here = [...path, index];
    const at = (key: string): Path => [...here, key];
    const taken = stage.takes ?? (index > 0 ? [written[index - 1]!.stage] : []);
    if (!cut && !checkTaken(book, tree, at('takes'), taken, written.slice(0, index))) unknown++;
    return {
      name: stage.stage,
      slug: book.slug(tree, at('stage'), stage.stage),
      does: stage.does,
      takes: taken,
      adds: shares[index]!,
      losses: book.named(tree, at('losses'), stage.losses).map(({ name, value }) => ({ name, share: value })),
      place: tree.place(here),
      ...present({
        temperature: stage.temperature && book.entered(tree, at('temperature'), stage.temperature),
        time: stage.time && book.entered(tree, at('time'), stage.time),
        cook: cookOf(book, tree, here, stage),
        holdUp: holdUpOf(book, tree, here, stage),
        airLoss: airLossOf(book, tree, here, stage, index, written),
        toMoisture: stage['to moisture'] && book.entered(tree, at('to moisture'), stage['to moisture']),
        pressure:
          stage.does !== 'cook' && stage.pressure && stage.pressure !== 'atmosphere'
            ? book.entered(tree, at('pressure'), stage.pressure)
            : undefined,
      }),
    };
  });
  book.refuseTwins(
    tree,
    stages.map(({ name, slug }, index) => ({ name, slug, path: [...path, index, 'stage'] })),
  );
  if (!cut && unknown === 0) checkFlow(book, tree, path, stages);
  return stages;
}

/** True where every stage taken is one that stands above. */
function checkTaken(book: Book, tree: Tree, path: Path, taken: readonly string[], earlier: readonly WrittenStage[]): boolean {
  const names = new Set(earlier.map(({ stage }) => stage));
  const expected = names.size > 0 ? `an earlier stage: ${[...names].join(', ')}` : 'no stage: this is the first';
  const unknown = taken.filter((name) => !book.known(tree, path, name, names, { code: 'UNKNOWN_STAGE', what: 'Stage', expected }));
  return unknown.length === 0;
}

/** Each stage's contents go into exactly one later stage, save the last, whose contents are the component. */
function checkFlow(book: Book, tree: Tree, path: Path, stages: readonly Stage[]): void {
  const into = new Map<string, number>();
  for (const { takes } of stages) for (const name of takes) into.set(name, (into.get(name) ?? 0) + 1);
  stages.slice(0, -1).forEach(({ name }, index) => {
    const times = into.get(name) ?? 0;
    if (times === 1) return;
    const message = times === 0 ? `What is in '${name}' goes nowhere` : `'${name}' is taken ${times} times`;
    book.complain(tree, [...path, index], {
      code: 'STAGE_NOT_TAKEN',
      message,
      expected: 'each stage taken by exactly one later stage',
      advice: `Add '${name}' to the 'takes' of one`,
    });
  });
}

const endKeys = ['finished moisture', 'moisture', 'end temperature'] as const;

function cookOf(book: Book, tree: Tree, here: Path, stage: WrittenStage): Stage['cook'] {
  const ends = endKeys.filter((key) => stage[key] !== undefined);
  const rest = ['probe offset', 'model offset', 'refractometer offset', 'hold', 'cooker'] as const;
  if (stage.does !== 'cook') {
    for (const key of [...ends, ...rest.filter((name) => stage[name])]) {
      book.complain(tree, [...here, key], {
        code: 'UNKNOWN_KEY',
        message: `'${key}' belongs to a cook; this stage does '${stage.does}'`,
        advice: "Write 'does: cook', or leave it out",
      });
    }
    return undefined;
  }
  if (ends.length !== 1) {
    book.complain(tree, here, {
      code: 'NOT_ONE_OF',
      message: `A cook ends at one thing; here ${ends.length === 0 ? 'none is written' : `stand ${ends.join(' and ')}`}`,
      expected: `one of: ${endKeys.join(', ')}`,
    });
    return undefined;
  }
  const pressure = stage.pressure ?? 'atmosphere';
  return {
    end: endOf(book, tree, here, stage, ends[0]!),
    pressure:
      pressure === 'atmosphere' ? { by: 'atmosphere' } : { by: 'absolute', pressure: book.entered(tree, [...here, 'pressure'], pressure) },
    ...present({
      probeOffset: stage['probe offset'] && book.entered(tree, [...here, 'probe offset'], stage['probe offset']),
      modelOffset: stage['model offset'] && book.entered(tree, [...here, 'model offset'], stage['model offset']),
      refractometerOffset:
        stage['refractometer offset'] && book.entered(tree, [...here, 'refractometer offset'], stage['refractometer offset']),
      hold: stage.hold && book.entered(tree, [...here, 'hold'], stage.hold),
      cooker: stage.cooker && cookerOf(book, tree, [...here, 'cooker'], stage.cooker),
    }),
  };
}

function cookerOf(book: Book, tree: Tree, path: Path, written: NonNullable<WrittenStage['cooker']>): Cooker {
  const read = (key: Exclude<keyof typeof written, 'kind'>) => {
    const value = written[key];
    return value && book.entered(tree, [...path, key], value);
  };
  if (written.kind === 'kettle' && written.holds)
    book.complain(tree, [...path, 'holds'], {
      code: 'UNKNOWN_KEY',
      message: "'holds' is the mass in a film while it runs; this is a kettle",
      advice: "Write the size of a kettle under 'batch' of the component, or leave it out",
    });
  return {
    kind: written.kind,
    ...present({
      surface: read('heating surface'),
      heatTransfer: read('heat transfer'),
      steam: read('steam'),
      heatLoss: read('heat loss'),
      boilerEfficiency: read('boiler efficiency'),
      temperatureSpread: read('temperature spread'),
      levelSpread: read('level spread'),
      holds: read('holds'),
    }),
  };
}

/** The plant's own hold-up of a whip. */
function holdUpOf(book: Book, tree: Tree, here: Path, stage: WrittenStage): Stage['holdUp'] {
  const holdUp = stage['hold-up'];
  if (!holdUp) return undefined;
  if (stage.does !== 'whip')
    book.complain(tree, [...here, 'hold-up'], {
      code: 'UNKNOWN_KEY',
      message: `'hold-up' belongs to a whip; this stage does '${stage.does}'`,
      advice: "Write 'does: whip', or leave it out",
    });
  return book.entered(tree, [...here, 'hold-up'], holdUp);
}

/** Gas can be lost from the whip on. */
function airLossOf(
  book: Book,
  tree: Tree,
  here: Path,
  stage: WrittenStage,
  index: number,
  written: readonly WrittenStage[],
): Stage['airLoss'] {
  const loss = stage['air loss'];
  if (!loss) return undefined;
  if (!written.slice(0, index + 1).some(({ does }) => does === 'whip'))
    book.complain(tree, [...here, 'air loss'], {
      code: 'UNKNOWN_KEY',
      message: `Nothing is whipped before '${stage.stage}': there is no air to lose`,
      advice: "Write 'air loss' at the whip or behind it, or leave it out",
    });
  return book.entered(tree, [...here, 'air loss'], loss);
}

function endOf(book: Book, tree: Tree, here: Path, stage: WrittenStage, key: (typeof endKeys)[number]): CookEnd {
  const value = book.entered(tree, [...here, key], stage[key]!);
  if (key === 'end temperature') return { by: 'temperature', temperature: value };
  return { by: key, moisture: value };
}

/** Additions of every stage as shares of the whole charge: per cent must sum to 100, masses are divided by their sum. */
function readShares(book: Book, tree: Tree, path: Path, written: readonly WrittenStage[]): Addition[][] {
  const all = written.flatMap((stage, index) =>
    Object.entries(stage.add ?? {}).map(([name, reading]) => ({ index, name, reading, at: [...path, index, 'add', name] })),
  );
  const masses = all.filter(({ reading }) => reading.amount.measure.dimension === 'mass');
  const component = path.at(-2);
  const sum = all.reduce((total, { reading }) => total + reading.amount.measure.value, 0);
  if (all.length === 0)
    book.complain(tree, path, {
      code: 'NOTHING_ADDED',
      message: `Nothing goes into '${component}'`,
      expected: "'add' with at least one ingredient",
    });
  else if (masses.length > 0 && masses.length < all.length) {
    const odd = all.find(({ reading }) => reading.amount.measure.dimension !== masses[0]!.reading.amount.measure.dimension) ?? all[0]!;
    book.complain(tree, odd.at, {
      code: 'RECIPE_MIXED',
      message: `'${component}' is written partly in per cent, partly in masses`,
      expected: 'one of the two throughout',
    });
  } else if (masses.length === 0 && Math.abs(sum - 1) > 0.0005 + 1e-9) {
    book.complain(tree, path.slice(0, -1), {
      code: 'RECIPE_SUM',
      message: `The recipe of '${component}' sums to ${tidy(sum * 100)} %`,
      expected: '100 % ± 0.05 %',
      advice: difference(sum),
    });
  } else if (!(sum > 0))
    book.complain(tree, path, { code: 'NOTHING_ADDED', message: `The recipe of '${component}' sums to 0`, expected: 'amounts above 0' });
  const made: Addition[][] = written.map(() => []);
  for (const { index, name, reading, at } of all) made[index]!.push(addition(book, tree, at, name, reading, sum));
  return made;
}

function addition(book: Book, tree: Tree, at: Path, name: string, { amount, solids }: AmountReading, sum: number): Addition {
  const entered = book.entered(tree, at, amount);
  const scale = Math.abs(sum - 1) > 1e-12 && sum > 0 ? sum : 1;
  const { low, high } = entered;
  // The value is a share however it was written, so that a screen can show it in per cent.
  const share: Entered = {
    ...entered,
    dimension: 'fraction',
    unit: '%',
    value: entered.value / scale,
    ...(low === undefined ? {} : { low: low / scale }),
    ...(high === undefined ? {} : { high: high / scale }),
  };
  return { name, share, ...(solids ? { solids: book.entered(tree, [...at, 'solids'], solids) } : {}) };
}

function tidy(value: number): string {
  return String(Number(value.toFixed(3)));
}

function difference(sum: number): string {
  const missing = 100 - sum * 100;
  return missing > 0 ? `${tidy(missing)} % is missing` : `${tidy(-missing)} % is too much`;
}
