import { describe, expect, it } from 'vitest';
import { Engine } from '../src/engine/engine.js';
import { Pace } from '../src/engine/pace.js';
import { rehearsal } from '../src/engine/rehearsal.js';
import { examplePlant, examples } from './plants.js';

/** A clock that stands still until it is moved on. */
function clock() {
  let now = 0;
  const waiting: { readonly at: number; readonly act: () => void }[] = [];
  const idle: (() => void)[] = [];
  return {
    now: () => now,
    after: (ms: number, act: () => void) => void waiting.push({ at: now + ms, act }),
    idle: (act: () => void) => void idle.push(act),
    goOn: (ms: number) => {
      now += ms;
      for (const { act } of waiting.filter(({ at }) => at <= now)) act();
      waiting.splice(0, waiting.length, ...waiting.filter(({ at }) => at > now));
      for (const act of idle.splice(0)) act();
    },
  };
}

describe('words beside what a hand pulls', () => {
  const begun = () => {
    const time = clock();
    const said: number[] = [];
    return { time, said, pace: new Pace(() => said.push(time.now()), time) };
  };

  it('follow in a task of their own, ten times a second at most', () => {
    const { time, said, pace } = begun();
    for (let i = 0; i < 50; i++) {
      pace.changed(true);
      if (i === 0) expect(said).toEqual([]);
      time.goOn(10);
    }
    expect(said.length).toBeGreaterThanOrEqual(4);
    expect(said.length).toBeLessThanOrEqual(6);
    said.slice(1).forEach((at, i) => expect(at - said[i]!).toBeGreaterThanOrEqual(100));
  });

  it('say the last thing when the hand rests without letting go', () => {
    const { time, said, pace } = begun();
    pace.changed(true);
    time.goOn(10);
    pace.changed(true);
    time.goOn(10);
    expect(said).toEqual([10]);
    time.goOn(200);
    expect(said).toHaveLength(2);
  });

  it('follow at once when it lets go, and not a second time', () => {
    const { time, said, pace } = begun();
    time.goOn(5);
    pace.changed(true);
    pace.changed(false);
    expect(said).toEqual([5]);
    time.goOn(500);
    expect(said).toEqual([5]);
  });
});

describe.each(examples)('the rehearsal on %s', (name) => {
  it('goes in short turns through the pulls of the section, and leaves its engine in truth', async () => {
    const engine = new Engine(await examplePlant(name), undefined, 1, 'metric');
    engine.frame();
    let turns = 0;
    let moved = 0;
    for (const _turn of rehearsal(engine)) {
      turns += 1;
      if (engine.changes.size > 0) moved += 1;
    }
    expect(turns).toBeGreaterThan(24);
    expect(moved).toBeGreaterThan(turns * 0.9);
    expect(engine.changes.size).toBe(0);
    expect(engine.session.overrides()).toEqual({});
    expect(engine.frame().canUndo).toBe(false);
  });
});
