import type { Point } from '@barwright/drawing';
import { tunnelHistory } from '@barwright/line';
import type { AlongLine, TunnelStretch } from '../along-protocol.js';
import type { Engine } from '../engine.js';
import { looks, n, sentences, tight, Words } from '../trials/words.js';
import type { OnClock } from './answer.js';
import { lineWords, wholeMinutes } from './reading.js';
import { minuteWords } from './slab.js';

/** The tunnel as the strip shows it: coat, middle, mean and the solid share of the coat. @throws NoTunnel and what the chain refuses */
export function tunnelStretch(engine: Engine, clock: OnClock): TunnelStretch {
  const words = new Words(engine);
  const run = tunnelHistory(engine.from, engine.session);
  const [start, end] = clock.spanOf(run.station);
  // The model steps finely in time; a twentieth of a minute is enough to look at.
  const step = Math.max(1, Math.floor(run.along.place.length / 200));
  const last = run.along.place.length - 1;
  const kept = run.along.place.flatMap((_, i) => (i % step === 0 || i === last ? [i] : []));
  const minutes = kept.map((i) => run.along.place[i]! / run.beltSpeed / 60);
  const offset = run.exitSurface.value - run.along.surface[last]!;
  const celsius = (name: string, values: readonly number[]): AlongLine => ({
    name,
    values: kept.map((i) => words.shown(values[i]! + offset, looks.celsius)),
    unit: words.unit(looks.celsius),
    decimals: 1,
  });
  const { along } = run;
  const lines = [
    celsius('top of the coat', along.surface),
    celsius('middle of the bar', along.centre),
    celsius('evened out', along.mean),
    { name: 'solid fat of the coat', values: kept.map((i) => 100 * along.solids[i]!), unit: '%', decimals: 0 },
  ];
  const place: AlongLine = {
    name: 'along the belt',
    values: kept.map((i) => words.shown(along.place[i]!, looks.metre)),
    unit: words.unit(looks.metre),
    decimals: 1,
  };
  const station = engine.from.line!.stations.find(({ name }) => name === run.station)!;
  const exit = station.setPoints.find(({ name, value }) => /exit/i.test(name) && value.dimension === 'temperature')?.value;
  const t = (value: number) => words.shown(value, looks.celsius);
  const points = (at: number): Point[] => minutes.map((minute, i): Point => [minute, lines[at]!.values[i]!]);
  const { low: least, high: most } = run.exitSurface;
  const [floor, ceiling] = [exit?.low ?? -Infinity, exit?.high ?? Infinity];
  const out = least > ceiling || most < floor;
  const verdict = out
    ? ', outside their window'
    : least >= floor && most <= ceiling
      ? ', inside their window'
      : '; cannot tell whether inside their window';
  return {
    kind: 'tunnel',
    station: run.station,
    from: start,
    to: end,
    minutes,
    place,
    lines,
    title: tight(`Bars leave the ${run.station} at ${words.amount(run.exitSurface.value, looks.celsius)}${exit ? verdict : ''}.`),
    sub: sentences(
      `${words.range(run.exitSurface.low, run.exitSurface.high, looks.celsius)} where heat transfer is a fifth off; ${n(100 * run.solids, 0)} % of the fat of the coat is solid then, ${n(100 * run.solidsAt20, 0)} % would be at 20 °C`,
    ),
    act: out,
    spec: {
      zones: run.zones.map(({ name, from, to, air }) => ({
        name: name.replace(/^air (of|in) /, ''),
        from: from / run.beltSpeed / 60,
        to: to / run.beltSpeed / 60,
        air: t(air),
        airText: words.amount(air, looks.celsius),
      })),
      lines: [
        { name: 'top of the coat', points: points(0), bold: true },
        { name: 'mean of the bar', points: points(2) },
        { name: 'middle', points: points(1) },
      ],
      endRange: [t(run.exitSurface.low), t(run.exitSurface.high)],
      ...(exit ? { endWindow: { ...(exit.low === undefined ? {} : { lo: t(exit.low) }), ...(exit.high === undefined ? {} : { hi: t(exit.high) }) } } : {}),
      endUnjudged: !out,
      dew: { at: t(run.dewPoint), text: `dew point of the room ${words.amount(run.dewPoint, looks.celsius)}` },
      share: { name: 'solid fat', points: minutes.map((minute, i): Point => [minute, along.solids[kept[i]!]!]) },
      xLabel: `minutes; ${clock.words(start)} into the ${run.station}, ${clock.words(end)} out`,
      yLabel: words.unit(looks.celsius),
    },
    table: {
      caption: 'Through the tunnel, minute by minute',
      head: [place.name, ...lines.map(({ name }) => name)],
      rows: wholeMinutes({ minutes }).map((at) => ({
        name: minuteWords(at),
        cells: [place, ...lines].map((line) => ({ text: lineWords(line, minutes, at) })),
      })),
    },
    said: run.notes.map(tight),
  }; // prettier-ignore
}
