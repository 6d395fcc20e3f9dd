import { lanes } from '@barwright/drawing';
import type { LanesAnswer, LanesRound } from '@barwright/line';
import type { FigureTable, Plate } from '../trial-protocol.js';
import { looks, n, span, type Words } from './words.js';

const { gram } = looks;

/** 'The far side carried too much chocolate …': the longest run of rounds with a step in the coat. */
export function laneWords(words: Words, { rounds, runs }: LanesAnswer): string {
  const [run] = runs;
  if (!run) return `No step of the coat across the lanes stands in ${rounds.length} rounds of weighing.`;
  const first = rounds[run.from]!;
  const last = rounds[run.to]!;
  const step = first.step!;
  const far = step.coat > 0;
  const lanesWords = far ? `lanes ${step.after + 1}–${first.lanes.at(-1)!}` : `lanes ${first.lanes[0]!}–${step.after}`;
  const when = run.from === run.to ? `at ${first.time}` : `from ${span(first.time, last.time)}`;
  return `${far ? 'The far side' : 'The near side'} carried too much chocolate ${when}: ${words.amount(Math.abs(step.coat), gram)} more in ${lanesWords}.`;
}

/** Whose step it is: the centres say. */
export function laneCause(words: Words, { rounds, runs }: LanesAnswer): string {
  const step = runs[0] && rounds[runs[0].from]!.step;
  if (!step) return 'What differs between near and far side in the coat alone is the enrober’s; none stands';
  return `Centres differ by ${words.amount(Math.abs(step.centre), gram)} there, so it is the coat (95 % limits ${n(words.shown(Math.min(Math.abs(step.low), Math.abs(step.high)), gram), 1)} to ${n(words.shown(Math.max(Math.abs(step.low), Math.abs(step.high)), gram), 1)}): look at the blower nozzle and the pan level of the ${step.coat > 0 ? 'far' : 'near'} side, then at temper`;
}

/** Coat of one round lane by lane, away from the aim. */
export function lanesPlate(words: Words, answer: LanesAnswer, round: LanesRound, width: number): Plate {
  const { window, aim } = answer;
  const away = (mass: number) => words.shown(mass, gram) - words.shown(aim, gram);
  const half = Math.max(away(window.high), -away(window.low));
  const machines = groupsOf(round);
  const guilty = (from: number, to: number) => {
    const { step } = round;
    if (step?.carriedBy !== 'coat') return false;
    const middle = round.lanes[Math.floor((from + to) / 2)]!;
    return step.coat > 0 ? middle > step.after : middle <= step.after;
  };
  const drawn = lanes({
    width,
    height: 190,
    values: round.coat.map((mass) => (Number.isFinite(mass) ? away(mass) : undefined)),
    material: 'milk-chocolate',
    hairs: half,
    hairText: [`+${n(half, 1)}`, `−${n(half, 1)}`],
    targetText: n(words.shown(aim, gram), 1),
    outside: round.outside.map((lane) => {
      const at = round.lanes.indexOf(lane);
      return { lane: at, text: n(words.shown(round.coat[at]!, gram), 1) };
    }),
    ...(machines.length > 0 ? { groups: machines.map(({ from, to, text }) => ({ from, to, text, guilty: guilty(from, to) })) } : {}),
  });
  return {
    name: `Coat lane by lane at ${round.time}, ${words.unit(gram)} away from ${words.amount(aim, gram)}`,
    marks: drawn.marks,
    width: drawn.width,
    height: drawn.height,
    caption: `Coat by lane at ${round.time}, finished less centre, ${words.unit(gram)} away from the aim; one bar each. Lane ${round.lanes[0]!} is the near side.`,
  };
}

/** Neighbouring lanes of one machine. */
function groupsOf({
  machine,
  lanes: numbers,
}: LanesRound): readonly { readonly from: number; readonly to: number; readonly text: string }[] {
  if (!machine) return [];
  const groups: { from: number; to: number; name: string }[] = [];
  machine.forEach((name, at) => {
    const last = groups.at(-1);
    if (last?.name === name) last.to = at;
    else groups.push({ from: at, to: at, name });
  });
  return groups.map(({ from, to, name }) => ({
    from,
    to,
    text: `${/\D/.test(name) ? name : `wrapper ${name}`}, lanes ${numbers[from]!}–${numbers[to]!}`,
  }));
}

export function roundsTable(words: Words, { rounds, window, aim }: LanesAnswer): FigureTable {
  return {
    caption: `Coat of every round, window ${words.range(window.low, window.high, gram)} ${words.unit(gram)}, aim ${words.amount(aim, gram)}`,
    head: ['mean', 'σ', 'bars outside', 'step', 'carried by'],
    words: [4],
    rows: rounds.map(({ time, mean, sd, outside, step, reason }) => ({
      name: time || 'round',
      cells: [
        { text: Number.isFinite(mean) ? words.amount(mean, { ...gram, decimals: 2 }) : '–' },
        { text: Number.isFinite(sd) ? words.amount(sd, { ...gram, decimals: 2 }) : '–' },
        {
          text:
            outside.length === 0
              ? '0'
              : `${outside.length}: ${outside.length > 4 ? `${outside.slice(0, 4).join(', ')} …` : outside.join(', ')}`,
        },
        {
          text: step ? `${n(words.shown(step.coat, gram), 2)} after lane ${step.after}` : 'none that stands',
          act: step?.carriedBy === 'coat',
        },
        { text: reason ?? (step ? step.carriedBy : '') },
      ],
    })),
  };
}
