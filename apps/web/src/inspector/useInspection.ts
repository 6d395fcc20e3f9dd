import { useEffect, useState } from 'react';
import { useSheet, useView } from '../engine/sheet.js';
import type { Inspection } from '../engine/protocol.js';

/** What the engine says of a number; asked again when a hand has rested. */
export function useInspection(id: string): { readonly about: Inspection | undefined; readonly refused: string | undefined } {
  const sheet = useSheet();
  const view = useView();
  const [about, setAbout] = useState<Inspection>();
  const [refused, setRefused] = useState<string>();
  useEffect(() => {
    let dropped = false;
    const timer = setTimeout(
      () => {
        sheet.engine.ask('inspect', { id }).then(
          (next) => {
            if (dropped) return;
            setAbout(next);
            setRefused(undefined);
          },
          (error: Error) => !dropped && setRefused(error.message),
        );
      },
      about?.id === id ? 120 : 0,
    );
    return () => {
      dropped = true;
      clearTimeout(timer);
    };
    // Asked anew for another number and after each frame, not for the answer itself.
    // eslint-disable-next-line react-hooks/exhaustive-deps
  }, [sheet, id, view]);
  return { about: about?.id === id ? about : undefined, refused };
}
