import { Session } from '@barwright/chain';
import { belt, type Point } from '@barwright/drawing';
import { tunnelHistory, type PlantChain, type TunnelRun } from '@barwright/line';
import type { Station } from '@barwright/plant';
import type { Engine } from '../engine.js';
import type { AskedFor, FigureTable, Plate, TrialSheet } from '../trial-protocol.js';
import { filesOf, fileWords, keyOf } from './files.js';
import { sessionAt } from './speed.js';
import { calibration, logSaid } from './tunnel-log.js';
import { askedNumber, cautions, choiceField, looks, n, numberField, saying, sentences, sillOf, Words } from './words.js';

/** The cooling tunnel for a rate: temperatures along the belt, crystals, heat, dew, and what a log says of the model. */
export function tunnelSheet(engine: Engine, asked: AskedFor, width: number): TrialSheet {
  const { from } = engine;
  const words = new Words(engine);
  const now = engine.session.number('line.rate');
  const rate = askedNumber(asked, 'rate') ?? now;
  const { file, fit, offset, id: offsetId } = calibration(engine, asked);
  const station = stationOf(from, tunnelHistory(from, engine.session).station);
  const at = (bars: number) => {
    const session = sessionAt(engine, bars);
    if (offset !== undefined) session.set(offsetId!, offset);
    return session;
  };
  const session = at(rate);
  const run = tunnelHistory(from, session);
  const before = tunnelHistory(from, at(now));
  const exit = station.setPoints.find(({ name, value }) => /exit/i.test(name) && value.dimension === 'temperature')?.value;
  const outside =
    (exit?.high !== undefined && run.exitSurface.value > exit.high) || (exit?.low !== undefined && run.exitSurface.value < exit.low);
  const knobs = run.zones.map((_, i) => `set.${station.slug}.zone_${i + 1}`).filter((id) => from.chain.index.has(id));
  const [value, ends] = [
    words.amount(run.exitSurface.value, looks.celsius),
    words.range(run.exitSurface.low, run.exitSurface.high, looks.celsius),
  ];
  return {
    part: 'tunnel',
    ...(outside ? { mark: 'act' as const } : {}),
    title: `At ${n(rate, 0)} bars/min bars leave the ${run.station} at ${value}${exit ? (outside ? `, outside ${words.range(exit.low ?? NaN, exit.high ?? NaN, looks.celsius)}` : ', inside their window') : ''}.`,
    sub: sentences(
      `${ends} where heat transfer is 20 % off; ${n(run.dwell / 60, 2)} min in the tunnel${rate === now ? '' : ` instead of ${n(before.dwell / 60, 2)}, ${changeWords(words, run, before)}`}`,
      offset !== undefined && `The model is moved by ${n(offset, 2)} K, as ${fileWords(file!)} asks`,
      zoneFor(engine, session, knobs, run, exit?.high ?? before.exitSurface.value, words),
    ),
    fields: [
      numberField(asked, 'rate', 'Rate', 'bars/min', rate, 0),
      ...(fit?.ok
        ? choiceField('offset', 'The model reads', offset === undefined ? 'as entered' : 'log', [
            { value: 'log', text: `as ${file!.name} asks` },
            { value: 'as entered', text: 'as entered' },
          ])
        : []),
      ...choiceField('file', 'Log', file ? keyOf(file) : '', filesOf('tunnel').map((one) => ({ value: keyOf(one), text: keyOf(one) }))), // prettier-ignore
    ],
    knobs,
    plates: [plate(words, run, exit, width)],
    tables: [numbers(words, run, before, exit), placesTable(words, run)],
    said: [
      ...(fit ? logSaid(words, file!, fit) : []),
      ...saying('What the model says of itself', run.notes),
      ...cautions([
        'Never chill harder to make up for temper: it makes the coat set dull and lets water settle. Bars, room and belt are looked at before a zone is turned.',
        'Barwright advises; it sets nothing on a machine.',
      ]),
    ],
  };
}

const stationOf = (from: PlantChain, name: string): Station => from.line!.stations.find((station) => station.name === name)!;

function changeWords(words: Words, run: TunnelRun, before: TunnelRun): string {
  const change = run.exitSurface.value - before.exitSurface.value;
  if (Math.abs(change) < 0.05) return 'and bars leave as warm as now';
  return `and bars leave ${words.amount(Math.abs(change), looks.kelvin)} ${change > 0 ? 'warmer' : 'cooler'} than now`;
}

/** The air of the coldest zone that would bring the exit to a temperature, the other zones as they are. */
function zoneFor(
  engine: Engine,
  session: Session,
  knobs: readonly string[],
  run: TunnelRun,
  wanted: number,
  words: Words,
): string | undefined {
  if (Math.abs(run.exitSurface.value - wanted) < 0.05 || run.exitSurface.value < wanted || knobs.length === 0) return undefined;
  const coldest = run.zones.reduce((best, zone, i) => (zone.air < run.zones[best]!.air ? i : best), 0);
  const id = knobs[coldest];
  if (id === undefined) return undefined;
  const trial = new Session(engine.from.chain, session.overrides());
  const exitAt = (air: number) => {
    trial.set(id, air);
    return tunnelHistory(engine.from, trial);
  };
  // The exit follows the air of a zone nearly along a straight line: two secant steps are enough.
  let [a, fa] = [run.zones[coldest]!.air, run.exitSurface.value - wanted];
  let b = a - 2;
  let there: TunnelRun | undefined;
  for (let i = 0; i < 4; i++) {
    there = exitAt(b);
    const fb = there.exitSurface.value - wanted;
    if (Math.abs(fb) < 0.02) break;
    const slope = (fb - fa) / (b - a);
    if (!(slope > 0.01)) return undefined;
    [a, fa, b] = [b, fb, b - fb / slope];
    if (b < -5)
      return `No air of ${run.zones[coldest]!.name} above ${words.amount(-5, looks.celsius)} brings the exit to ${words.amount(wanted, looks.celsius)}`;
  }
  const window = engine.from
    .line!.stations.flatMap(({ name, setPoints }) => (name === run.station ? setPoints : []))
    .find(({ slug }) => id.endsWith(`.${slug}`))?.value;
  const beyond = window?.low !== undefined && b < window.low ? ', outside its own window,' : '';
  return `With ${run.zones[coldest]!.name} at ${words.amount(b, looks.celsius)}${beyond} they would leave at ${words.amount(wanted, looks.celsius)}, ${words.amount(there!.dewMargin.value, looks.kelvin)} above the dew point of the room, by the model`;
}

function plate(
  words: Words,
  run: TunnelRun,
  exit: { readonly low?: number | undefined; readonly high?: number | undefined } | undefined,
  width: number,
): Plate {
  const { celsius, metre } = looks;
  const t = (value: number) => words.shown(value, celsius);
  const step = Math.max(1, Math.floor(run.along.place.length / 220));
  const points = (values: readonly number[], scale: (x: number) => number): Point[] =>
    run.along.place.flatMap((place, i): Point[] =>
      i % step === 0 || i === run.along.place.length - 1 ? [[words.shown(place, metre), scale(values[i]!)]] : [],
    );
  const offset = run.exitSurface.value - run.along.surface.at(-1)!;
  const moved = (value: number) => t(value + offset);
  const drawn = belt({
    width,
    height: 470,
    zones: run.zones.map(({ name, from, to, air }) => ({
      name: name.replace(/^air (of|in) /, ''),
      from: words.shown(from, metre),
      to: words.shown(to, metre),
      air: t(air),
      airText: words.amount(air, celsius),
    })),
    lines: [
      { name: 'top of the coat', points: points(run.along.surface, moved), bold: true },
      { name: 'mean of the bar', points: points(run.along.mean, moved) },
      { name: 'middle', points: points(run.along.centre, moved) },
    ],
    endRange: [t(run.exitSurface.low), t(run.exitSurface.high)],
    ...(exit
      ? { endWindow: { ...(exit.low === undefined ? {} : { lo: t(exit.low) }), ...(exit.high === undefined ? {} : { hi: t(exit.high) }) } }
      : {}),
    dew: { at: t(run.dewPoint), text: `dew point of the room, ${words.amount(run.dewPoint, celsius)}` },
    share: { name: 'solid fat', points: points(run.along.solids, (share) => share) },
    xLabel: `along the belt, ${words.unit(metre)}`,
    yLabel: words.unit(celsius),
  });
  return {
    name: 'Temperatures of a bar along the tunnel; the same numbers stand in the table below',
    marks: drawn.marks,
    width: drawn.width,
    height: drawn.height,
    caption: `Pale steps: air of the zones, taken as equally long. Slanted at the end: what 20 % of heat transfer does. Stops: the window of the exit.${Math.abs(offset) > 1e-6 ? ` All lines are moved by ${n(offset, 1)} K, the offset of the exit.` : ''}`,
  };
}

function numbers(
  words: Words,
  run: TunnelRun,
  before: TunnelRun,
  exit: { readonly low?: number | undefined; readonly high?: number | undefined } | undefined,
): FigureTable {
  const { celsius, kelvin, kilowatt } = looks;
  const slug = stationOf(words.engine.from, run.station).slug;
  const same = before.rate === run.rate;
  const ranged = (key: 'exitSurface' | 'exitMean' | 'dewMargin', look: typeof celsius | typeof kelvin) => (of: TunnelRun) => ({
    text: `${words.amount(of[key].value, look)} (${words.range(of[key].low, of[key].high, look)})`,
    ...(key === 'exitSurface' && exit
      ? {
          sill: sillOf(of[key].value, exit, 'computed'),
          act: (exit.high ?? Infinity) < of[key].value || (exit.low ?? -Infinity) > of[key].value,
        }
      : {}),
  });
  const row = (name: string, cell: (of: TunnelRun) => FigureTable['rows'][number]['cells'][number], id?: string) => ({
    name,
    ...(id && words.engine.from.chain.index.has(id) ? { id } : {}),
    cells: same ? [cell(run)] : [cell(before), cell(run)],
  });
  return {
    caption: same ? 'The tunnel as it runs' : 'The tunnel now and at the rate asked',
    head: same ? [`${n(run.rate, 0)} bars/min`] : [`${n(before.rate, 0)} bars/min`, `${n(run.rate, 0)} bars/min`],
    rows: [
      row('belt', (of) => words.cell(of.beltSpeed, looks.belt), 'line.belt_speed'),
      row('time in the tunnel', (of) => ({ text: `${n(of.dwell / 60, 2)} min` }), `station.${slug}.dwell`),
      row('top of the coat at the exit', ranged('exitSurface', celsius)),
      row('what the bar evens out to', ranged('exitMean', celsius)),
      row('middle of the bar at the exit', (of) => words.cell(of.exitCentre, celsius)),
      row('solid share of the fat of the coat, mean', (of) => ({ text: `${n(100 * of.solids, 0)} %` })),
      row('the same where it is least', (of) => ({ text: `${n(100 * of.leastSolids, 0)} %` })),
      row('what would be solid at 20 °C', (of) => ({ text: `${n(100 * of.solidsAt20, 0)} %` })),
      row('coldest surface above the dew point of the room', ranged('dewMargin', kelvin)),
      row('dew point of the room', (of) => words.cell(of.dewPoint, celsius), 'plant.room_dew_point'),
      row('heat out of bars, the tunnel’s own losses on top', (of) => words.cell(of.load, kilowatt)),
      ...run.zones.map((zone, i) =>
        row(`of it in ${zone.name}`, (of) => words.cell(of.loadByZone[i] ?? NaN, kilowatt), `set.${slug}.zone_${i + 1}`),
      ),
    ],
  };
}

function placesTable(words: Words, run: TunnelRun): FigureTable {
  const { place, surface, centre, mean, solids } = run.along;
  const offset = run.exitSurface.value - surface.at(-1)!;
  const end = place.at(-1)!;
  const rows = Array.from({ length: 13 }, (_, k) => {
    const at = (end * k) / 12;
    const i = place.reduce((best, x, j) => (Math.abs(x - at) < Math.abs(place[best]! - at) ? j : best), 0);
    const zone = run.zones.find(({ to }) => place[i]! <= to + 1e-9) ?? run.zones.at(-1)!;
    return {
      name: `${n(words.shown(place[i]!, looks.metre), 1)} ${words.unit(looks.metre)}`,
      cells: [
        { text: `${n(place[i]! / run.beltSpeed / 60, 1)} min` },
        words.cell(zone.air, looks.celsius),
        words.cell(surface[i]! + offset, looks.celsius),
        words.cell(centre[i]! + offset, looks.celsius),
        words.cell(mean[i]! + offset, looks.celsius),
        { text: `${n(100 * solids[i]!, 0)} %` },
      ],
    };
  });
  return { caption: 'Along the belt', head: ['after', 'air', 'top', 'middle', 'mean', 'solid fat'], rows };
}
