import { beforeAll, describe, expect, it } from 'vitest';
import type { Session } from '@barwright/chain';
import {
  cookTable,
  judgeCooks,
  judgeRoast,
  judgeTemper,
  roasterNamed,
  roastTable,
  stopsTable,
  temperTable,
  tunnelTable,
  type PlantChain,
} from '@barwright/line';
import { affected, affectedWords, openWords, windowsOfCooks, windowsOfRoast, windowsOfTemper } from '../src/index.js';
import { at, demoLogs, demoRows, names, openExample, run } from './demo.js';

/**
 * What happened on the invented demo day, counted bar by bar at one minute where the day was made; never read by the program.
 * Five-minute rows may differ from it by 3 %, the least and the most of an edge row by less.
 */
const key = {
  caramel: { laid: ['11:26', '13:43'], packed: ['11:39', '13:56'], bars: 113_713, pallets: run(18, 29) },
  temper: { enrobed: ['13:05', '14:34'], packed: ['13:17', '14:46'], bars: 51_471, pallets: run(25, 30) },
  metal: { window: ['15:01', '17:02'], bars: 109_932, wrapper2: 39_877, pallets: run(31, 41) },
  packs: 860_699,
} as const;
const span = ([from, to]: readonly [string, string]) => ({ from: at(from), to: at(to) });

let from: PlantChain;
let session: Session;
const logs = demoLogs();
beforeAll(async () => {
  ({ from, session } = await openExample('pellamoor'));
});
const cooks = () => windowsOfCooks(judgeCooks(from, session, cookTable(demoRows('caramel_batches.csv'), 'caramel_batches.csv')));
const temper = () => {
  const tests = temperTable(demoRows('temper.csv'), 'temper.csv');
  if (tests.kind !== 'tests') throw new Error('temper.csv holds tests');
  const beside = { tunnel: tunnelTable(demoRows('tunnel.csv'), 'tunnel.csv'), stops: stopsTable(demoRows('stops.csv'), 'stops.csv') };
  return windowsOfTemper(judgeTemper(from, session, tests, { beside }));
};

describe('the demo day against its answer key', () => {
  it('wet caramel: batches C06 to C08, from the log of cooks to the pallets', () => {
    const { windows, cannotTell } = cooks();
    expect(cannotTell).toEqual([]);
    expect(windows.map(({ what }) => what)).toEqual(['C06, C07, C08']);
    const { proven, windows: followed } = affected(from, session, logs, windows);
    expect(followed[0]!.here).toEqual(span(key.caramel.laid));
    expect(proven.packed).toEqual([span(key.caramel.packed)]);
    expect(names(proven.pallets!.pallets)).toEqual(key.caramel.pallets);
    expect(Math.abs(proven.bars!.value / key.caramel.bars - 1)).toBeLessThan(0.03);
    expect(key.caramel.bars).toBeGreaterThan(proven.bars!.low);
    expect(key.caramel.bars).toBeLessThan(proven.bars!.high);
  });

  it('temper: enrobed 13:05 to 14:34; to be safe from the last good test to the next', () => {
    const { proven, safe, windows } = affected(from, session, logs, temper().windows);
    expect(windows[0]!.here).toEqual(span(key.temper.enrobed));
    expect(windows[0]!.safeHere).toEqual(span(['13:00', '15:00']));
    expect(proven.packed).toEqual([span(key.temper.packed)]);
    expect(names(proven.pallets!.pallets)).toEqual(key.temper.pallets);
    expect(Math.abs(proven.bars!.value / key.temper.bars - 1)).toBeLessThan(0.03);
    expect(key.temper.bars).toBeGreaterThan(proven.bars!.low);
    expect(key.temper.bars).toBeLessThan(proven.bars!.high);
    expect(names(safe.pallets!.pallets)).toEqual(run(25, 32));
  });

  it('metal detector: a window at the wrapper needs no transit', () => {
    const { proven } = affected(from, session, logs, [{ at: 'wrapper', span: span(key.metal.window) }]);
    expect(names(proven.pallets!.pallets)).toEqual(key.metal.pallets);
    expect(proven.pallets!.bars).toBe(118_272);
    expect(Math.abs(proven.bars!.value / key.metal.bars - 1)).toBeLessThan(0.03);
    const second = proven.byWrapper.find(({ wrapper }) => wrapper === 'w2')!;
    expect(Math.abs(second.bars.value / key.metal.wrapper2 - 1)).toBeLessThan(0.03);
  });

  it('caramel and temper together: each bar counted once', () => {
    const one = affected(from, session, logs, cooks().windows).proven;
    const two = affected(from, session, logs, temper().windows).proven;
    const both = affected(from, session, logs, [...cooks().windows, ...temper().windows]);
    expect(names(both.proven.pallets!.pallets)).toEqual(run(18, 30));
    expect(both.proven.bars!.value).toBeCloseTo(one.bars!.value + two.bars!.value - both.twice!, 6);
    expect(both.twice).toBeGreaterThan(30_000);
    expect(affectedWords(both).join(' ')).toMatch(/lie in more than one of the windows; they are counted once/);
  });

  it('the whole day at the wrapper is everything packed, without a doubt at the edges', () => {
    const { proven } = affected(from, session, logs, [{ at: 'wrapper', span: {} }]);
    expect(proven.bars!.low).toBe(proven.bars!.value);
    expect(proven.bars!.high).toBe(proven.bars!.value);
    expect(Math.abs(proven.bars!.value / key.packs - 1)).toBeLessThan(0.001);
    expect(proven.pallets!.pallets).toHaveLength(81);
    expect(proven.loose).toEqual([]);
  });

  it('peanuts of a roast that is not proven: in the order of use, and until the longest age to be safe', () => {
    const roaster = roasterNamed(from, 'peanut roaster');
    const slow = demoRows('peanut_roast.csv').map((row, i) => (i >= 20 && i <= 22 ? row.map((cell, j) => (j === 3 ? '1.0' : cell)) : row));
    const answer = judgeRoast(from, roaster, roastTable(slow, 'a log', roaster.name));
    const { windows, cannotTell, said } = windowsOfRoast(from, session, answer, logs);
    expect(cannotTell).toEqual([]);
    // 30 to 60 min to the cutter as the plant writes it, then 13 min to the wrapper; product inside left the roaster by 11:46
    const { proven, safe } = affected(from, session, logs, windows);
    expect(proven.packed).toEqual([span(['11:28', '12:59'])]);
    expect(names(proven.pallets!.pallets)).toEqual(run(17, 24));
    expect(safe.packed[0]!.to).toBeGreaterThanOrEqual(at('11:46') + 86_400 + 780);
    expect(said.join(' ')).toMatch(/until it was 24 h old, the longest age that the plant permits/);
    expect(openWords(affected(from, session, logs, windows)).join(' ')).toMatch(/belongs to it too/);
  });
});
