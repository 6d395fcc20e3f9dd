import { enroberTask, type EnroberAnswer } from '@barwright/line';
import { coatOfBar, footWidth, lateDrainage, tailLength, type CoatTask } from '@barwright/science';
import type { Engine } from '../engine.js';
import type { FigureTable } from '../trial-protocol.js';
import { looks, n, type Words } from './words.js';

/** What the science takes where nobody measured: from memory, told on the screen. */
const usual = { threadRadius: 0.001, surfaceTension: 0.03, late: 20 };

interface Defect {
  readonly foot: number;
  readonly breaks: boolean;
  readonly breakTime: number;
}

export interface Defects {
  readonly before: Defect;
  readonly after: Defect;
  /** Yield value above which a thread never breaks by itself, Pa. */
  readonly neverAbove: number;
  readonly said: readonly string[];
}

/** Feet and tails as film theory expects them, as entered and as asked, with what causes them. */
export function defectsOf(
  { from, session }: Engine,
  given: {
    readonly yield: number | undefined;
    readonly plastic: number | undefined;
    readonly blower: number | undefined;
    readonly shaker: number | undefined;
  },
  { before, after }: EnroberAnswer,
): Defects {
  const task = enroberTask(from, session)!;
  const asked: CoatTask = {
    ...task,
    ...(given.yield === undefined ? {} : { yieldValue: given.yield }),
    ...(given.plastic === undefined ? {} : { plasticViscosity: given.plastic }),
    ...(given.blower === undefined ? {} : { blowerSpeed: given.blower }),
    ...(given.shaker === undefined ? {} : { shakerFrequency: given.shaker / 60 }),
  };
  const neverAbove = usual.surfaceTension / usual.threadRadius / Math.sqrt(3);
  const [was, is] = [defectOf(task), defectOf(asked)];
  const said = [footCause(was, is, task, asked), tailCause(was, is, task, asked, neverAbove)];
  if (after.mass > before.mass * 1.02 && is.foot > was.foot)
    said.push('More coat on the sides drains on after the mesh: both come from the same flow.');
  said.push(
    `Taken from memory: a thread of ${n(2000 * usual.threadRadius, 0)} mm, surface tension ${n(1000 * usual.surfaceTension, 0)} mN/m, ${usual.late} s of draining on the closed belt. Not validated against bars: compare, do not measure by it.`,
  );
  return { before: was, after: is, neverAbove, said };
}

function defectOf(task: CoatTask): Defect {
  const { breaks, breakTime } = tailLength(
    usual.threadRadius,
    task.beltSpeed,
    task.yieldValue,
    task.plasticViscosity,
    usual.surfaceTension,
  );
  return { foot: footWidth(lateDrainage(task, usual.late), Math.max(task.yieldValue, 1e-6), task.density), breaks, breakTime };
}

function footCause(was: Defect, is: Defect, task: CoatTask, asked: CoatTask): string {
  if (is.foot < 1e-5) return `No foot is expected: the yield value of ${n(asked.yieldValue, 1)} Pa holds the coat on the sides.`;
  const change = was.foot > 1e-6 ? is.foot / was.foot - 1 : 0;
  const why =
    asked.yieldValue < task.yieldValue
      ? 'the lower yield value lets more run down and spread'
      : asked.yieldValue > task.yieldValue
        ? 'the higher yield value holds it'
        : coatOfBar(asked).side > coatOfBar(task).side
          ? 'more is left on the sides'
          : 'what is left on the sides still drains after the mesh';
  return `Feet come from the sides draining on after the mesh: ${Math.abs(change) < 0.02 ? 'as wide as now' : `${n(100 * Math.abs(change), 0)} % ${change > 0 ? 'wider' : 'narrower'} than now`}; ${why}.`;
}

function tailCause(was: Defect, is: Defect, task: CoatTask, asked: CoatTask, neverAbove: number): string {
  if (!is.breaks)
    return `Tails: at ${n(asked.yieldValue, 1)} Pa a thread never breaks by itself, since its yield value beats its surface tension above ${n(neverAbove, 1)} Pa. Lower the yield value, or lick the threads off.`;
  const ratio = is.breakTime / was.breakTime;
  const why =
    asked.yieldValue > task.yieldValue
      ? 'higher yield value'
      : asked.plasticViscosity > task.plasticViscosity
        ? 'thicker flow'
        : asked.yieldValue < task.yieldValue
          ? 'lower yield value'
          : 'thinner flow';
  if (!was.breaks || Math.abs(ratio - 1) < 0.02)
    return `Tails are threads that take their time to break: plastic viscosity draws them out, yield value keeps them, and above ${n(neverAbove, 1)} Pa they never break by themselves.`;
  return `Tails: threads break ${n(ratio > 1 ? ratio : 1 / ratio, 1)} times as ${ratio > 1 ? 'late' : 'soon'} as now, from the ${why}; above ${n(neverAbove, 1)} Pa they never break by themselves.`;
}

export function defectsTable(words: Words, { before, after }: Defects): FigureTable {
  const tail = ({ breaks, breakTime }: Defect) => (breaks ? `${n(breakTime, 1)} s` : 'never');
  return {
    caption: 'Tails and feet, computed; directions are safe, sizes are not',
    head: ['as entered', 'as asked'],
    rows: [
      { name: 'width of the foot', cells: [before, after].map(({ foot }) => words.cell(foot, { ...looks.millimetre, decimals: 1 })) },
      { name: 'a thread breaks by itself after', cells: [before, after].map((of) => ({ text: tail(of), act: !of.breaks })) },
    ],
  };
}
