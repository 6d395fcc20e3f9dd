import { map, type MapAxis, type WindowMap } from '@barwright/chain';
import { inWords, presentation, tidy } from '@barwright/line';
import { driven } from './solve.js';
import { openPlant, valueFor, type Opened, type PlantOptions } from '../plant.js';
import { Misused, type Out } from '../out.js';

interface MapOptions extends PlantOptions {
  readonly x: string;
  readonly y: string;
  readonly output?: readonly string[];
  readonly within?: readonly string[];
}

/** The window over two knobs: where every limit holds, and which one binds where it does not. */
export async function mapCommand(folder: string, options: MapOptions, out: Out): Promise<void> {
  const opened = [options.x, options.y].reduce((held, text) => driven(held, text.split(':')[0]!), await openPlant(folder, options));
  const drawn = map(opened.chain, opened.session, {
    x: axisOf(opened, '--x', options.x),
    y: axisOf(opened, '--y', options.y),
    outputs: options.output ?? [options.x.split(':')[0]!],
    within: Object.fromEntries((options.within ?? []).map((text) => limitOf(opened, text))),
  });
  if (options.json) out.json(asJson(opened, drawn));
  else print(opened, drawn, out);
}

/** 'caramel.water_activity=0.44:0.50' or ':0.50' as the ends of a window. */
function limitOf(opened: Opened, text: string): readonly [id: string, ends: { low?: number; high?: number }] {
  const cut = text.indexOf('=');
  const id = text.slice(0, cut).trim();
  const ends = text.slice(cut + 1).split(':');
  if (cut < 1 || ends.length !== 2)
    throw new Misused(`--within is "${text}"; write id=low:high, one end may be left out, such as caramel.water_activity=:0.50`);
  const [low, high] = ends.map((end) => (end.trim() === '' ? undefined : valueFor(opened, id, end)));
  return [id, { ...(low === undefined ? {} : { low }), ...(high === undefined ? {} : { high }) }];
}

function axisOf(opened: Opened, flag: string, text: string): MapAxis {
  const parts = text.split(':');
  const [id, low, high, steps] = parts;
  if (!id || parts.length === 2 || parts.length > 4)
    throw new Misused(`${flag} is "${text}"; write id:low:high or id:low:high:steps, such as caramel.moisture:8 %:11 %:25`);
  const count = steps === undefined ? undefined : Number(steps);
  if (count !== undefined && !(Number.isInteger(count) && count > 1 && count <= 200))
    throw new Misused(`${flag}: steps is "${steps}", but a whole number from 2 to 200 is expected`);
  return {
    id,
    ...(low === undefined || high === undefined ? {} : { low: valueFor(opened, id, low), high: valueFor(opened, id, high) }),
    ...(count === undefined ? {} : { steps: count }),
  };
}

function quantity(opened: Opened, id: string) {
  return opened.chain.quantities[opened.chain.index.get(id.replace(/\[.*\]$/, ''))!]!;
}

function asJson(opened: Opened, drawn: WindowMap): unknown {
  const values = (id: string, numbers: Float64Array) =>
    Array.from(numbers, (x) => tidy(presentation(quantity(opened, id), opened.units).toShown(x)));
  const side = (axis: WindowMap['x']) => ({
    id: axis.id,
    unit: presentation(quantity(opened, axis.id), opened.units).unit,
    values: values(axis.id, axis.values),
  });
  return {
    x: side(drawn.x),
    y: side(drawn.y),
    outputs: Object.fromEntries(
      Object.entries(drawn.outputs).map(([id, numbers]) => [
        id,
        { unit: presentation(quantity(opened, id), opened.units).unit, values: values(id, numbers) },
      ]),
    ),
    windows: drawn.windows.map((window) => ({ id: window.id, margin: Array.from(window.margin, tidy) })),
    holds: Array.from(drawn.holds, (cell) => (cell === 2 ? null : cell === 1)),
    binding: Array.from(drawn.binding, (index) => (index < 0 ? null : drawn.windows[index]!.id)),
    today: drawn.today,
  };
}

/** Letters stand for the limit that is broken; a dot where all hold; a ring where we are. */
function print(opened: Opened, drawn: WindowMap, out: Out): void {
  const { x, y } = drawn;
  const letters = 'abcdefghijklmnopqrstuvwxyz';
  const seen: number[] = [];
  const words = (id: string, value: number) => inWords(quantity(opened, id), value, opened.units);
  const nearest = (axis: Float64Array, value: number) =>
    axis.reduce((best, at, i) => (Math.abs(at - value) < Math.abs(axis[best]! - value) ? i : best), 0);
  const [column, row] = [nearest(x.values, drawn.today.x), nearest(y.values, drawn.today.y)];
  out.line(out.style.strong(`${quantity(opened, y.id).meaning} upwards, ${quantity(opened, x.id).meaning} to the right`));
  for (let j = y.values.length - 1; j >= 0; j--) {
    let line = '';
    for (let i = 0; i < x.values.length; i++) {
      const cell = j * x.values.length + i;
      const binds = drawn.binding[cell]!;
      let mark = '·';
      if (drawn.holds[cell] !== 1) {
        if (!seen.includes(binds)) seen.push(binds);
        mark = drawn.holds[cell] === 2 ? '?' : (letters[seen.indexOf(binds)] ?? '*');
      }
      line += i === column && j === row ? (drawn.holds[cell] === 1 ? 'o' : mark.toUpperCase()) : mark;
    }
    const label = j === y.values.length - 1 || j === 0 ? words(y.id, y.values[j]!) : '';
    out.line(`  ${line}  ${label}`);
  }
  out.line(
    `  ${words(x.id, x.values[0]!)}${' '.repeat(Math.max(1, x.values.length - words(x.id, x.values[0]!).length - words(x.id, x.values.at(-1)!).length))}${words(x.id, x.values.at(-1)!)}`,
  );
  out.line();
  out.line(
    `  ·  every limit holds     o  today (${words(x.id, drawn.today.x)}, ${words(y.id, drawn.today.y)}); a capital letter where today a limit is broken`,
  );
  seen.forEach((index, i) => {
    if (index < 0) return;
    const broken = quantity(opened, drawn.windows[index]!.id);
    out.line(`  ${letters[i] ?? '*'}  ${broken.meaning} (${broken.window?.reason ?? 'asked for'})`);
  });
}
