import type { Path, Tree } from '../read/tree.js';
import type { Bar, Component, Layer, LayerAmount, Line, Material, Plan } from '../types.js';
import type { Book } from './book.js';

/** What has been read, with the tree of each, so that names can be checked across files. */
export interface Everything {
  readonly materials: ReadonlyMap<string, Material>;
  readonly components: ReadonlyMap<string, Component>;
  readonly bars: readonly { readonly bar: Bar; readonly tree: Tree }[];
  readonly lines: readonly { readonly line: Line; readonly tree: Tree }[];
  readonly plans: readonly Plan[];
  readonly materialsTree: Tree | undefined;
  readonly componentsTree: Tree | undefined;
  readonly planTree: Tree | undefined;
  /** Every name that stands in the files, also of what was faulty: one fault does not make others. */
  readonly declared: {
    readonly materials: ReadonlySet<string>;
    readonly components: ReadonlySet<string>;
    readonly bars: ReadonlySet<string>;
    readonly lines: ReadonlySet<string>;
  };
}

/** Names, cycles, twins and sizes that only show when everything is read. */
export function checkTogether(book: Book, all: Everything): void {
  checkTwins(book, all);
  if (all.componentsTree) checkRecipes(book, all, all.componentsTree);
  for (const { bar, tree } of all.bars) checkBar(book, all, bar, tree);
  for (const { line, tree } of all.lines) checkLine(book, all, line, tree);
  if (all.planTree) checkPlans(book, all, all.planTree);
  noteUse(book, all);
}

function checkTwins(book: Book, { materials, components, bars, lines, materialsTree, componentsTree }: Everything): void {
  const substances = [
    ...[...materials.values()].map(({ name, slug }) => ({ name, slug, path: ['materials', name], tree: materialsTree! })),
    ...[...components.values()].map(({ name, slug }) => ({ name, slug, path: ['components', name], tree: componentsTree! })),
  ];
  const first = materialsTree ?? componentsTree;
  if (first) book.refuseTwins(first, substances);
  if (bars[0])
    book.refuseTwins(
      bars[0].tree,
      bars.map(({ bar, tree }) => ({ name: bar.name, slug: bar.slug, path: ['bar', 'name'], tree })),
    );
  if (lines[0])
    book.refuseTwins(
      lines[0].tree,
      lines.map(({ line, tree }) => ({ name: line.name, slug: line.slug, path: ['line', 'name'], tree })),
    );
}

function checkRecipes(book: Book, { components, declared }: Everything, tree: Tree): void {
  const substances = new Set([...declared.materials, ...declared.components]);
  for (const component of components.values()) {
    component.stages.forEach((stage, index) => {
      for (const { name } of stage.adds) {
        book.known(tree, ['components', component.name, 'stages', index, 'add', name], name, substances, {
          code: 'UNKNOWN_MATERIAL',
          what: 'Material',
          expected: 'a material of materials.yaml or another component',
        });
      }
    });
  }
  checkCycles(book, components, tree);
}

/** Depth first, each component once; a way back to a component that is still open is a cycle. */
function checkCycles(book: Book, components: ReadonlyMap<string, Component>, tree: Tree): void {
  const done = new Set<string>();
  for (const start of components.keys()) {
    const trail: { name: string; parts: Iterator<string> }[] = [];
    const enter = (name: string): void => void trail.push({ name, parts: parts(components.get(name)!).values() });
    if (!done.has(start)) enter(start);
    while (trail.length > 0) {
      const top = trail.at(-1)!;
      const next = top.parts.next();
      if (next.done) {
        done.add(top.name);
        trail.pop();
        continue;
      }
      const from = trail.findIndex(({ name }) => name === next.value);
      if (from >= 0) {
        const ring = [...trail.slice(from).map(({ name }) => name), next.value];
        book.complain(tree, ['components', next.value], {
          code: 'COMPONENT_CYCLE',
          message: `'${next.value}' contains itself: ${ring.slice(0, 8).join(' → ')}`,
          advice: 'Take it out of one of these recipes',
        });
      } else if (components.has(next.value) && !done.has(next.value)) enter(next.value);
    }
  }
}

function parts(component: Component): string[] {
  return component.stages.flatMap(({ adds }) => adds.map(({ name }) => name));
}

function checkBar(book: Book, all: Everything, bar: Bar, tree: Tree): void {
  const { components, declared } = all;
  bar.layers.forEach(({ component }, index) => needComponent(book, tree, ['bar', 'layers', index, 'of'], component, declared));
  if (bar.coat) needComponent(book, tree, ['bar', 'coat', 'of'], bar.coat.component, declared);
  if (bar.line !== undefined) book.known(tree, ['bar', 'line'], bar.line, declared.lines, { code: 'UNKNOWN_LINE', what: 'Line' });
  const area = bar.cutLength.value * bar.cutWidth.value;
  const densityOf = (name: string): number | undefined => components.get(name)?.density?.value;
  checkHeight(book, tree, bar, area, densityOf);
  checkMass(book, tree, bar, area, densityOf);
}

type DensityOf = (component: string) => number | undefined;

function checkHeight(book: Book, tree: Tree, bar: Bar, area: number, densityOf: DensityOf): void {
  const height = bar.size?.[2].value;
  if (height === undefined) return;
  const thickness = ({ amount, component, sunkInto }: Layer): number => {
    if (sunkInto !== undefined) return 0;
    if (amount.by === 'thickness') return amount.thickness.value;
    const density = densityOf(component);
    const mass = massOf(amount, area, density);
    return mass === undefined || density === undefined ? 0 : mass / density / area;
  };
  const sum = bar.layers.reduce((total, layer) => total + thickness(layer), 0);
  if (sum <= height * (1 + 1e-9)) return;
  book.complain(tree, ['bar', 'layers'], {
    code: 'LAYERS_TOO_THICK',
    message: `The layers are ${(sum * 1000).toFixed(2)} mm thick, the finished bar ${(height * 1000).toFixed(2)} mm`,
    expected: 'layers no thicker than the third figure of size',
    advice: 'Check thicknesses, masses, densities and the size',
  });
}

/** Masses are written to a tenth of a gram or a hundredth of an ounce: what lies within is no fault. */
const rounding = 0.0005;

function checkMass(book: Book, tree: Tree, bar: Bar, area: number, densityOf: DensityOf): void {
  const amounts = [...bar.layers, ...(bar.coat ? [bar.coat] : [])];
  const isCoat = (of: { amount: LayerAmount }): boolean => of === bar.coat;
  // A coat's area is that of the faces it covers; only its mass, where written as such, is compared.
  const masses = amounts.map((one) =>
    isCoat(one) && one.amount.by !== 'mass' ? undefined : massOf(one.amount, area, densityOf(one.component)),
  );
  const sum = masses.reduce<number>((total, mass) => total + (mass ?? 0), 0);
  const target = bar.target.value;
  const hasRest = amounts.some(({ amount }) => amount.by === 'rest');
  const grams = (mass: number): string => `${Number((mass * 1000).toFixed(3))} g`;
  if (sum > target * (1 + rounding) || (hasRest && sum >= target)) {
    book.complain(tree, ['bar', 'target'], {
      code: 'LAYERS_TOO_HEAVY',
      message: `The layers weigh ${grams(sum)}, the target is ${grams(target)}`,
      expected: hasRest ? "layers below the target, so that something is left for 'rest'" : 'layers up to the target',
    });
  } else if (!hasRest && masses.every((mass) => mass !== undefined) && sum < target * (1 - 2 * rounding)) {
    book.note(tree, ['bar', 'target'], { code: 'MASS_DIFFERS', message: `The layers weigh ${grams(sum)}, the target is ${grams(target)}` });
  }
}

function massOf(amount: LayerAmount, area: number, density: number | undefined): number | undefined {
  if (amount.by === 'mass') return amount.mass.value;
  if (amount.by === 'mass per area') return amount.massPerArea.value * area;
  if (amount.by === 'thickness' && density !== undefined) return amount.thickness.value * area * density;
  return undefined;
}

function needComponent(book: Book, tree: Tree, path: Path, name: string, declared: Everything['declared']): void {
  const isMaterial = declared.materials.has(name) && !declared.components.has(name);
  if (isMaterial) {
    book.complain(tree, path, {
      code: 'UNKNOWN_COMPONENT',
      message: `'${name}' is a material, not a component`,
      expected: 'a component of components.yaml',
      advice: `Make a component of it with one stage that adds 100 % ${name}`,
    });
  } else
    book.known(tree, path, name, declared.components, {
      code: 'UNKNOWN_COMPONENT',
      what: 'Component',
      expected: 'a component of components.yaml',
    });
}

function checkLine(book: Book, { components, declared }: Everything, line: Line, tree: Tree): void {
  const works = new Set([...declared.components, ...declared.materials, 'bar']);
  line.stations.forEach((station, index) => {
    const at = (key: string): Path => ['line', 'stations', index, key];
    if (station.works !== undefined)
      book.known(tree, at('works'), station.works, works, {
        code: 'UNKNOWN_COMPONENT',
        what: 'Component',
        expected: "a component, a material, or 'bar'",
      });
    const component = station.works === undefined ? undefined : components.get(station.works);
    if (station.stage !== undefined && (component || station.works === undefined || !declared.components.has(station.works))) {
      const names = new Set((component?.stages ?? []).map(({ name }) => name));
      book.known(tree, at('stage'), station.stage, names, {
        code: 'UNKNOWN_STAGE',
        what: 'Stage',
        expected: names.size > 0 ? `one of: ${[...names].join(', ')}` : "a stage of the component in 'works'",
      });
    }
  });
  if (line.trimGoesTo !== undefined) needComponent(book, tree, ['line', 'trim goes to'], line.trimGoesTo, declared);
}

function checkPlans(book: Book, { plans, declared, lines, bars }: Everything, tree: Tree): void {
  const substances = new Set([...declared.materials, ...declared.components]);
  plans.forEach((plan, index) => {
    const path = ['plans', index];
    book.known(tree, [...path, 'bar'], plan.bar, declared.bars, { code: 'UNKNOWN_BAR', what: 'Bar' });
    book.known(tree, [...path, 'line'], plan.line, declared.lines, { code: 'UNKNOWN_LINE', what: 'Line' });
    plan.lots.forEach(({ material }, number) => {
      book.known(tree, [...path, 'lots', number, 'material'], material, substances, {
        code: 'UNKNOWN_MATERIAL',
        what: 'Material',
        expected: 'a material or a component',
      });
    });
  });
  for (const { line, tree: own } of lines) for (const { bar } of bars) if (bar.line === line.name) checkSlab(book, own, line, bar);
}

/** The slab must fit on the belt that carries it, where its width is written. */
function checkSlab(book: Book, tree: Tree, line: Line, bar: Bar): void {
  const slab = line.lanes.value * bar.cutWidth.value + 2 * line.edgeTrim.value;
  line.stations.forEach(({ name, width }, index) => {
    if (width === undefined || width.value >= slab) return;
    book.complain(tree, ['line', 'stations', index, 'width'], {
      code: 'SLAB_TOO_WIDE',
      message: `${line.lanes.value} lanes of '${bar.name}' with their trim are ${mm(slab)} wide; '${name}' is ${mm(width.value)}`,
      expected: 'a belt as wide as the slab',
    });
  });
}

function mm(length: number): string {
  return `${Number((length * 1000).toFixed(1))} mm`;
}

function noteUse(book: Book, { materials, components, bars, lines, materialsTree, componentsTree }: Everything): void {
  const used = new Set([...components.values()].flatMap(parts));
  for (const { bar } of bars) for (const { component } of [...bar.layers, ...(bar.coat ? [bar.coat] : [])]) used.add(component);
  for (const { line } of lines) for (const { works } of line.stations) if (works !== undefined) used.add(works);
  for (const { name, price, quoted } of materials.values()) {
    if (!materialsTree) break;
    const path = ['materials', name];
    if (!used.has(name) && !quoted) book.note(materialsTree, path, { code: 'NOT_USED', message: `Material '${name}' is in no recipe` });
    else if (!price && used.has(name))
      book.note(materialsTree, path, {
        code: 'NO_PRICE',
        message: `Material '${name}' has no price`,
        advice: 'Costs that rest on it stay unknown',
      });
  }
  for (const { name } of components.values()) {
    if (componentsTree && !used.has(name))
      book.note(componentsTree, ['components', name], {
        code: 'NOT_USED',
        message: `Component '${name}' is in no bar and no other component`,
      });
  }
  if (bars.length === 0 && componentsTree)
    book.note(componentsTree, [], { code: 'NO_BARS', message: 'No bar is defined yet', advice: 'Add a file in bars/' });
}
