import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { judgeLanes, lanesTable, plantChain, rowsOfText } from '../src/index.js';
import { examplePlant } from './pellamoor.js';

const path = join(import.meta.dirname, '../../../examples/pellamoor/days/2026-03-17/lane_weights_hourly.csv');
const rounds = () => lanesTable(rowsOfText(readFileSync(path, 'utf8'), 'lanes.csv'), 'lanes.csv').rounds;

describe('weights lane by lane', () => {
  it('are rounds of every lane, in order, whatever the order of lines', () => {
    const all = rounds();
    expect(all).toHaveLength(19);
    expect(all[0]!.lanes).toEqual(Array.from({ length: 32 }, (_, i) => i + 1));
    const turned = rowsOfText(readFileSync(path, 'utf8'), 'x');
    const again = lanesTable([turned[0]!, ...turned.slice(1).reverse()], 'x').rounds;
    expect(again.at(-1)).toEqual(all[0]);
  });

  it('show the far side of the demo evening, and no other step', async () => {
    const from = plantChain(await examplePlant('pellamoor'));
    const answer = judgeLanes(from, rounds());
    expect(answer.runs).toEqual([{ from: 12, to: 13 }]);
    const { step, time } = answer.rounds[12]!;
    expect(time).toBe('17 Mar 19:00');
    expect(step!.carriedBy).toBe('coat');
    // The day was made with 1.7 g more coat beyond lane 22 from six to the cleaning of the blower.
    expect(step!.coat).toBeGreaterThan(0.0012);
    expect(step!.coat).toBeLessThan(0.0023);
    expect(Math.abs(step!.after - 22)).toBeLessThanOrEqual(3);
  });

  it('say what is missing and judge the rest', async () => {
    const from = plantChain(await examplePlant('pellamoor'));
    const [first] = rounds();
    const holed = { ...first!, finished: first!.finished.map((mass, i) => (i === 3 ? NaN : mass)) };
    const few = { ...first!, lanes: [1], centre: [0.033], finished: [0.048] };
    const answer = judgeLanes(from, [holed, few]);
    expect(answer.rounds[0]!.coat[3]).toBeNaN();
    expect(answer.rounds[0]!.mean).toBeGreaterThan(0.013);
    expect(answer.rounds[1]!.reason).toContain('at least 6');
    expect(answer.said.join(' ')).toMatch(/One round cannot be judged.*1 bars? ha/);
  });

  it('ask for their columns', () =>
    expect(() => lanesTable([['time', 'lane', 'centre (g)'], ['06:00', '1', '33']], 'x.csv')).toThrow(/x.csv has the columns.*finished weight/)); // prettier-ignore
});
