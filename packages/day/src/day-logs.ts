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
  return { ...(flow ? { flow } : {}), ...(pallets ? { pallets } : {}), ...(stops ? { stops } : {}), used, unread };
}

/** A clock with dates counts from 1970, one without from its first midnight: the two cannot be laid side by side. */
export const hasDates = (seconds: number): boolean => Math.abs(seconds) > 5e8;

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
