import { cookElsewhere, NoCook, type CookThere } from '@barwright/line';
import { curve } from '@barwright/drawing';
import { standardPressure } from '@barwright/science';
import type { Engine } from '../engine.js';
import type { AskedFor, FigureTable, Plate, TrialSheet } from '../trial-protocol.js';
import { percent } from './cook-words.js';
import { askedNumber, cautions, choiceField, looks, n, numberField, saying, sentences, Words } from './words.js';

/** Every cook at another height, or under another pressure: new set points, the same moisture. */
export function pressureSheet(engine: Engine, asked: AskedFor, width: number): TrialSheet {
  const { from, session } = engine;
  const words = new Words(engine);
  const height = session.number('plant.altitude');
  const way = asked.way === 'pressure' ? 'pressure' : 'height';
  const metres = askedNumber(asked, 'height');
  const millibar = askedNumber(asked, 'pressure');
  const altitude = metres === undefined ? Math.round((height + 1500) / 100) * 100 : words.inside(metres, looks.metre);
  const pressure = millibar === undefined ? 40_000 : 100 * millibar;
  const answer = cookElsewhere(from, session, way === 'height' ? { altitude } : { pressure });
  if (answer.cooks.length === 0) throw new NoCook(answer.notes[0]!.replace(/\.$/, ''));
  const moved = answer.cooks.map(({ component, indicated }) => `${component} ${n(indicated.after - indicated.before, 1)} K`);
  return {
    part: 'pressure',
    title: `At ${n(answer.pressure / 100, 0)} mbar${way === 'height' ? `, ${words.amount(altitude, looks.metre)} up,` : ''} the same moistures are cooked ${moved.join(', ')}.`,
    sub: sentences(answer.notes[0]),
    fields: [
      ...choiceField('way', 'Take the cooks', way, [
        { value: 'height', text: 'to another height' },
        { value: 'pressure', text: 'to another pressure' },
      ]),
      way === 'height'
        ? numberField(asked, 'height', 'Height', words.unit(looks.metre), words.shown(altitude, looks.metre), 0)
        : numberField(asked, 'pressure', 'Absolute pressure', 'mbar', pressure / 100, 0),
    ],
    knobs: [],
    plates: [plate(engine, words, answer.cooks[answer.cooks.length - 1]!, answer.pressure, width)],
    tables: [cooksTable(words, answer.cooks)],
    said: [
      ...saying('Mind', answer.notes.slice(1)),
      ...cautions([
        'Steam, vacuum and pressure vessels are matters for licensed people, their codes and the maker’s manual. Barwright advises only.',
      ]),
    ],
  };
}

function cooksTable(words: Words, cooks: readonly CookThere[]): FigureTable {
  const celsius = (x: number) => ({ text: words.amount(x, looks.celsius) });
  return {
    caption: 'Each cook, the same moisture',
    head: ['water', 'as the probe shows it', 'then', 'set point', 'then', 'heat per kg charged', 'then', 'K/kPa there'],
    rows: cooks.map(({ component, moisture, indicated, setPoint, heat, perKilopascal }) => ({
      name: component,
      cells: [
        { text: percent(moisture, 2) },
        celsius(indicated.before),
        celsius(indicated.after),
        setPoint ? celsius(setPoint.before) : { text: '–' },
        setPoint ? celsius(setPoint.after) : { text: '–' },
        { text: `${n(heat.before / 1000, 0)} kJ` },
        { text: `${n(heat.after / 1000, 0)} kJ` },
        { text: n(perKilopascal, 2) },
      ],
    })),
  };
}

/** End temperature against pressure, at the moisture it has. */
function plate(engine: Engine, words: Words, cook: CookThere, there: number, width: number): Plate {
  const { from, session } = engine;
  const now = cook.pressure.before;
  const [low, high] = [Math.min(now, there, 30_000), Math.max(now, there, standardPressure(0))];
  const points = Array.from({ length: 25 }, (_, i) => {
    const pressure = low + ((high - low) * i) / 24;
    const [one] = cookElsewhere(from, session, { pressure, component: cook.component }).cooks;
    return [pressure / 100, words.shown(one!.indicated.after, looks.celsius)] as const;
  });
  const values = points.map(([, y]) => y);
  const drawn = curve({
    width,
    height: 300,
    x: [low / 100, high / 100],
    y: [Math.min(...values) - 2, Math.max(...values) + 4],
    points,
    band: points.map(([x, y]) => ({ x, lo: y - cook.uncertainty, hi: y + cook.uncertainty })),
    now: [now / 100, words.shown(cook.indicated.before, looks.celsius)],
    wanted: [there / 100, words.shown(cook.indicated.after, looks.celsius)],
    xLabel: 'absolute pressure, mbar',
    yLabel: `${cook.component}: end temperature as the probe shows it, ${words.unit(looks.celsius)}`,
    xTicks: [200, 400, 600, 800, 1000].filter((x) => x >= low / 100 && x <= high / 100),
    yTicks: [60, 80, 100, 120, 140]
      .map((t) => Math.round(words.shown(t, looks.celsius)))
      .filter((y) => y > Math.min(...values) && y < Math.max(...values)),
  });
  return {
    name: `End temperature of ${cook.component} against pressure at ${percent(cook.moisture, 2)} water`,
    marks: drawn.marks,
    width,
    height: drawn.height,
    caption: 'The band is the model’s own; it moves as a whole, so differences are better known than levels.',
  };
}
