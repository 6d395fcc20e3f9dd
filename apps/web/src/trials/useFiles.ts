import { useCallback, useEffect, useState } from 'react';
import { useSheet } from '../engine/sheet.js';
import type { TakenFile } from '../engine/trial-protocol.js';
import { getDayFile, listDays } from '../lib/api.js';

export interface Files {
  /** Grows whenever the engine has read something new. */
  readonly count: number;
  /** The day whose logs were read; nothing while they come or where there is none. */
  readonly day?: string;
  readonly taken: readonly TakenFile[];
  readonly loading: boolean;
  /** Why a file was not read, one sentence each, the newest last. */
  readonly refused: readonly { readonly name: string; readonly message: string }[];
  readonly bring: (files: readonly File[]) => Promise<readonly TakenFile[]>;
}

/** Larger files are no log of one day. */
const largest = 50_000_000;
type State = Pick<Files, 'count' | 'taken' | 'loading' | 'refused'> & { readonly day?: string };

/** Logs that the engine knows: those of the newest day in the folder of the plant, and those brought by hand. */
export function useFiles(plant: string): Files {
  const { engine } = useSheet();
  const [state, setState] = useState<State>({ count: 0, taken: [], loading: true, refused: [] });
  useEffect(() => {
    let dropped = false;
    const run = async () => {
      const [day] = await listDays(plant);
      const names = day?.files.map(({ name }) => name) ?? [];
      const taken: TakenFile[] = [];
      for (const name of names) {
        const bytes = await getDayFile(plant, day!.date, name);
        // A day holds tables that no trial reads; they are left where they are.
        await engine.ask('file', { name, bytes, day: day!.date }).then(
          (file) => taken.push(file),
          () => undefined,
        );
        if (dropped) return;
      }
      setState((before) => ({
        ...before,
        count: before.count + 1,
        taken: [...before.taken, ...taken],
        loading: false,
        ...(day ? { day: day.date } : {}),
      }));
    };
    run().catch((error: Error) => {
      if (!dropped)
        setState((before) => ({ ...before, loading: false, refused: [...before.refused, { name: 'the day', message: error.message }] }));
    });
    return () => {
      dropped = true;
    };
  }, [engine, plant]);
  const bring = useCallback(
    async (files: readonly File[]) => {
      const taken: TakenFile[] = [];
      const refused: Files['refused'][number][] = [];
      for (const file of files) {
        try {
          if (file.size > largest)
            throw new Error(`${file.name} has ${Math.round(file.size / 1e6)} MB; a log of at most ${largest / 1e6} MB is expected`);
          taken.push(await engine.ask('file', { name: file.name, bytes: await file.arrayBuffer() }));
        } catch (error) {
          const { message } = error as Error;
          refused.push({ name: file.name, message: /[.?!]$/.test(message) ? message : `${message}.` });
        }
      }
      setState((before) => ({
        ...before,
        count: before.count + 1,
        taken: [...before.taken.filter(({ name, day }) => day !== undefined || !taken.some((file) => file.name === name)), ...taken],
        refused,
      }));
      return taken;
    },
    [engine],
  );
  return { ...state, bring };
}
