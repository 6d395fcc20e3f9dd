import { useEffect } from 'react';
import type { Sheet } from '../engine/sheet.js';

/** Ctrl+Z takes the last pull back, Shift+Ctrl+Z or Ctrl+Y brings it again; not while somebody types. */
export function useUndoKeys(sheet: Sheet): void {
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
      if (event.target instanceof HTMLElement && event.target.closest('input, textarea')) return;
      const key = event.key.toLowerCase();
      const verb = key === 'z' ? (event.shiftKey ? 'redo' : 'undo') : key === 'y' ? 'redo' : undefined;
      if (!verb) return;
      event.preventDefault();
      sheet.engine.step(verb);
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, [sheet]);
}
