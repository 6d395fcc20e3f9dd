/** End points of every command of path data, following relative arcs. */
export function pathPoints(d: string): [number, number][] {
  const out: [number, number][] = [];
  let x = 0;
  let y = 0;
  for (const [, command, rest] of d.matchAll(/([A-Za-z])([^A-Za-z]*)/g)) {
    const numbers = rest!.match(/-?\d*\.?\d+/g)?.map(Number) ?? [];
    if (command === 'Z') continue;
    const [dx, dy] = numbers.slice(-2) as [number, number];
    [x, y] = command === 'a' ? [x + dx, y + dy] : [dx, dy];
    out.push([x, y]);
  }
  return out;
}
