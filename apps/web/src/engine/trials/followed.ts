import {
  affected,
  affectedWords,
  dayLogs,
  holdCautions,
  howWords,
  logsUntil,
  openWords,
  setWords,
  type Affected,
  type Asking,
  type DayFile,
  type DayLogs,
  type Pallet,
} from '@barwright/day';
import { followed as drawFollowed, type FollowedPallet } from '@barwright/drawing';
import type { Engine } from '../engine.js';
import type { FigureTable, Plate, Said } from '../trial-protocol.js';
import { clockTicks } from './clock-ticks.js';
import { filesOf, namesMachines, type HeldFile } from './files.js';
import { capital, cautions, n, saying } from './words.js';

/** Which bars and pallets an answer is about, as parts of its sheet. */
export interface FollowedParts {
  /** For under the title. */
  readonly sub?: string;
  readonly plates: readonly Plate[];
  readonly tables: readonly FigureTable[];
  readonly said: readonly Said[];
}

/** Windows that are drawn: more of them would be no picture. */
const mostRows = 6;

const nothing: FollowedParts = { plates: [], tables: [], said: [] };

/** Counts, pallets and stops that belong beside a log: brought by hand first, then those of its day. */
export function logsBeside(file: HeldFile): DayLogs {
  const one = (kind: 'counts' | 'pallets' | 'stops'): DayFile | undefined => {
    const candidates = filesOf(kind).filter(({ day }) => day === undefined || day === (file.day ?? dayOf(file)));
    // Several tables have a start and an end; stops name a machine.
    const found = kind === 'stops' ? candidates.find(({ cells }) => namesMachines(cells)) : candidates[0];
    return found && { name: found.name, rows: found.cells };
  };
  const [flow, pallets, stops] = [one('counts'), one('pallets'), one('stops')];
  return dayLogs({ ...(flow ? { flow } : {}), ...(pallets ? { pallets } : {}), ...(stops ? { stops } : {}) });
}

/** The day that most lines of a log brought by hand begin with, where they carry dates. */
function dayOf({ cells }: HeldFile): string | undefined {
  const counts = new Map<string, number>();
  for (const row of cells.slice(0, 400))
    for (const cell of row) {
      const found = /^\d{4}-\d{2}-\d{2}/.exec(cell)?.[0];
      if (found) counts.set(found, (counts.get(found) ?? 0) + 1);
    }
  return [...counts].sort((a, b) => b[1] - a[1])[0]?.[0];
}

/**
 * The windows of an answer followed to the pallets: sentence, drawing, table, reasons, cautions. A line that cannot be followed says why.
 * @param until - as one stood there at a time, s
 */
export function followedParts(engine: Engine, asking: Asking, logs: DayLogs, width: number, until?: number): FollowedParts {
  const { windows, cannotTell, said } = asking;
  const open = (list: readonly string[]): readonly Said[] => saying('Which bars and pallets', list);
  if (windows.length === 0) return cannotTell.length > 0 ? { ...nothing, said: open(cannotTell) } : nothing;
  let answer: Affected;
  try {
    answer = affected(engine.from, engine.session, until === undefined ? logs : logsUntil(logs, until), windows);
  } catch (error) {
    const { code, message } = error as { code?: string; message: string };
    if (code === undefined) throw error;
    return { ...nothing, said: open([...cannotTell, `Which bars and pallets cannot be told: ${message}.`]) };
  }
  return {
    sub: capital(setWords(answer, answer.proven)).replace(/\.$/, ''),
    plates: [plate(answer, width)],
    tables: palletTable(answer),
    said: [
      ...open([...affectedWords(answer), ...openWords(answer), ...cannotTell]),
      ...saying('How the bars were found', [...said, ...howWords(answer)]),
      ...cautions(holdCautions).map((mind) => ({ ...mind, title: 'Mind the hold' })),
    ],
  };
}

function plate(answer: Affected, width: number): Plate {
  const { windows, logs, words, end } = answer;
  const [from, to] = reach(answer);
  const seconds = Float64Array.of(from, to);
  const rows = windows.slice(0, mostRows).map(({ place, here, packed, safeHere, safePacked }, at) => ({
    id: `window ${at}`,
    name: place.done,
    here,
    packed,
    safeHere,
    safePacked,
    ends: [clockOf(words(here.from)), clockOf(words(here.to))] as const,
  }));
  const drawn = drawFollowed({
    width,
    x: [from, to],
    ticks: clockTicks({ seconds, words: (s) => clockOf(words(s)), said: [], calendar: true }, width),
    rows,
    pallets: tilesOf(answer, from, to),
    ...(end === undefined ? {} : { known: end }),
    none: logs.pallets ? 'no pallet at that time' : 'no log of pallets',
  });
  const waits = windows.some(({ safePacked, packed }) => safePacked.from < packed.from || safePacked.to > packed.to);
  return {
    name: `From ${[...new Set(rows.map(({ name }) => name))].join(' and ')} to the pallets: ${setWords(answer, answer.proven)}`,
    marks: drawn.marks,
    width: drawn.width,
    height: drawn.height,
    caption: `Above, the time at the station; below, pallets by the time they were packed, on one clock. A strand ties bars to where they lie.${waits ? ' Dashed and hatched: only to be safe.' : ''}${windows.length > mostRows ? ` The first ${mostRows} of ${windows.length} windows are drawn.` : ''}`,
  };
}

/** '17 Mar 13:05' as '13:05': the hours stand on the axis, the day in the sentence. */
const clockOf = (text: string): string => /\d\d:\d\d.*$/.exec(text)?.[0] ?? text;

/** The windows and a little more on each side, not far beyond the logs. */
function reach({ windows, end }: Affected): readonly [from: number, to: number] {
  const from = Math.min(...windows.map(({ safeHere }) => safeHere.from));
  const last = Math.max(...windows.map(({ safePacked }) => safePacked.to));
  const certain = Math.max(...windows.map(({ packed }) => packed.to));
  const to = Math.max(certain, end === undefined ? last : Math.min(last, end));
  const room = Math.max(1800, (to - from) / 7);
  return [from - room, to + room];
}

function tilesOf({ logs, proven, safe, end }: Affected, from: number, to: number): readonly FollowedPallet[] {
  const sure = new Set(proven.pallets?.pallets);
  const maybe = new Set(safe.pallets?.pallets);
  return (logs.pallets?.pallets ?? []).flatMap((pallet): FollowedPallet[] => {
    const open = Number.isNaN(pallet.last);
    const [first, last] = [pallet.first, open ? (end ?? pallet.first) : pallet.last];
    if (!(last >= first) || last < from || first > to) return [];
    const touched = sure.has(pallet) ? 'proven' : maybe.has(pallet) ? 'safe' : 'no';
    return [{ id: pallet.name, name: pallet.name, from: first, to: last, touched, ...(open ? { open } : {}) }];
  });
}

function palletTable({ proven, safe, words }: Affected): readonly FigureTable[] {
  const list = safe.pallets?.pallets ?? [];
  if (list.length === 0) return [];
  const sure = new Set<Pallet>(proven.pallets?.pallets);
  return [
    {
      caption: 'Pallets to hold: those touched for certain, and more to be safe',
      head: ['first pack', 'last pack', 'bars', 'status', 'set'],
      words: [3, 4],
      rows: list.map((pallet) => ({
        name: pallet.name,
        cells: [
          { text: Number.isFinite(pallet.first) ? words(pallet.first) : '–' },
          { text: Number.isFinite(pallet.last) ? words(pallet.last) : 'open' },
          { text: Number.isFinite(pallet.bars) ? n(pallet.bars, 0) : '–' },
          { text: pallet.status },
          { text: sure.has(pallet) ? 'for certain' : 'to be safe' },
        ],
      })),
    },
  ];
}
