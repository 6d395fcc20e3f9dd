import { section, type SectionSpec } from '@barwright/drawing';
import { useEffect } from 'react';
import { useSheet } from '../engine/sheet.js';

const rounds = 6;

/**
 * While nobody is at work yet, the page draws itself a few times over, and the bar a little off its truth aside: the first
 * pull then meets code that has run. It ends as soon as anything is done.
 */
export function useRehearsal(scale: number): void {
  const sheet = useSheet();
  useEffect(() => {
    if (!('requestIdleCallback' in window)) return undefined;
    let left = rounds;
    let last = sheet.view;
    let asked = requestIdleCallback(round);
    function round(): void {
      if (sheet.view !== last || !last?.picture || last.bent.length > 0) return;
      offTruth({ ...last.picture, scale }, left);
      sheet.repeat();
      last = sheet.view;
      left -= 1;
      if (left > 0) asked = requestIdleCallback(round);
    }
    return () => cancelIdleCallback(asked);
  }, [sheet, scale]);
}

/** Draws, for nobody to see, what a hand would make of the bar. */
function offTruth(spec: SectionSpec, times: number): void {
  const height = spec.layers.reduce((sum, { thickness }) => sum + thickness, (spec.coat?.top ?? 0) + (spec.coat?.bottom ?? 0));
  const by = 1 + 0.002 * times;
  section({
    ...spec,
    layers: spec.layers.map((layer) => ({ ...layer, thickness: layer.thickness * by })),
    target: { width: spec.width * by, height, thickness: spec.layers.map(({ thickness }) => thickness) },
  });
}
