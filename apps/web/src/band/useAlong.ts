import { useEffect, useState } from 'react';
import type { AlongAnswer } from '../engine/along-protocol.js';
import { useCalmView, useSheet } from '../engine/sheet.js';

/** The stretches in which the product is followed, asked anew whenever a number moves, under a hand at the pace of words; the last stays while the next is computed. */
export function useAlong(): AlongAnswer | string | undefined {
  const { engine } = useSheet();
  const view = useCalmView();
  const [answer, setAnswer] = useState<AlongAnswer | string>();
  useEffect(() => {
    let dropped = false;
    engine.ask('along', {}).then(
      (next) => !dropped && setAnswer(next),
      (error: Error) => !dropped && setAnswer(error.message),
    );
    return () => {
      dropped = true;
    };
  }, [engine, view]);
  return answer;
}
