import { access, readdir } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import {
  affected,
  affectedWords,
  barWords,
  dayLogs,
  holdCautions,
  howWords,
  openWords,
  type Affected,
  type AffectedSet,
  type Asking,
  type Counted,
  type DayFile,
  type DayLogs,
} from '@barwright/day';
import { NotOnLine, tableKind } from '@barwright/line';
import type { Opened } from './plant.js';
import { Refused, type Out } from './out.js';
import { readRows, whyUnread } from './rows.js';
import { n, section, sentences } from './say.js';
import { table } from './text.js';

/** Which logs lie beside; those that are not named are looked for under their usual names. */
export interface BesideOptions {
  readonly counts?: string;
  readonly pallets?: string;
  readonly stops?: string;
  readonly alone?: boolean;
}

type Part = 'flow' | 'pallets' | 'stops';
const usual: Readonly<Record<Part, string>> = { flow: 'flow_5min.csv', pallets: 'pallets.csv', stops: 'stops.csv' };

/** Counts, pallets and stops that lie beside a log. */
export async function logsBeside(log: string, options: BesideOptions): Promise<DayLogs> {
  const named: Partial<Record<Part, string>> = namedIn(options);
  const files: Partial<Record<Part, DayFile>> = {};
  for (const part of Object.keys(usual) as Part[]) {
    const path = named[part] ?? (options.alone ? undefined : await existing(join(dirname(log), usual[part])));
    if (path !== undefined) files[part] = await readRows(path);
  }
  return dayLogs(files);
}

/** Counts, pallets and stops of a folder of a day: by their usual names, else by their headings. @throws Refused */
export async function logsOfDay(folder: string, options: BesideOptions): Promise<DayLogs> {
  let names: string[];
  try {
    names = (await readdir(folder)).filter((name) => /\.(csv|tsv|txt|xlsx)$/i.test(name)).sort();
  } catch (error) {
    throw new Refused(whyUnread(folder, error, 'folder', 'give the folder with the logs of one day'));
  }
  const named: Partial<Record<Part, string>> = namedIn(options);
  const files: Partial<Record<Part, DayFile>> = {};
  for (const part of Object.keys(usual) as Part[]) {
    const path = named[part] ?? (names.includes(usual[part]) ? join(folder, usual[part]) : undefined);
    if (path !== undefined) files[part] = await readRows(path);
  }
  const open = (Object.keys(usual) as Part[]).filter((part) => !files[part]);
  if (open.length > 0)
    for (const name of names) {
      const file = await readRows(join(folder, name)).catch(() => undefined);
      const part = file && partOf(file);
      if (part && open.includes(part) && !files[part]) files[part] = file;
    }
  return dayLogs(files);
}

function partOf({ name, rows }: DayFile): Part | undefined {
  try {
    const kind = tableKind(rows, name);
    // Several tables have a start and an end; stops name a machine.
    if (kind === 'stops') return rows.some((row) => row.some((cell) => /machine|station/i.test(cell))) ? 'stops' : undefined;
    return kind === 'counts' ? 'flow' : kind === 'pallets' ? 'pallets' : undefined;
  } catch {
    return undefined;
  }
}

const namedIn = ({ counts, pallets, stops }: BesideOptions) => ({
  ...(counts === undefined ? {} : { flow: counts }),
  ...(pallets === undefined ? {} : { pallets }),
  ...(stops === undefined ? {} : { stops }),
});

const existing = (path: string): Promise<string | undefined> =>
  access(path).then(
    () => path,
    () => undefined,
  );

/** What another answer asks about, followed to the pallets; undefined where it asks about no bars. A line that cannot be followed is told. */
export function follow(opened: Opened, logs: DayLogs, asking: Asking): { readonly answer?: Affected; readonly asking: Asking } | undefined {
  if (asking.windows.length === 0) return asking.cannotTell.length > 0 ? { asking } : undefined;
  try {
    return { answer: affected(opened, opened.session, logs, asking.windows), asking };
  } catch (error) {
    if (!(error instanceof NotOnLine) && (error as { code?: unknown }).code !== 'NO_WINDOW') throw error;
    return {
      asking: { ...asking, cannotTell: [...asking.cannotTell, `Which bars and pallets cannot be told: ${(error as Error).message}.`] },
    };
  }
}

export function printFollowed(followed: ReturnType<typeof follow>, out: Out, title = 'Which bars and pallets'): void {
  if (!followed) return;
  const { answer, asking } = followed;
  section(out, title, [...(answer ? affectedWords(answer) : []), ...(answer ? openWords(answer) : []), ...asking.cannotTell]);
  if (answer) printPallets(answer, out);
  section(out, 'How the bars were found', [...asking.said, ...(answer ? howWords(answer) : [])]);
  section(out, 'Mind the hold', holdCautions);
}

function printPallets({ safe, proven, words }: Affected, out: Out): void {
  const list = safe.pallets?.pallets ?? [];
  if (list.length === 0) return;
  const sure = new Set(proven.pallets?.pallets.map(({ name }) => name));
  // A long list is what --json is for; a person reads its ends.
  const shown = list.length > 24 ? [...list.slice(0, 11), undefined, ...list.slice(-2)] : list;
  const rows = [['', 'first pack', 'last pack', 'bars', 'status', ''].map((cell) => out.style.faint(cell))];
  for (const pallet of shown)
    rows.push(
      pallet
        ? [
            `  ${pallet.name}`,
            Number.isFinite(pallet.first) ? words(pallet.first) : '–',
            Number.isFinite(pallet.last) ? words(pallet.last) : 'open',
            Number.isFinite(pallet.bars) ? n(pallet.bars, 0) : '–',
            pallet.status,
            sure.has(pallet.name) ? 'for certain' : 'to be safe',
          ]
        : ['  …', '', '', '', '', ''],
    );
  out.line();
  for (const line of table(rows, [false, true, true, true])) out.line(line);
}

export function followedJson(followed: ReturnType<typeof follow>): unknown {
  if (!followed) return null;
  const { answer, asking } = followed;
  return {
    ...(answer ? answerJson(answer) : { windows: [], for_certain: null, to_be_safe: null }),
    cannot_tell: [...(answer ? openWords(answer) : []), ...asking.cannotTell],
    how: [...asking.said, ...(answer ? howWords(answer) : [])],
    cautions: holdCautions,
  };
}

function answerJson(answer: Affected): object {
  const { windows, proven, safe, twice, words, logs, end } = answer;
  const span = ({ from, to }: { readonly from: number; readonly to: number }) => [words(from), words(to)];
  const bars = (counted: Counted | undefined) =>
    counted
      ? {
          value: Math.round(counted.value),
          least: Math.round(counted.low),
          most: Math.round(counted.high),
          missing: counted.missing.map(span),
          words: barWords(counted, end),
        }
      : null;
  const set = (one: AffectedSet) => ({
    packed: one.packed.map(span),
    bars: bars(one.bars),
    by_wrapper: one.byWrapper.map(({ wrapper, bars: counted }) => ({ wrapper, bars: bars(counted) })),
    not_packed_yet: bars(one.onTheWay),
    pallets: one.pallets?.pallets.map(({ name }) => name) ?? null,
    bars_on_pallets: one.pallets?.bars ?? null,
    pallets_without_times: one.pallets?.unsure.map(({ name }) => name) ?? null,
    on_no_pallet: one.loose.map(({ from, to, bars: count }) => ({ packed: span({ from, to }), at_least: Math.round(count) })),
  });
  return {
    windows: windows.map(({ place, what, here, packed, safeHere, safePacked, bars: own }) => ({
      at: place.name,
      what: what ?? null,
      window: span(here),
      packed: span(packed),
      window_to_be_safe: span(safeHere),
      packed_to_be_safe: span(safePacked),
      bars: bars(own),
    })),
    for_certain: set(proven),
    to_be_safe: set(safe),
    counted_once: twice === undefined ? 0 : Math.round(twice),
    beside: logs.used,
  };
}

/** The answer of the command that asks for windows alone. */
export function printAffected(answer: Affected, out: Out): void {
  const [first, ...rest] = affectedWords(answer);
  out.line(out.style.strong(first!));
  sentences(out, [...rest, ...openWords(answer)]);
  printPallets(answer, out);
  section(out, 'How the bars were found', howWords(answer));
  section(out, 'Mind', holdCautions);
}
