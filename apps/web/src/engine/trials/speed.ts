import { Session } from '@barwright/chain';
import { reach } from '@barwright/drawing';
import { atSpeed, coatModel, NotOnLine, type SpeedAnswer } from '@barwright/line';
import type { Engine } from '../engine.js';
import type { AskedFor, FigureTable, Plate, TrialSheet } from '../trial-protocol.js';
import { quantityOf } from '../words.js';
import { calibrated } from './tunnel-log.js';
import { askedNumber, capital, cautions, looks, n, numberField, saying, sentences, Words } from './words.js';

/** What another line speed does: which station gives out, what tunnel, temperer and enrober are asked. */
export function speedSheet(engine: Engine, asked: AskedFor, width: number): TrialSheet {
  const { from, session } = engine;
  if (!from.line) throw new NotOnLine(`${from.bar.name} has no line; a speed means nothing without one`);
  const words = new Words(engine);
  const now = session.number('line.rate');
  const rate = askedNumber(asked, 'rate') ?? nextStep(now);
  const margin = askedNumber(asked, 'margin') ?? 5;
  const own = new Session(from.chain, session.overrides());
  const moved = calibrated(engine, own);
  const answer = atSpeed(from, own, rate, { margin: margin / 100 });
  const after = sessionAt(engine, rate);
  const [first] = answer.stations;
  const title = answer.first
    ? `At ${n(rate, 0)} bars/min the ${answer.first.name} cannot: it is full at ${n(Math.floor(answer.first.fullAt + 1e-9), 0)}.`
    : first
      ? `Every station can do ${n(rate, 0)} bars/min; the ${first.name} is then the fullest, at ${n(100 * first.after, 0)} %.`
      : `At ${n(rate, 0)} bars/min nothing tells what gives out: no station of ${from.line.name} has a rate.`;
  return {
    part: 'speed',
    // A speed that nobody asked for is only to be seen.
    ...(answer.first ? { mark: asked.rate === undefined ? ('seen' as const) : ('act' as const) } : {}),
    title,
    sub: sentences(...answer.advice.slice(1, 4)),
    fields: [
      numberField(asked, 'rate', 'Rate', 'bars/min', rate, 0),
      numberField(asked, 'margin', 'Kept free to catch up (common practice, no source)', '%', margin, 0),
    ],
    knobs: [],
    plates: first ? [plate(answer, now, margin / 100, width)] : [],
    tables: [stationTable(answer), followTable(words, answer, after, moved), ...bufferTable(answer)],
    said: [
      ...saying('So', answer.advice),
      ...saying('Newly outside', answer.broken.map(({ id }) => capital(quantityOf(from.chain, id)?.meaning ?? id)), true), // prettier-ignore
      ...cautions(answer.cautions),
    ],
  };
}

/** The chain at another rate; the engine's own session stays as it is. */
export function sessionAt({ from, session }: Engine, rate: number): Session {
  const after = new Session(from.chain, session.overrides());
  const now = session.number('line.rate');
  if (from.chain.index.has('line.slab_speed')) after.set('line.slab_speed', (session.number('line.slab_speed') * rate) / now);
  if (Math.abs(after.number('line.rate') / rate - 1) > 1e-9) after.set('line.rate', rate);
  return after;
}

/** A tenth more, in round numbers: 1 050 for 960. */
function nextStep(now: number): number {
  const step = now > 400 ? 50 : now > 80 ? 10 : 5;
  return Math.round((now * 1.09) / step) * step;
}

function plate(answer: SpeedAnswer, now: number, margin: number, width: number): Plate {
  const drawn = reach({
    width,
    rows: answer.stations.map(({ id, name, fullAt, verdict, can, unit }) => ({
      id,
      name,
      reach: fullAt,
      note: `${n(can, 0)} ${unit}${verdict === 'no catch-up' ? ', no room' : ''}`,
    })),
    asked: answer.after,
    askedText: n(answer.after, 0),
    now,
    margin: margin / (1 - margin),
    unit: 'bars/min',
  });
  return {
    name: `Stations and the rate at which each is full, against ${n(answer.after, 0)} bars/min`,
    marks: drawn.marks,
    width: drawn.width,
    height: drawn.height,
    caption: `Each frame ends at the rate at which the station is full. Upright: asked. Dotted: now, ${n(now, 0)} bars/min. The scale does not begin at 0.`,
  };
}

function stationTable({ stations }: SpeedAnswer): FigureTable {
  return {
    caption: 'Stations, the fullest first',
    head: ['used now', 'then', 'asked', 'can', 'full at bars/min', ''],
    words: [5],
    rows: stations.map(({ name, id, before, after, asked, can, unit, fullAt, verdict }) => ({
      name,
      id,
      cells: [
        { text: `${n(100 * before, 1)} %` },
        { text: `${n(100 * after, 1)} %`, act: verdict === 'cannot' },
        { text: n(asked, 0) },
        { text: `${n(can, 0)} ${unit}` },
        { text: n(Math.floor(fullAt + 1e-9), 0) },
        { text: verdict === 'cannot' ? 'cannot' : verdict === 'no catch-up' ? 'no room to catch up' : '', act: verdict === 'cannot' },
      ],
    })),
  };
}

/** What tunnel, temperer and enrober are asked: numbers of the chain where it has them, of the tunnel model else. */
function followTable(words: Words, answer: SpeedAnswer, after: Session, moved: number): FigureTable {
  const { from, session } = words.engine;
  const ids = (pattern: RegExp) => from.chain.quantities.map(({ id }) => id).filter((id) => pattern.test(id));
  const row = (id: string, name?: string) => words.chainRow(id, session, after, name);
  const tunnelId = ids(/^station\..*tunnel.*\.dwell$/)[0];
  const { tunnel } = answer;
  const coats = coatModel(from, session);
  const coat = coats && { before: coats.at(), after: coats.at({ beltSpeed: answer.beltSpeed.after }) };
  return {
    caption: `What tunnel, temperer and enrober are asked${moved === 0 ? '' : `; temperatures at the exit moved by ${n(moved, 2)} K, as the log of the tunnel asks`}`,
    head: ['now', 'then'],
    rows: [
      ...row('line.belt_speed'),
      ...(tunnelId ? row(tunnelId) : []),
      ...(tunnel
        ? (
            [
              ['bars leave the tunnel at, top', 'exitSurface', looks.celsius],
              ['the bar evens out at', 'exitMean', looks.celsius],
              ['coldest surface above the dew point of the room', 'dewMargin', looks.kelvin],
            ] as const
          ).map(([name, key, look]) => ({
            name,
            cells: [tunnel.before[key], tunnel.after[key]].map(({ value, low, high }) => ({
              text: `${words.amount(value, look)} (${words.range(low, high, look)})`,
            })),
          }))
        : []),
      ...(tunnel
        ? [
            {
              name: 'heat that the tunnel takes out of bars',
              cells: [words.cell(tunnel.before.load, looks.kilowatt), words.cell(tunnel.after.load, looks.kilowatt)],
            },
            {
              name: 'solid share of the fat of the coat at the exit',
              cells: [tunnel.before, tunnel.after].map(({ solids }) => ({ text: `${n(100 * solids, 0)} %` })),
            },
          ]
        : []),
      ...ids(/^station\..*temper.*\.(throughput|duty|coolant_out)$/).flatMap((id) => row(id)),
      ...ids(/^station\..*enrob.*\.(curtain_flow|return_flow)$/).flatMap((id) => row(id)),
      ...(coat
        ? [
            {
              name: 'coat by film theory, belt and blower as set',
              cells: [coat.before, coat.after].map(({ mass, low, high }) => ({
                text: `${words.amount(mass, looks.gram)} (${words.range(low, high, looks.gram)})`,
              })),
            },
          ]
        : []),
    ],
  };
}

function bufferTable({ buffers }: SpeedAnswer): readonly FigureTable[] {
  if (buffers.length === 0) return [];
  const minutes = (seconds: number) => (Number.isFinite(seconds) ? `${n(seconds / 60, 1)} min` : 'without end');
  return [
    {
      caption: 'The accumulation with one machine down, full speed upstream',
      head: ['now', 'then'],
      rows: buffers.map(({ station, oneDown }) => ({
        name: station,
        cells: [{ text: minutes(oneDown.before) }, { text: minutes(oneDown.after) }],
      })),
    },
  ];
}
