import type { Stop } from '@barwright/line';
import { merged } from './spans.js';

/**
 * When something arrives that needs some seconds of running and waits while a machine in its way stands.
 * @param start - s on the clock of the stops
 * @param running - s of running time on the way
 * @param stops - of any machines; those not on the way are passed over
 * @param between - names of the stations on the way
 * @returns s; start + running where nothing stood
 */
export function arrival(start: number, running: number, stops: readonly Stop[], between: readonly string[]): number {
  const standing = merged(stops.filter(({ machine, from, to }) => to > from && between.some((name) => isMachine(machine, name))));
  let at = start;
  let left = running;
  for (const { from, to } of standing) {
    if (to <= at) continue;
    if (from - at > left) break;
    left -= Math.max(0, from - at);
    at = to;
  }
  return at + left;
}

/** Whether a machine of a log is that station: 'tunnel' and 'cooling tunnel', a number behind it aside. */
function isMachine(machine: string, station: string): boolean {
  const [a, b] = [machine, station].map((text) =>
    text
      .toLowerCase()
      .replace(/\s*\d+$/, '')
      .trim(),
  );
  return a !== '' && (a === b || b!.endsWith(` ${a}`) || a!.endsWith(` ${b}`));
}
