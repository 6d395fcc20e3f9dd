import { solve, type Solution } from '@barwright/chain';
import { componentsOf } from '@barwright/bar';
import { drivenByTemperature, inWords, presentation, tidy, windowInWords } from '@barwright/line';
import { assignment, openPlant, valueFor, type Opened, type PlantOptions } from '../plant.js';
import { Misused, Refused, type Out } from '../out.js';
import { table } from '../text.js';

interface SolveOptions extends PlantOptions {
  readonly target: string;
  readonly knob: string;
  readonly low?: string;
  readonly high?: string;
}

/** What must this knob be for that result? */
export async function solveCommand(folder: string, options: SolveOptions, out: Out): Promise<void> {
  if (!options.target || !options.knob)
    throw new Misused('Name a target and a knob: --target caramel.water_activity=0.54 --knob caramel.cook_temperature');
  const opened = driven(await openPlant(folder, options), options.knob);
  const [target, value] = assignment(opened, options.target);
  const range = rangeFor(opened, options);
  const solution = solve(opened.chain, opened.session, { target, value, knob: options.knob, ...range });
  if (options.json) out.json(solutionJson(opened, solution));
  else printSolution(opened, solution, out);
  if (!solution.found) throw new Refused(options.json ? '' : `No answer: ${solution.reason}`);
}

/** A cook temperature can be the knob although the chain computes it from the moisture: then the cook is driven by temperature. */
export function driven(opened: Opened, knob: string): Opened {
  const component = componentsOf(opened.plant, opened.bar).find((other) => knob === `${other.slug}.cook_temperature`);
  if (!component || opened.session.origin(knob) !== 'computed') return opened;
  const { from, session } = drivenByTemperature(opened, opened.session, [component]);
  return { ...opened, ...from, session };
}

function rangeFor(opened: Opened, options: SolveOptions): { low?: number; high?: number } {
  const index = opened.chain.index.get(options.knob.replace(/\[.*\]$/, ''));
  if (index === undefined)
    throw new Refused(`There is no quantity "${options.knob}" to turn; list them with: barwright quantities <plant folder>`);
  const window = opened.chain.quantities[index]!.window;
  const now = opened.session.number(options.knob);
  const temperature = opened.chain.quantities[index]!.unit === '°C';
  const span = temperature ? 25 : 0.5 * Math.abs(now);
  const low =
    options.low === undefined
      ? window?.low !== undefined && window.high !== undefined
        ? undefined
        : now - span
      : valueFor(opened, options.knob, options.low);
  const high =
    options.high === undefined
      ? window?.low !== undefined && window.high !== undefined
        ? undefined
        : now + span
      : valueFor(opened, options.knob, options.high);
  return { ...(low === undefined ? {} : { low }), ...(high === undefined ? {} : { high }) };
}

function solutionJson(opened: Opened, solution: Solution): unknown {
  const shown = (id: string, x: number) =>
    tidy(presentation(opened.chain.quantities[opened.chain.index.get(id)!]!, opened.units).toShown(x));
  const unit = (id: string) => presentation(opened.chain.quantities[opened.chain.index.get(id)!]!, opened.units).unit;
  const asked = {
    found: solution.found,
    target: solution.target,
    value: shown(solution.target, solution.value),
    unit: unit(solution.target),
    knob: solution.knob,
    knob_unit: unit(solution.knob),
    knob_now: shown(solution.knob, solution.knobNow),
    range: [shown(solution.knob, solution.low), shown(solution.knob, solution.high)],
    iterations: solution.iterations,
  };
  if (!solution.found) {
    const nearest = solution.nearest && {
      knob_value: shown(solution.knob, solution.nearest.knobValue),
      reached: shown(solution.target, solution.nearest.reached),
    };
    return { ...asked, code: solution.code, reason: solution.reason, nearest };
  }
  return {
    ...asked,
    knob_value: shown(solution.knob, solution.knobValue),
    reached: shown(solution.target, solution.reached),
    side_effects: solution.sideEffects.map(({ id, before, after, relative, breaks }) => ({
      id,
      before: plain(before),
      after: plain(after),
      relative: Number.isFinite(relative) ? relative : null,
      ...(breaks ? { breaks_window: true } : {}),
    })),
    broken_windows: solution.broken.map(({ id }) => id),
  };
}

function plain(value: number | Float64Array): number | number[] {
  return typeof value === 'number' ? tidy(value) : Array.from(value, tidy);
}

function printSolution(opened: Opened, solution: Solution, out: Out): void {
  const quantity = (id: string) => opened.chain.quantities[opened.chain.index.get(id)!]!;
  const words = (id: string, x: number) => inWords(quantity(id), x, opened.units);
  if (!solution.found) return;
  const { knob, target } = solution;
  out.line(out.style.strong(`Set ${quantity(knob).meaning} to ${words(knob, solution.knobValue)} (now ${words(knob, solution.knobNow)}).`));
  out.line(`Then ${quantity(target).meaning} is ${words(target, solution.reached)} (now ${words(target, solution.targetNow)}).`);
  const effects = solution.sideEffects
    .filter((effect) => typeof effect.after === 'number' && !/\.stage\.|^need\.|^flow\.|^order\./.test(effect.id))
    .slice(0, 16);
  if (effects.length > 0) {
    out.line();
    out.line(out.style.strong('Side effects, most changed first'));
    const rows = effects.map(({ id, quantity: q, before, after, breaks }) => [
      `  ${q.meaning}`,
      inWords(q, before, opened.units),
      '→',
      inWords(q, after, opened.units),
      breaks ? out.style.act('outside its window') : windowInWords(q, opened.units),
      out.style.faint(id),
    ]);
    for (const line of table(rows, [false, true])) out.line(line);
  }
  if (solution.broken.length > 0) {
    out.line();
    for (const { id } of solution.broken)
      out.line(`${out.style.act('outside:')} ${quantity(id).meaning}, ${windowInWords(quantity(id), opened.units)}`);
  }
  out.line();
  out.line('Barwright advises; it sets nothing on a machine.');
}
