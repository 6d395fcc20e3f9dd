import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { followed, toSvg, type FollowedSpec, type Mark } from '../src/index.js';

const span = (from: number, to: number) => ({ from, to });
const row = { id: 'a', name: 'enrobed', here: span(100, 200), packed: span(112, 212), safeHere: span(90, 230), safePacked: span(102, 245) };
const pallets = Array.from({ length: 8 }, (_, i) => ({
  id: `P${i}`,
  name: `P00${i}`,
  from: 60 + 25 * i,
  to: 85 + 25 * i,
  touched: i < 2 ? ('no' as const) : i < 6 ? ('proven' as const) : ('safe' as const),
}));
const spec = (more: Partial<FollowedSpec> = {}): FollowedSpec => ({
  width: 900,
  x: [60, 260],
  ticks: [{ at: 120, text: '02:00' }],
  rows: [{ ...row, ends: ['01:40', '03:20'] }],
  pallets,
  pitch: 5,
  ...more,
});
const texts = (marks: readonly Mark[]) =>
  marks.flatMap((mark) => (mark.tag === 'text' && typeof mark.text === 'string' ? [mark.text] : []));
const svg = (drawn: ReturnType<typeof followed>) =>
  toSvg(drawn.marks, { width: drawn.width, height: drawn.height, title: 't', theme: 'day' });

describe('followed', () => {
  it('ties as many strands as fit the pitch, each from its time to its packing, both ends of the window among them', () => {
    const drawn = followed(spec({ rows: [{ ...row, safeHere: row.here, safePacked: row.packed }] }));
    const bundle = drawn.marks.find((mark) => mark.tag === 'path' && mark.stroke === 'ink' && mark.d.includes('C'));
    if (bundle?.tag !== 'path') throw new Error('a bundle of strands is expected');
    const strands = [...bundle.d.matchAll(/M(\S+) \S+C\S+ \S+ \S+ \S+ (\S+) \S+?(?=M|$)/g)].map(([, a, b]) => [Number(a), Number(b)]);
    expect(strands).toHaveLength(21);
    expect(strands[0]![0]).toBeCloseTo(drawn.atX(100), 1);
    expect(strands[0]![1]).toBeCloseTo(drawn.atX(112), 1);
    expect(strands.at(-1)![0]).toBeCloseTo(drawn.atX(200), 1);
    expect(strands.at(-1)![1]).toBeCloseTo(drawn.atX(212), 1);
  });

  it('draws what is only to be safe dashed, and nothing dashed where the sets are one', () => {
    const dashed = (marks: readonly Mark[]) => marks.filter((mark) => mark.tag === 'path' && mark.dash && mark.d.includes('C')).length;
    expect(dashed(followed(spec()).marks)).toBe(2);
    expect(dashed(followed(spec({ rows: [{ ...row, safeHere: row.here, safePacked: row.packed }] })).marks)).toBe(0);
  });

  it('names the ends of what is touched, and where proven turns into to be safe', () => {
    const shown = texts(followed(spec()).marks);
    for (const word of ['P002', 'P005', 'P007', '01:40', '03:20', 'enrobed', 'pallets']) expect(shown).toContain(word);
    expect(shown).not.toContain('P003');
  });

  it('says so where there is no log of pallets', () => {
    expect(texts(followed(spec({ pallets: [], none: 'no log of pallets' })).marks)).toContain('no log of pallets');
  });

  it('gives the place of each window and each pallet', () => {
    const { hits, atX } = followed(spec());
    expect(hits.map(({ id }) => id)).toEqual(['a', ...pallets.map(({ id }) => id)]);
    expect(hits.find(({ id }) => id === 'P3')!.box.x).toBeCloseTo(atX(135) + 0.8, 6);
  });

  it('draws any windows and pallets inside its sheet, without a number that is none', () => {
    const any = fc.tuple(fc.integer({ min: 0, max: 400 }), fc.integer({ min: 0, max: 120 }), fc.integer({ min: 0, max: 90 }));
    fc.assert(
      fc.property(any, fc.constantFrom(560, 900), ([from, length, lag], width) => {
        const here = span(from, from + length);
        const one = { ...row, here, packed: span(here.from + lag, here.to + lag), safeHere: span(from - 20, here.to + 40), safePacked: span(from - 20 + lag, here.to + 60 + lag) }; // prettier-ignore
        const drawn = followed(spec({ width, rows: [one], known: 200 }));
        expect(svg(drawn)).not.toMatch(/NaN|Infinity|undefined/);
        for (const { box } of drawn.hits) expect(box.x + box.w).toBeLessThanOrEqual(width);
      }),
      { numRuns: 60 },
    );
  });

  it('refuses a window that ends before it begins, and none at all', () => {
    expect(() => followed(spec({ rows: [{ ...row, here: span(200, 100) }] }))).toThrow(/a.here.*an end after the beginning/);
    expect(() => followed(spec({ rows: [] }))).toThrow(/rows/);
  });
});
