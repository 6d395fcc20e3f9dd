import { useEffect, useRef, useState } from 'react';
import { useSheet, useView } from '../engine/sheet.js';
import type { AskedFor, TrialLine, TrialPart, TrialSheet } from '../engine/trial-protocol.js';

export type Answered<T> =
  | { readonly state: 'waiting' }
  | { readonly state: 'answered'; readonly answer: T }
  | { readonly state: 'refused'; readonly message: string };

/** Asks again whenever a number is pulled, one question at a time: while one is computed, only the newest waits. */
function useAsked<T>(ask: () => Promise<T>, key: string, ready: boolean): Answered<T> {
  const view = useView();
  const [found, setFound] = useState<{ readonly key: string; readonly answered: Answered<T> }>();
  const running = useRef(false);
  const again = useRef<(() => void) | undefined>(undefined);
  useEffect(() => {
    if (!ready) return undefined;
    let dropped = false;
    const run = () => {
      running.current = true;
      const done = (answered: Answered<T>) => {
        running.current = false;
        if (!dropped) setFound({ key, answered });
        const next = again.current;
        again.current = undefined;
        next?.();
      };
      ask().then(
        (answer) => done({ state: 'answered', answer }),
        (error: Error) => done({ state: 'refused', message: error.message }),
      );
    };
    if (running.current) again.current = run;
    else run();
    return () => {
      dropped = true;
      if (again.current === run) again.current = undefined;
    };
    // What is asked is told by the key.
    // eslint-disable-next-line react-hooks/exhaustive-deps
  }, [view, key, ready]);
  return found?.answered ?? { state: 'waiting' };
}

/** One trial, as it is now. The last answer stays while the next one is computed. */
export function useTrial(part: TrialPart, asked: AskedFor, width: number, files: number, ready: boolean): Answered<TrialSheet> {
  const { engine, catalog } = useSheet();
  const key = JSON.stringify([part, asked, width, files, catalog?.version, catalog?.bar.slug]);
  const answered = useAsked(() => engine.ask('trial', { part, asked, width }), key, ready && width > 0);
  return answered.state === 'answered' && answered.answer.part !== part ? { state: 'waiting' } : answered;
}

export function useTrials(files: number, ready: boolean): Answered<readonly TrialLine[]> {
  const { engine, catalog } = useSheet();
  return useAsked(() => engine.ask('trials', {}), JSON.stringify([files, catalog?.version, catalog?.bar.slug]), ready);
}
