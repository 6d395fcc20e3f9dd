import { circle, group, line, path, rect, type Ink, type Mark } from './mark.js';
import { Pen } from './pen.js';

/** The marks of the drawn language: shape first, then hue, so that print and colour-blind eyes read them too. */

/** Filled triangle pointing at (x, y): a person should do something. `toward` is where its tip points. */
export function wedge(x: number, y: number, size = 11, toward: 'down' | 'up' | 'left' | 'right' = 'down', ink: Ink = 'act'): Mark {
  const half = size * 0.52;
  const [bx, by, px, py] =
    toward === 'down' ? [0, -size, 1, 0] : toward === 'up' ? [0, size, 1, 0] : toward === 'left' ? [size, 0, 0, 1] : [-size, 0, 0, 1];
  const pen = new Pen()
    .move(x, y)
    .to(x + bx + px * half, y + by + py * half)
    .to(x + bx - px * half, y + by - py * half);
  return path(pen.close().d, { fill: ink });
}

/** Two vertical straps: held until two people free it. (x, y) is the upper left corner. */
export function heldStraps(x: number, y: number, height = 18, gap = 4): Mark {
  return group([rect(x, y, 4, height, { fill: 'held' }), rect(x + 4 + gap, y, 4, height, { fill: 'held' })], { label: 'held' });
}

/** Open ring: seen, no action. */
export function seen(cx: number, cy: number, r = 5.5): Mark {
  return circle(cx, cy, r, { stroke: 'ink-2', width: 1.6 });
}

/** Ring with a slanted stroke: replaced by a later reading. */
export function replaced(cx: number, cy: number, r = 5.5): Mark {
  return group(
    [
      circle(cx, cy, r, { stroke: 'ink-2', width: 1.4 }),
      line(cx - r * 1.2, cy + r * 0.8, cx + r * 1.2, cy - r * 0.8, { stroke: 'ink-2', width: 1.4 }),
    ],
    { label: 'replaced' },
  );
}

/** Dashed square: missing, never filled afterwards. */
export function missing(cx: number, cy: number, size = 18): Mark {
  return rect(cx - size / 2, cy - size / 2, size, size, { stroke: 'ink-2', width: 1.2, dash: [3, 2.4] });
}

/** Tick: done and inside. */
export function tick(cx: number, cy: number, size = 16): Mark {
  const pen = new Pen()
    .move(cx - size * 0.5, cy + size * 0.02)
    .to(cx - size * 0.16, cy + size * 0.4)
    .to(cx + size * 0.5, cy - size * 0.46);
  return path(pen.d, { stroke: 'ink', width: 2 });
}

/** Ring on a dotted string: a check is due; bold when it is near. */
export function bead(cx: number, cy: number, near = false): Mark {
  return circle(cx, cy, 7, { stroke: 'ink', fill: 'paper', width: near ? 3 : 2 });
}

/** Curve with dot ends: one cause on two strings, or a number and its sheet. */
export function tie(x1: number, y1: number, x2: number, y2: number, sag = 14, ink: Ink = 'act'): Mark {
  const pen = new Pen().move(x1, y1).cubic(x1 + (x2 - x1) * 0.2, y1 + sag, x2 - (x2 - x1) * 0.2, y2 + sag, x2, y2);
  return group([path(pen.d, { stroke: ink, width: 1.6 }), circle(x1, y1, 2.6, { fill: ink }), circle(x2, y2, 2.6, { fill: ink })], {
    label: 'one cause',
  });
}

/** Slanted strokes along a level line: the sill of a computed number, and anything else that is computed. */
export function slanted(x0: number, x1: number, y: number, height = 5, pitch = 4): string {
  const pen = new Pen();
  const lean = height;
  for (let x = x0; x <= x1 - lean + 1e-6; x += pitch) pen.segment(x, y + height / 2, x + lean, y - height / 2);
  if (pen.empty) pen.segment(x0, y + height / 2, x1, y - height / 2);
  return pen.d;
}
