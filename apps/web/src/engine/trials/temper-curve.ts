import { niceTicks, traces } from '@barwright/drawing';
import { NotOnLine, type TemperTable } from '@barwright/line';
import { temperCurve, temperState } from '@barwright/science';
import type { Engine } from '../engine.js';
import type { Field, TrialSheet } from '../trial-protocol.js';
import { inOrder } from './clock-ticks.js';
import { fileWords, type HeldFile } from './files.js';
import { cautions, looks, n, saying, sentences, Words } from './words.js';

type Curve = Extract<TemperTable, { kind: 'curve' }>;

/** One cooling curve of a sample: slope where cooling is slowest, against the band of the temperer. */
export function curveSheet(engine: Engine, read: Curve, file: HeldFile, fields: readonly Field[], width: number): TrialSheet {
  const found = temperCurve([...read.time], [...read.temperature]);
  const band = engine.from.line?.stations
    .find(({ name }) => /temper/i.test(name))
    ?.setPoints.find(({ name }) => /slope/i.test(name))?.value;
  if (band?.low === undefined || band.high === undefined)
    throw new NotOnLine('The temperer has no set point "slope" with two ends to read the curve against');
  const [low, high] = [60 * band.low, 60 * band.high];
  const state = temperState(found.slope, low, high);
  const words = new Words(engine);
  const { celsius } = looks;
  const order = inOrder(read.time);
  const end = read.time[order.at(-1) ?? 0]! / 60;
  const drawn = traces({
    width,
    x: [read.time[order[0] ?? 0]! / 60, end],
    ticks: niceTicks(read.time[order[0] ?? 0]! / 60, end, 7).map((at) => ({ at, text: String(at) })),
    xLabel: 'min',
    rows: [
      {
        id: 'sample',
        name: 'Sample',
        unit: words.unit(celsius),
        height: 240,
        points: order.map((i) => [read.time[i]! / 60, words.shown(read.temperature[i]!, celsius)] as const),
        brackets: [{ from: Math.max(0, found.time / 60 - 0.3), to: found.time / 60 + 0.3, text: 'inflection' }],
      },
    ],
  });
  const title = { under: 'Under-tempered', well: 'Well tempered', over: 'Over-tempered' }[state];
  return {
    part: 'temper',
    ...(state === 'well' ? {} : { mark: 'act' as const }),
    title: `${title}: slope ${n(found.slope, 2)} K/min at the inflection, window ${n(low, 2)} to ${n(high, 2)}.`,
    sub: sentences(
      `95 % limits of the slope ${n(found.slopeLow, 2)} to ${n(found.slopeHigh, 2)} K/min`,
      found.inflection ? undefined : 'No inner inflection was found: the flattest place is read and means little',
    ),
    fields,
    knobs: [],
    plates: [{ name: `Cooling curve of ${file.name}`, marks: drawn.marks, width: drawn.width, height: drawn.height }],
    tables: [
      {
        caption: `The curve of ${fileWords(file)}`,
        head: ['value'],
        rows: [
          { name: 'slope at the inflection, K/min', cells: [{ text: n(found.slope, 2), act: state !== 'well' }] },
          { name: 'inflection after', cells: [{ text: `${n(found.time, 0)} s` }] },
          { name: 'temperature there', cells: [words.cell(found.temperature, celsius)] },
          { name: 'warmed by the heat of its crystals', cells: [words.cell(found.rise, looks.kelvin)] },
        ],
      },
    ],
    said: [
      ...saying('How the curve was read', read.said),
      ...cautions([
        'The slope is read where cooling is slowest (second derivative 0). The index is on the scale of each instrument; compare readings of one instrument only.',
        'A tunnel cannot repair temper. Barwright advises; it sets nothing on a machine.',
      ]),
    ],
  };
}
