import { useEffect, useSyncExternalStore } from 'react';

let words = '';
const listeners = new Set<() => void>();

function say(next: string): void {
  if (next === words) return;
  words = next;
  for (const listener of listeners) listener();
}

function subscribe(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

/** The scale of the drawing in view, as the foot writes it. */
export const useScaleWords = (): string => useSyncExternalStore(subscribe, () => words);

/** Says it while the drawing is in view. */
export function useScale(next: string): void {
  useEffect(() => {
    say(next);
    return () => say('');
  }, [next]);
}
