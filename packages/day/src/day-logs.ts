import { stopsTable, type Stop } from '@barwright/line';
import { flowLog, type FlowLog } from './flow-log.js';
import { palletLog, type PalletLog } from './pallet-log.js';

/** Logs of a day that tell which bars and pallets a window touches; what is not there is left out. */
export interface DayLogs {
  readonly flow?: FlowLog;
  readonly pallets?: PalletLog;
  readonly stops?: readonly Stop[];
  /** Names of the files that were read. */
  readonly used: readonly string[];
  /** Why a file was not read, by what it would have told. */
  readonly unread: Readonly<Partial<Record<'flow' | 'pallets' | 'stops', string>>>;
}

export interface DayFile {
  readonly name: string;
  readonly rows: readonly (readonly string[])[];
}

/** Reads what there is. A file that cannot be read leaves its part open, with the reason: it never counts as empty. */
export function dayLogs(files: { readonly flow?: DayFile; readonly pallets?: DayFile; readonly stops?: DayFile }): DayLogs {
  const used: string[] = [];
  const unread: { flow?: string; pallets?: string; stops?: string } = {};
  const read = <T>(key: 'flow' | 'pallets' | 'stops', as: (rows: DayFile['rows'], name: string) => T): T | undefined => {
    const file = files[key];
    if (!file) return undefined;
    try {
      const log = as(file.rows, file.name);
      used.push(file.name);
      return log;
    } catch (error) {
      if ((error as { code?: unknown }).code === undefined) throw error;
      unread[key] = (error as Error).message;
      return undefined;
    }
  };
  const flow = read('flow', flowLog);
  const pallets = read('pallets', palletLog);
  const stops = read('stops', stopsTable);
  const begins = flow?.start[0];
  const onto = <T>(list: readonly T[], times: (one: T) => readonly number[], later: (one: T, by: number) => T): readonly T[] => {
    const by = begins === undefined ? 0 : daysLater(list.flatMap(times), begins);
    return by === 0 ? list : list.map((one) => later(one, by));
  };
  const list = pallets && {
    ...pallets,
    pallets: onto(
      pallets.pallets,
      ({ first, last }) => [first, last],
      (pallet, by) => ({ ...pallet, first: pallet.first + by, last: pallet.last + by }),
    ),
  };
  const stood =
    stops &&
    onto(
      stops,
      ({ from, to }) => [from, to],
      (stop, by) => ({ ...stop, from: stop.from + by, to: stop.to + by }),
    );
  return { ...(flow ? { flow } : {}), ...(list ? { pallets: list } : {}), ...(stood ? { stops: stood } : {}), used, unread };
}

/** A clock with dates counts from 1970, one without from its first midnight: the two cannot be laid side by side. */
export const hasDates = (seconds: number): boolean => Math.abs(seconds) > 5e8;

/**
 * What brings times of day without dates onto the day of another log: a list that begins after midnight lies before a log that began the evening
 * before, until it is moved by a day. @returns s
 */
export function daysLater(times: readonly number[], begins: number): number {
  const last = times.reduce((most, time) => (time > most ? time : most), -Infinity);
  return !hasDates(begins) && !hasDates(last) && last < begins && begins - last < 86_400 ? 86_400 : 0;
}

/** The logs as one stood there at a time: whole intervals until then, pallets begun until then, those not yet full still open. */
export function logsUntil(logs: DayLogs, time: number): DayLogs {
  const { flow, pallets, stops } = logs;
  const intervals = flow ? Array.from(flow.start.keys()).filter((i) => flow.start[i]! + flow.length[i]! <= time).length : 0;
  const first = (values: Float64Array) => values.subarray(0, intervals);
  return {
    ...logs,
    ...(flow && {
      flow: {
        ...flow,
        start: first(flow.start),
        length: first(flow.length),
        ...(flow.cut ? { cut: first(flow.cut) } : {}),
        packs: flow.packs.map(({ wrapper, packs }) => ({ wrapper, packs: first(packs) })),
      },
    }),
    ...(pallets && {
      pallets: {
        ...pallets,
        pallets: pallets.pallets
          .filter((pallet) => !(pallet.first > time))
          .map((pallet) => (pallet.last > time ? { ...pallet, last: NaN, bars: NaN, status: 'being filled' } : pallet)),
      },
    }),
    ...(stops ? { stops: stops.filter(({ from }) => from <= time).map((stop) => ({ ...stop, to: Math.min(stop.to, time) })) } : {}),
  };
}

/** Ends of what the logs cover, s. */
export function covered({ flow, pallets }: DayLogs): { readonly from: number; readonly to: number } | undefined {
  const starts = [flow?.start[0], ...(pallets?.pallets ?? []).map(({ first }) => first)];
  const last = flow && flow.start.length > 0 ? flow.start.at(-1)! + flow.length.at(-1)! : undefined;
  const ends = [last, ...(pallets?.pallets ?? []).map(({ last: end }) => end)];
  const known = (list: readonly (number | undefined)[]) => list.filter((x): x is number => x !== undefined && Number.isFinite(x));
  const [from, to] = [Math.min(...known(starts)), Math.max(...known(ends))];
  return to >= from ? { from, to } : undefined;
}
