import { describe, expect, it } from 'vitest';
import { circle, flatten, group, line, path, rect, section, text, toSvg, type Mark } from '../src/index.js';
import { waferBar } from '../bench/bars.js';
import { pathPoints } from './path-points.js';

const sample: readonly Mark[] = [
  group(
    [
      line(0, 0, 10, 0, { stroke: 'ink', width: 2, dash: [3, 1] }),
      rect(0, 0, 4, 2, { fill: 'shade' }),
      circle(5, 5, 2, { stroke: 'act', width: 1 }),
      path('M0 0C1 1 2 1 3 0A2 2 0 0 1 7 0Z', { fill: 'coat' }),
      text(1, 2, [{ text: '9.5' }, { text: ' %', size: 6 }], 10),
    ],
    { at: [100, 50], scale: 2, turn: 90, label: 'a & b' },
  ),
];

describe('flatten', () => {
  it('places lines, widths and dashes in sheet coordinates', () => {
    const [first] = flatten(sample);
    expect(first).toMatchObject({ kind: 'path', d: 'M100 50L100 70', width: 4, dash: [6, 2], stroke: 'ink' });
  });
  it('keeps circles closed and in place', () => {
    const ring = flatten(sample)[2]!;
    const points = ring.kind === 'path' ? pathPoints(ring.d) : [];
    expect(points[0]).toEqual([90, 56]);
    expect(points[points.length - 1]).toEqual([90, 56]);
  });
  it('turns and scales text', () => {
    expect(flatten(sample)[4]).toMatchObject({
      kind: 'text',
      x: 96,
      y: 52,
      turn: 90,
      spans: [
        { text: '9.5', size: 20, weight: 520 },
        { text: ' %', size: 12 },
      ],
    });
  });
  it('gives only paths and texts of known commands for a whole bar', () => {
    for (const flat of flatten(section(waferBar).marks)) {
      expect(['path', 'text']).toContain(flat.kind);
      if (flat.kind === 'path') {
        expect(flat.d).toMatch(/^M/);
        expect(flat.d).not.toMatch(/[^MLCQAaZ0-9 .-]/);
        expect(flat.d).not.toContain('NaN');
      }
    }
  });
  it('refuses path data it does not know', () => {
    expect(() => flatten([group([path('M0 0H4', { stroke: 'ink' })], { at: [1, 1] })])).toThrow(/path command H/);
  });
});

describe('toSvg', () => {
  const svg = toSvg(sample, { width: 200, height: 100, title: 'Bar <1>', desc: 'cut', name: 'bar' });
  it('names and describes the picture', () => {
    expect(svg).toContain('role="img" aria-labelledby="bar-title bar-desc"');
    expect(svg).toContain('<title id="bar-title">Bar &lt;1&gt;</title>');
    expect(svg).toContain('<title>a &amp; b</title>');
  });
  it('uses the inks of the page, or colours when asked', () => {
    expect(svg).toContain('stroke="var(--ink)"');
    expect(toSvg(sample, { width: 1, height: 1, theme: 'night' })).toContain('stroke="#E8EAE3"');
    expect(toSvg(sample, { width: 1, height: 1, theme: 'print' })).toContain('stroke="#000000"');
  });
  it('holds no pattern, clip, filter or gradient', () => {
    const bar = section(waferBar);
    expect(toSvg(bar.marks, { width: bar.width, height: bar.height })).not.toMatch(
      /<(pattern|clipPath|mask|filter|linearGradient|defs|image)/,
    );
  });
});
