import { createContext, useContext } from 'react';

/** How a number opens its sheet, and which stands open. */
export interface Opening {
  readonly id: string | undefined;
  /** The numbers opened one from another, up to the one that stands open. */
  readonly trail: readonly string[];
  readonly open: (id: string, from?: HTMLElement) => void;
  readonly close: () => void;
}

export const OpeningContext = createContext<Opening>({ id: undefined, trail: [], open: () => undefined, close: () => undefined });
export const useInspector = (): Opening => useContext(OpeningContext);

/** The trail after opening a number: from inside the sheet it grows, or goes back to where the number stood before. */
export function trailAfter(trail: readonly string[], id: string, inside: boolean): readonly string[] {
  if (!inside) return [id];
  const at = trail.indexOf(id);
  return at >= 0 ? trail.slice(0, at + 1) : [...trail, id];
}
