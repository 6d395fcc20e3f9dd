import type { Quantity, State } from '@barwright/chain';
import { additionsOf, componentsOf, lookOfWritten } from '@barwright/bar';
import { allergens, checkQuantity, presentation, stationsByUse, type PlantChain, type Units } from '@barwright/line';
import { slugOf, type Component, type PlannedCheck } from '@barwright/plant';

/** One number to hold: aim and window in the unit shown, what to do when it is outside. */
export interface SheetRow {
  readonly where: string;
  readonly what: string;
  readonly unit: string;
  readonly decimals: number;
  readonly aim?: number;
  readonly low?: number;
  readonly high?: number;
  /** Where the aim is not a number: 'all rejected'. */
  readonly words?: string;
  readonly every: string;
  readonly reaction: string;
  readonly hold?: string;
  readonly kind: 'critical' | 'law' | 'house';
  readonly writeIn: 'number' | 'pass' | 'words' | 'none';
  readonly origin: 'entered' | 'computed';
  /** The quantity that explains it. */
  readonly quantity?: string;
}

/** One line of a weighing list, in weighing order. */
export interface ChargeRow {
  readonly stage: string;
  readonly name: string;
  readonly share: number;
  /** The share of the charge it comes from. */
  readonly quantity: string;
  /** kg, rounded to the division of the scale it is weighed on. */
  readonly mass: number;
  readonly division: number;
}

export interface ChargeList {
  readonly component: string;
  readonly batches: number | undefined;
  readonly finished: number;
  readonly charged: number;
  readonly rows: readonly ChargeRow[];
  /** kg weighed out less kg asked, from rounding. */
  readonly residual: number;
  readonly notes: readonly string[];
}

export interface RunSheet {
  readonly title: string;
  readonly facts: readonly string[];
  readonly version: string;
  readonly rows: readonly SheetRow[];
  readonly charges: readonly ChargeList[];
  readonly rework: readonly string[];
  readonly times: readonly (readonly [what: string, when: string])[];
  readonly changeover: readonly string[];
  readonly lots: readonly string[];
  readonly cautions: readonly { readonly station: string; readonly sentences: readonly string[] }[];
  readonly shifts: readonly string[];
  readonly allergens: readonly string[];
  readonly remarks: readonly string[];
}

export interface SheetOptions {
  /** 'version 3', or nothing where the plant folder is used as it lies. */
  readonly version?: string;
  readonly units?: Units;
}

/** What a shift needs on paper, from the definition and what the chain computes. */
export function runSheet(from: PlantChain, state: State, options: SheetOptions = {}): RunSheet {
  const { plant, bar, line } = from;
  const units = options.units ?? 'metric';
  return {
    title: `Run sheet: ${bar.name}`,
    facts: facts(from, state, units),
    version: options.version ?? 'from the plant folder as it lies',
    rows: [...checkRows(from, units), ...setPointRows(from, state, units)],
    charges: componentsOf(plant, bar).flatMap((component) => chargeList(from, state, component)),
    rework: reworkSentences(from, state),
    times: times(from, state),
    changeover: plant.changeover,
    lots: lots(from),
    cautions: (line?.stations ?? [])
      .filter((station) => station.cautions.length > 0)
      .map((station) => ({ station: station.name, sentences: station.cautions })),
    shifts: plant.shifts.map((shift) => shift.name),
    allergens: [...allergens(from).keys()],
    remarks: remarks(from, state, units),
  };
}

function quantityOf(from: PlantChain, id: string): Quantity | undefined {
  const index = from.chain.index.get(id);
  return index === undefined ? undefined : from.chain.quantities[index];
}

function words(from: PlantChain, state: State, id: string, units: Units): string | undefined {
  const quantity = quantityOf(from, id);
  if (!quantity || !state.status(id).ok) return undefined;
  const { unit, decimals, toShown } = presentation(quantity, units);
  const value = toShown(state.number(id))
    .toLocaleString('en-GB', { minimumFractionDigits: decimals, maximumFractionDigits: decimals })
    .replaceAll(',', '\u202f');
  return unit === '' ? value : `${value}\u202f${unit}`;
}

function facts(from: PlantChain, state: State, units: Units): string[] {
  const { plant, bar, line, plan } = from;
  const list = [[bar.format, line?.name, plant.name].filter(Boolean).join(', ') + '.'];
  if (plan) {
    const parts = [
      plan.date && `For ${plan.date}`,
      `Order ${words(from, state, 'order.bars', units)}`,
      words(from, state, 'order.pallets', units),
      words(from, state, 'order.cases', units),
    ];
    list.push(`${parts.filter(Boolean).join(', ')}.`);
  }
  const speed = words(from, state, 'line.rate', units);
  if (speed)
    list.push(`${speed}, ${words(from, state, 'line.slab_speed', units)} of slab, belt ${words(from, state, 'line.belt_speed', units)}.`);
  const air = words(from, state, 'plant.pressure', units);
  if (air)
    list.push(
      `Air pressure ${air} (${state.origin('plant.pressure') === 'computed' ? 'standard for the altitude; read the barometer' : 'as read'}).`,
    );
  return list;
}

/** Each planned check with a limit as a row. */
function checkRows(from: PlantChain, units: Units): SheetRow[] {
  return from.plant.checks.map((check) => checkRow(from, check, units));
}

function checkRow(from: PlantChain, check: PlannedCheck, units: Units): SheetRow {
  const quantity = checkQuantity(check, (id) => from.chain.index.has(id));
  const base = {
    where: check.at,
    what: check.what,
    every: check.every,
    reaction: check.reaction ?? '',
    kind: check.kind,
    writeIn: check.writeIn,
    origin: 'entered' as const,
    ...(check.hold ? { hold: check.hold } : {}),
    ...(quantity === undefined ? {} : { quantity }),
  };
  if (!check.limit) return { ...base, unit: '', decimals: 0, words: check.words ?? '' };
  const { unit, decimals, toShown } = presentation({ id: '', meaning: '', ...lookOfWritten(check.limit) }, units);
  const { value, low, high } = check.limit;
  const oneSided = (low === undefined) !== (high === undefined);
  return {
    ...base,
    unit,
    decimals,
    ...(oneSided ? {} : { aim: toShown(value) }),
    ...(low === undefined ? {} : { low: toShown(low) }),
    ...(high === undefined ? {} : { high: toShown(high) }),
    ...(check.words ? { words: check.words } : {}),
  };
}

/** Set points of the stations that no check covers already. */
function setPointRows(from: PlantChain, state: State, units: Units): SheetRow[] {
  const rows: SheetRow[] = [];
  for (const station of from.line?.stations ?? []) {
    for (const point of station.setPoints) {
      const id = `set.${station.slug}.${point.slug}`;
      const quantity = quantityOf(from, id);
      if (!quantity || coveredByCheck(from, station.name, point.name, point.value.text)) continue;
      const { unit, decimals, toShown } = presentation(quantity, units);
      const { low, high } = point.value;
      rows.push({
        where: station.name,
        what: point.name,
        unit,
        decimals,
        aim: toShown(state.number(id)),
        ...(low === undefined ? {} : { low: toShown(low) }),
        ...(high === undefined ? {} : { high: toShown(high) }),
        every: 'set point',
        reaction: point.reaction ?? '',
        kind: 'house',
        writeIn: 'none',
        origin: 'entered',
        quantity: id,
      });
    }
  }
  return rows;
}

/** A check that says the same: the same number as written, the same words, and a place that shares a word with the station. */
function coveredByCheck(from: PlantChain, station: string, name: string, text: string): boolean {
  const words = (phrase: string) => new Set(phrase.toLowerCase().match(/[a-z]{4,}/g) ?? []);
  const shares = (a: string, b: string) => [...words(a)].some((word) => [...words(b)].some((other) => other.startsWith(word.slice(0, 5))));
  return from.plant.checks.some(
    (check) => check.limit?.text === text && shares(check.what, name) && (shares(check.at, station) || check.what === name),
  );
}

/** Charges of a batch, each rounded to the division of the scale it is weighed on, with what rounding leaves over. */
function chargeList(from: PlantChain, state: State, component: Component): ChargeList[] {
  const c = component.slug;
  const charge = `${c}.batch_charge`;
  if (!from.chain.index.has(charge) || !state.status(charge).ok) return [];
  const charged = state.number(charge);
  const total = state.number(`${c}.charge_sum`);
  const rows = additionsOf(component).map(({ addition, stage, id }): ChargeRow => {
    const share = state.number(id) / total;
    const exact = share * charged;
    const division = divisionFor(from, exact);
    return { stage: stage.name, name: addition.name, quantity: id, share, mass: Math.round(exact / division) * division, division };
  });
  const weighed = rows.reduce((sum, row) => sum + row.mass, 0);
  const batches = `order.${c}.batches`;
  return [
    {
      component: component.name,
      batches: from.chain.index.has(batches) && state.status(batches).ok ? state.number(batches) : undefined,
      finished: state.number(`${c}.batch_finished`),
      charged,
      rows,
      residual: weighed - charged,
      notes: stageNotes(state, from, component),
    },
  ];
}

function divisionFor(from: PlantChain, mass: number): number {
  const scales = from.plant.scales;
  return (scales.find((scale) => mass <= scale.upTo) ?? scales.at(-1) ?? { division: 0.001 }).division;
}

function half(state: State, id: string): string {
  return (state.uncertainty(id) ?? 0).toFixed(1);
}

/** What happens at each stage, in a few words. */
function stageNotes(state: State, from: PlantChain, component: Component): string[] {
  const c = component.slug;
  const notes: string[] = [];
  for (const stage of component.stages) {
    const parts: string[] = [];
    if (stage.cook) {
      const [true_, indicated, per, solids] = ['cook_temperature', 'cook_indicated', 'cook_per_kpa', 'cook_solids'].map((name) =>
        words(from, state, `${c}.${name}`, 'metric'),
      );
      if (true_)
        parts.push(
          `cook to ${true_} true, ${indicated} as its probe shows (computed, ± ${half(state, `${c}.cook_temperature`)} K until calibrated; ${per})`,
        );
      if (solids) parts.push(`dissolved solids ${solids}`);
      const [refractometer, kelvin] = ['refractometer', 'moisture_per_kelvin'].map((name) => words(from, state, `${c}.${name}`, 'metric'));
      if (refractometer)
        parts.push(`refractometer ${refractometer} (± ${(100 * (state.uncertainty(`${c}.refractometer`) ?? 0)).toFixed(1)})`);
      if (kelvin) parts.push(`a kelvin of the probe is ${kelvin.replace(/^[-−]/u, '').replace('/K', '')} water`);
    }
    if (stage.temperature) parts.push(stage.temperature.text);
    const laid =
      stage.temperature && (stage.does === 'cool' || stage.does === 'blend') ? words(from, state, `${c}.viscosity`, 'metric') : '';
    if (laid) parts.push(`viscosity as laid ${laid}`);
    if (stage.pressure) {
      const [least, most] = ['whip_pressure_min', 'whip_pressure_max'].map((name) => words(from, state, `${c}.${name}`, 'metric'));
      const window =
        stage.does === 'whip' && least && most ? ` (${least} to ${most} keep the density in its window, gas held as planned)` : '';
      parts.push(`${stage.pressure.text} absolute${window}`);
    }
    const held = stage.does === 'whip' && component.density ? `${c}.air` : undefined;
    if (held && from.chain.index.has(held) && state.status(held).ok)
      parts.push(`density cup ${component.density!.text}: ${words(from, state, held, 'metric')} air`);
    if (stage.time) parts.push(stage.time.text);
    if (stage.toMoisture) parts.push(`to ${stage.toMoisture.text} water`);
    if (parts.length > 0) notes.push(`${stage.name}: ${parts.join(', ')}`);
  }
  return notes;
}

function reworkSentences(from: PlantChain, state: State): string[] {
  const { plant, line } = from;
  const into = line?.trimGoesTo ? plant.components.get(line.trimGoesTo) : undefined;
  if (!into) return ['No rework goes into this bar.'];
  const trim = words(from, state, 'line.trim_flow', 'metric');
  const share = words(from, state, 'rework.share', 'metric');
  const cap = into.reworkCap ? `, cap ${into.reworkCap.text} of finished ${into.name}` : '';
  const batch =
    state.status(`${into.slug}.batch_finished`).ok && into.reworkCap
      ? state.number(`${into.slug}.batch_finished`) * into.reworkCap.value
      : undefined;
  return [
    `Edge trim goes back into ${into.name}: ${trim} falls at rated speed, ${share} of the ${into.name} made${cap}.`,
    ...(batch === undefined
      ? []
      : [
          `At most ${batch.toFixed(1)} kg in a batch. Own trim of this bar only, with its lot, its age and its weight written down; nothing that has left control.`,
        ]),
    `It carries ${[...allergens(from).keys()].join(', ') || 'no allergen entered'}: only into a bar that declares the same.`,
  ];
}

function times(from: PlantChain, state: State): [string, string][] {
  const { plan, line, plant, bar } = from;
  const list: [string, string][] = [];
  const start = plan?.start ? minutesOf(plan.start) + (plant.startUp?.value ?? 0) / 60 : undefined;
  const lead = (component: Component) => (component.lead ? component.lead.value / 60 : undefined);
  if (start !== undefined) {
    for (const component of componentsOf(plant, bar)) {
      const minutes = lead(component);
      if (minutes !== undefined) list.push([`first ${component.name} started by`, clock(start - minutes)]);
    }
    list.push(['first slab', clock(start)]);
    for (const point of line?.transit ?? [])
      if (point.time.value > 0)
        list.push([`first bar at the ${point.to}`, clock(start + cutterDelay(from, state) + point.time.value / 60)]);
    if (from.chain.index.has('order.duration'))
      list.push(['order made, at the planned speed', clock(start + state.number('order.duration') / 60)]);
  }
  return list.sort((a, b) => order(a[1]) - order(b[1]));
}

/** Minutes that the slab takes to the cutter: the coolers it lies in. */
function cutterDelay(from: PlantChain, state: State): number {
  let minutes = 0;
  for (const station of from.line?.stations ?? []) {
    const id = `station.${station.slug}.dwell`;
    if (from.chain.index.has(id) && /slab/i.test(station.name)) minutes += state.number(id) / 60;
  }
  return minutes;
}

function minutesOf(clockText: string): number {
  const [h = 0, m = 0] = clockText.split(':').map(Number);
  return 60 * h + m;
}

/** '06:45', '01:39 next day', '22:45 the day before'. */
export function clock(minutes: number): string {
  const rounded = Math.round(minutes);
  const day = Math.floor(rounded / 1440);
  const within = rounded - 1440 * day;
  const text = `${String(Math.floor(within / 60)).padStart(2, '0')}:${String(within % 60).padStart(2, '0')}`;
  if (day === 0) return text;
  return day === 1 ? `${text} next day` : day === -1 ? `${text} the day before` : `${text}, day ${day > 0 ? '+' : '−'}${Math.abs(day)}`;
}

function order(text: string): number {
  return minutesOf(text) + (text.includes('next') ? 1440 : text.includes('before') ? -1440 : 0);
}

/** Every bought material, for its lot. */
function lots(from: PlantChain): string[] {
  const names = new Set<string>();
  for (const component of componentsOf(from.plant, from.bar)) {
    for (const { addition } of additionsOf(component))
      if (from.plant.materials.has(addition.name) && slugOf(addition.name) !== 'water') names.add(addition.name);
  }
  if (from.bar.pack.film) names.add('film');
  return [...names];
}

/** What a shift should know of the numbers: narrowest station, findings, checks that rest on a model. */
function remarks(from: PlantChain, state: State, units: Units): string[] {
  const [first, second] = stationsByUse(from, state);
  const list: string[] = [];
  if (first)
    list.push(
      `The narrowest station is the ${first.name}: ${(100 * first.utilisation).toFixed(1)} % used${second ? `; next the ${second.name}, ${(100 * second.utilisation).toFixed(1)} %` : ''}. Full at ${words(from, state, 'line.max_rate', units)}.`,
    );
  for (const finding of state.findings()) list.push(finding.message);
  return list;
}
