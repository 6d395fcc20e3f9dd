import { flatten, type Drawing } from '@barwright/drawing';
import type { PagePen } from './pen.js';

/** Puts a drawing on the page as vector paths: ink only, tones as light greys. */
export function placePicture(pen: PagePen, drawing: Drawing, x: number, y: number): void {
  const { doc } = pen;
  doc.save();
  doc.translate(x, y);
  for (const flat of flatten(drawing.marks)) {
    if (flat.kind !== 'path') continue;
    doc.path(flat.d);
    doc.lineCap(flat.cap).lineJoin(flat.join).lineWidth(flat.width);
    if (flat.dash?.length) doc.dash(flat.dash[0]!, { space: flat.dash[1] ?? flat.dash[0]! });
    const fill = flat.fill && toneOf(flat.fill);
    const stroke = flat.stroke && toneOf(flat.stroke);
    const rule = flat.evenOdd ? 'even-odd' : 'non-zero';
    if (fill && stroke) doc.fillAndStroke(fill, stroke, rule);
    else if (fill) doc.fill(fill, rule);
    else if (stroke) doc.strokeColor(stroke).stroke();
    if (flat.dash?.length) doc.undash();
  }
  doc.restore();
}

/** Ink only on paper: hues become black, tones a light grey. */
function toneOf(ink: string): string {
  switch (ink) {
    case 'paper':
    case 'paper-lift':
      return '#ffffff';
    case 'shade':
    case 'shade-2':
    case 'coat':
      return '#eeeeee';
    case 'hair':
      return '#aaaaaa';
    case 'rule':
    case 'ink-3':
      return '#666666';
    case 'ink-2':
      return '#333333';
    default:
      return '#000000';
  }
}
