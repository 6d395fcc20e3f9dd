import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Session } from '@barwright/chain';
import { NotOnLine, type PlantChain } from '@barwright/line';
import {
  affected,
  affectedWords,
  arrival,
  dayLogs,
  flowLog,
  holdCautions,
  howWords,
  logsUntil,
  NoWindow,
  openWords,
  palletLog,
  placeOf,
  timeIn,
  windowIn,
  windowsOfRoast,
  type DayLogs,
} from '../src/index.js';
import { at, demoFile, demoLogs, demoRows, names, openExample, run } from './demo.js';

let from: PlantChain;
let session: Session;
const logs = demoLogs();
beforeAll(async () => {
  ({ from, session } = await openExample('pellamoor'));
});
const ask = (place: string, a: string, b: string, beside: DayLogs = logs) =>
  affected(from, session, beside, [{ at: place, span: { from: at(a), to: at(b) } }]);
const rowsOf = (text: string) =>
  text
    .trim()
    .split('\n')
    .map((line) => line.trim().split(','));

describe('bars of any windows', () => {
  const minute = fc.integer({ min: 0, max: 1440 });
  const window = fc
    .tuple(minute, minute)
    .map(([a, b]) => ({ from: at('6:00') + 60 * Math.min(a, b), to: at('6:00') + 60 * Math.max(a, b) }));
  const places = fc.constantFrom('slab', 'enrober', 'tunnel out', 'wrapper');
  const barsOf = (windows: readonly { at: string; span: { from: number; to: number } }[]) => affected(from, session, logs, windows).proven;

  it('two windows together hold at most what they hold apart, at least the greater', () => {
    fc.assert(
      fc.property(window, places, window, places, (a, atA, b, atB) => {
        const [one, two] = [barsOf([{ at: atA, span: a }]), barsOf([{ at: atB, span: b }])];
        const both = barsOf([
          { at: atA, span: a },
          { at: atB, span: b },
        ]);
        expect(both.bars!.value).toBeLessThanOrEqual(one.bars!.value + two.bars!.value + 1e-6);
        expect(both.bars!.value).toBeGreaterThanOrEqual(Math.max(one.bars!.value, two.bars!.value) - 1e-6);
        const union = new Set([...names(one.pallets!.pallets), ...names(two.pallets!.pallets)]);
        for (const name of union) expect(names(both.pallets!.pallets)).toContain(name);
      }),
      { numRuns: 60 },
    );
  });

  it('a wider window never holds less; its least and most enclose its number; the safe set encloses the proven one', () => {
    fc.assert(
      fc.property(window, fc.integer({ min: 0, max: 90 }), places, (a, more, place) => {
        const wider = { from: a.from - 60 * more, to: a.to + 60 * more };
        const narrow = affected(from, session, logs, [{ at: place, span: a }]);
        const wide = barsOf([{ at: place, span: wider }]);
        const { bars } = narrow.proven;
        expect(wide.bars!.value).toBeGreaterThanOrEqual(bars!.value - 1e-6);
        expect(wide.bars!.low).toBeGreaterThanOrEqual(bars!.low - 1e-6);
        expect(wide.bars!.high).toBeGreaterThanOrEqual(bars!.high - 1e-6);
        expect(bars!.low).toBeLessThanOrEqual(bars!.value + 1e-6);
        expect(bars!.high).toBeGreaterThanOrEqual(bars!.value - 1e-6);
        expect(narrow.safe.bars!.value).toBeGreaterThanOrEqual(bars!.value - 1e-6);
        for (const name of names(narrow.proven.pallets!.pallets)) expect(names(narrow.safe.pallets!.pallets)).toContain(name);
      }),
      { numRuns: 60 },
    );
  });

  it('a day cut into windows adds up to everything packed', () => {
    const cuts = ['6:00', '9:13', '11:39', '13:56', '20:02', '30:00'];
    const parts = cuts.slice(1).map((to, i) => ask('wrapper', cuts[i]!, to).proven.bars!.value);
    const packed = logs.flow!.packs.reduce((sum, { packs }) => sum + packs.reduce((a, b) => a + b, 0), 0);
    expect(parts.reduce((sum, x) => sum + x, 0)).toBeCloseTo(packed, 6);
  });
});

describe('what the logs leave open', () => {
  it('no log at all: the packed window, and that the rest cannot be told', () => {
    const answer = ask('enrober', '13:05', '14:34', dayLogs({}));
    expect(answer.proven.bars).toBeUndefined();
    expect(affectedWords(answer).join(' ')).toMatch(/packed 13:17 to 14:46: how many bars cannot be told; which pallets cannot be told/);
    expect(openWords(answer)).toHaveLength(2);
  });

  it('an empty log of pallets is no proof that nothing was packed', () => {
    const empty = dayLogs({
      flow: demoFile('flow_5min.csv'),
      pallets: { name: 'pallets.csv', rows: [['pallet', 'first_pack', 'last_pack']] },
    });
    const answer = ask('enrober', '13:05', '14:34', empty);
    expect(answer.proven.pallets).toBeUndefined();
    expect(openWords(answer).join(' ')).toMatch(/Which pallets cannot be told: pallets.csv has headers .* but no reading below them/);
    expect(answer.proven.bars!.value).toBeGreaterThan(50_000);
  });

  it('a gap in the counts: at least so many, and when counts are missing', () => {
    const rows = demoRows('flow_5min.csv').filter(([time]) => !/T13:(20|25|30|35)/.test(time!));
    const answer = ask('enrober', '13:05', '14:34', dayLogs({ flow: { name: 'flow.csv', rows }, pallets: demoFile('pallets.csv') }));
    const whole = ask('enrober', '13:05', '14:34');
    expect(answer.proven.bars!.missing).toEqual([{ from: at('13:20'), to: at('13:40') }]);
    expect(answer.proven.bars!.value).toBeLessThan(whole.proven.bars!.value);
    expect(affectedWords(answer).join(' ')).toMatch(/at least/);
    expect(openWords(answer).join(' ')).toMatch(/Counts are missing 17 Mar 13:20 to 13:40/);
    expect(names(answer.proven.pallets!.pallets)).toEqual(run(25, 30));
  });

  it('an empty cell of one wrapper is missing, not nought', () => {
    const rows = demoRows('flow_5min.csv').map((row) => (/T14:00/.test(row[0]!) ? row.map((cell, j) => (j === 3 ? '' : cell)) : row));
    const answer = ask('wrapper', '13:30', '14:30', dayLogs({ flow: { name: 'flow.csv', rows } }));
    expect(answer.proven.bars!.missing).toEqual([{ from: at('14:00'), to: at('14:05') }]);
  });

  it('as one stood there at 14:00: bars still between cutter and wrapper are counted apart, the last pallet is open', () => {
    const then = logsUntil(logs, at('14:00'));
    const answer = affected(from, session, then, [{ at: 'enrober', span: { from: at('13:05') } }]);
    expect(answer.windows[0]!.here).toEqual({ from: at('13:05'), to: at('14:00') });
    // Cut from 13:47 to 13:59: twelve minutes of the cutter.
    expect(answer.proven.onTheWay!.value).toBeGreaterThan(9_000);
    expect(answer.proven.onTheWay!.value).toBeLessThan(12_000);
    expect(answer.proven.onTheWay!.high - answer.proven.onTheWay!.low).toBeLessThan(2_500);
    expect(names(answer.proven.pallets!.pallets)).toEqual(run(25, 29));
    expect(answer.proven.pallets!.bars).toBeUndefined();
    expect(affectedWords(answer).join(' ')).toMatch(/more were between cutter and wrapper when the log of counts ends/);
    expect(openWords(answer).join(' ')).toMatch(/The logs end at 14:00|The logs end at 17 Mar 14:00/);
  });

  it('packs that are on no pallet are told', () => {
    const rows = demoRows('pallets.csv').filter(([name]) => name !== 'P027');
    const answer = ask('wrapper', '13:00', '14:00', dayLogs({ flow: demoFile('flow_5min.csv'), pallets: { name: 'pallets.csv', rows } }));
    expect(openWords(answer).join(' ')).toMatch(/At least .* bars packed 17 Mar 13:29 to 13:40 are on no pallet of the log: find them/);
  });

  it('a pallet without times cannot be excluded', () => {
    const rows = demoRows('pallets.csv').map((row) => (row[0] === 'P040' ? ['P040', '', '', '224', '10752', ''] : row));
    const answer = ask('wrapper', '13:00', '13:30', dayLogs({ flow: demoFile('flow_5min.csv'), pallets: { name: 'pallets.csv', rows } }));
    expect(openWords(answer).join(' ')).toMatch(/P040: no time of packing can be read, so nothing excludes it; hold it too/);
  });
});

describe('tables of any plant', () => {
  const one = rowsOf(`
    time,packs north,packs 2
    22:00,600,300
    22:10,600,300
    23:50,600,300
    00:00,600,
    00:10,500,200`);

  it('any number of wrappers by any name, any interval, a clock that passes midnight', () => {
    const log = flowLog(one, 'counts.csv');
    expect(log.packs.map(({ wrapper }) => wrapper)).toEqual(['north', '2']);
    expect(log.usual).toBe(600);
    const beside = dayLogs({ flow: { name: 'counts.csv', rows: one } });
    const asked = windowIn(beside, '23:55', '00:05');
    expect(asked.to - asked.from).toBe(600);
    const { proven } = affected(from, session, beside, [{ at: 'wrapper', span: asked }]);
    expect(proven.byWrapper.map(({ bars }) => bars.value)).toEqual([600, 150]);
    expect(proven.bars!.missing).toEqual([{ from: 86_400, to: 86_700 }]);
  });

  it('a time after midnight is of the next day; one on several days asks for its date', () => {
    expect(timeIn(logs, '00:10')).toBe(at('24:10'));
    expect(timeIn(logs, '2026-03-17T13:05')).toBe(at('13:05'));
    expect(windowIn(logs, '23:50', '00:20')).toEqual({ from: at('23:50'), to: at('24:20') });
    const two = demoRows('flow_5min.csv');
    const longer = dayLogs({
      flow: {
        name: 'two days',
        rows: [...two, ...two.slice(1).map(([time, ...rest]) => [time!.replace('-18T', '-19T').replace('-17T', '-18T'), ...rest])],
      },
    });
    expect(() => timeIn(longer, '13:05')).toThrow(/several days; write the date too, such as 2026-03-17T13:05/);
    expect(() => timeIn(logs, 'noon')).toThrow(NoWindow);
  });

  it('counts of the cutter alone serve too, one transit earlier', () => {
    const rows = demoRows('flow_5min.csv').map(([time, cut]) => [time!, cut!]);
    const answer = ask('slab', '11:25', '13:45', dayLogs({ flow: { name: 'cut.csv', rows } }));
    const cut = demoRows('flow_5min.csv')
      .filter(([time]) => time! >= '2026-03-17T11:25' && time! < '2026-03-17T13:45')
      .reduce((sum, row) => sum + Number(row[1]), 0);
    expect(answer.proven.bars!.value).toBeCloseTo(cut, 6);
    expect(howWords(answer).join(' ')).toMatch(/counted at the cutter/);
  });

  it('a total beside the wrappers, and packs thrown out, are not counted again', () => {
    const log = flowLog(rowsOf('time,packs_w1,packs_w2,packs_total,packs_rejected\n10:00,100,90,190,3\n10:05,100,90,190,2'), 'f.csv');
    expect(log.packs.map(({ wrapper }) => wrapper)).toEqual(['w1', 'w2']);
    expect(log.said.join(' ')).toMatch(/"packs total" of f.csv is left out: it counts the others again/);
    expect(flowLog(rowsOf('time,packs_total\n10:00,190\n10:05,190'), 'f.csv').packs).toHaveLength(1);
  });

  it('times of day without dates: what begins after midnight is of the day after, in every log and in the window', () => {
    const flow = rowsOf(
      ['time,packs w1', ...['22:00', '22:30', '23:00', '23:30', '00:00', '00:30', '01:00'].map((time) => `${time},3000`)].join('\n'),
    );
    const list = rowsOf('pallet,first_pack,last_pack\nA,00:05,00:25\nB,00:26,00:58');
    const stops = rowsOf('start,end,machine\n00:10,00:20,enrober');
    const beside = dayLogs({ flow: { name: 'f', rows: flow }, pallets: { name: 'p', rows: list }, stops: { name: 's', rows: stops } });
    expect(beside.stops![0]!.from).toBe(86_400 + 600);
    const answer = affected(from, session, beside, [{ at: 'wrapper', span: { from: 600, to: 1200 } }]);
    expect(names(answer.proven.pallets!.pallets)).toEqual(['A']);
    expect(answer.proven.bars!.value).toBeCloseTo(1000, 6);
  });

  it.each(['highmark', 'tollhythe'])('%s: its own transit, its own packs, no wrapper or pallet of the demo', async (name) => {
    const other = await openExample(name);
    const flow = rowsOf(
      ['time,bars_cut,packs_only', ...Array.from({ length: 12 }, (_, i) => `10:${String(5 * i).padStart(2, '0')},900,800`)].join('\n'),
    );
    const list = rowsOf('pallet,first_pack,last_pack,bars\n1,10:00,10:29,5000\n2,10:30,10:58,5000');
    const beside = dayLogs({ flow: { name: 'f', rows: flow }, pallets: { name: 'p', rows: list } });
    const lag = placeOf(other.from, other.session, 'enrober').toWrapper.value;
    const start = 36_000 + 300;
    const answer = affected(other.from, other.session, beside, [{ at: 'enrober', span: { from: start, to: start + 600 } }]);
    expect(answer.proven.packed).toEqual([{ from: start + lag, to: start + 600 + lag }]);
    expect(answer.proven.bars!.value).toBeCloseTo(1600 * other.from.bar.pack.barsPerPack, 6);
    expect(names(answer.proven.pallets!.pallets)).toEqual(['1']);
  });

  it('a row that the rate of the wrapper refutes is not narrowed by it', () => {
    const fast = rowsOf('time,packs w1\n10:00,9000\n10:05,9000\n10:10,9000');
    const { proven } = affected(from, session, dayLogs({ flow: { name: 'f', rows: fast } }), [
      { at: 'wrapper', span: { from: 36_060, to: 36_300 } },
    ]);
    expect(proven.bars).toMatchObject({ value: 7200, low: 0, high: 9000 });
  });

  it('a table of pallets wants its two times', () => {
    expect(() => palletLog(rowsOf('pallet,bars\nP1,100'), 'p.csv')).toThrow(/"first pack" and its "last pack" are expected/);
    expect(() => flowLog(rowsOf('time,mean\n10:00,3\n10:05,4'), 'f.csv')).toThrow(/"bars cut" or "packs <wrapper>" are expected/);
  });

  it('logs with dates and a window without are not laid side by side', () => {
    expect(() => affected(from, session, logs, [{ at: 'wrapper', span: { from: 36_000, to: 37_000 } }])).toThrow(/not on one clock/);
    expect(() => ask('wrapper', '14:00', '13:00')).toThrow(/before it begins/);
  });
});

describe('the way to the wrapper', () => {
  it('is the plant’s own, of every example plant', async () => {
    expect(placeOf(from, session, 'enrober').toWrapper.value).toBe(720);
    expect(placeOf(from, session, 'slab').said.join(' ')).toMatch(/clock of the cutter/);
    const tollhythe = await openExample('tollhythe');
    expect(placeOf(tollhythe.from, tollhythe.session, 'wafer oven').toWrapper.value).toBe((9.5 + 12) * 60);
    const highmark = await openExample('highmark');
    expect(placeOf(highmark.from, highmark.session, 'enrober').toWrapper.value).toBe(600);
    expect(() => placeOf(highmark.from, highmark.session, 'wafer oven')).toThrow(
      /writes no transit to "wafer oven"; it can follow bars from slab, cutter, enrober/,
    );
    expect(() => placeOf(highmark.from, highmark.session, 'wafer oven')).toThrow(NotOnLine);
  });

  it('a what-if on the transit moves the window', () => {
    session.set('transit.wrapper', 14 * 60);
    expect(placeOf(from, session, 'cutter').toWrapper).toEqual({ value: 840, low: 840, high: 840 });
    session.set('transit.wrapper', 13 * 60);
  });

  it('bars wait while a machine in their way stands, and only then', () => {
    const stops = [
      { from: 100, to: 400, machine: 'cooling tunnel', reason: '' },
      { from: 300, to: 500, machine: 'enrober', reason: '' },
      { from: 150, to: 900, machine: 'wrapper 2', reason: '' },
    ];
    expect(arrival(0, 50, stops, ['enrober', 'cooling tunnel'])).toBe(50);
    expect(arrival(0, 600, stops, ['enrober', 'cooling tunnel'])).toBe(1000);
    expect(arrival(200, 60, stops, ['enrober', 'cooling tunnel'])).toBe(560);
    expect(arrival(0, 600, stops, ['slab former'])).toBe(600);
    expect(placeOf(from, session, 'enrober').between).toEqual(['enrober', 'cooling tunnel']);
    expect(placeOf(from, session, 'cutter').between).toEqual(['enrober', 'cooling tunnel']);
    expect(placeOf(from, session, 'wrapper').between).toEqual([]);
  });

  it('a window that ends while the tunnel stands ends later in the safe set', () => {
    const { safe, windows } = ask('enrober', '13:30', '14:00');
    // The tunnel stood from 14:02 to 14:34: two of twelve minutes had passed, ten were left; then three in the accumulation.
    expect(windows[0]!.safePacked.to).toBeGreaterThanOrEqual(at('14:44'));
    expect(names(safe.pallets!.pallets)).toContain('P030');
  });
});

describe('roasts that cannot be followed', () => {
  const stretch = { verdict: 'not proven' as const, from: '10:00', to: '10:30', lines: [2, 4] as const, exitTo: '10:46', at: { from: at('10:00'), to: at('10:30'), exitTo: at('10:46') }, reason: '' }; // prettier-ignore
  const roast = (station: string) => ({ station, stretches: [stretch] }) as unknown as Parameters<typeof windowsOfRoast>[2];

  it('no transit from the roaster: cannot tell, and what to record', () => {
    const { windows, cannotTell } = windowsOfRoast(from, session, roast('bean roaster'), logs);
    expect(windows).toEqual([]);
    expect(cannotTell.join(' ')).toMatch(
      /cocoa liquor cannot be told: the plant writes no time from the bean roaster to the cutter .* when it was filled and when it was emptied/,
    );
  });

  it('many stretches whose product may lie on the same bars become one window', () => {
    const many = Array.from({ length: 40 }, (_, i) => ({
      ...stretch,
      verdict: i % 2 ? ('cannot tell' as const) : ('not proven' as const),
      at: { from: at('10:00') + 900 * i, to: at('10:05') + 900 * i, exitTo: at('10:21') + 900 * i },
    }));
    const { windows } = windowsOfRoast(from, session, { ...roast('peanut roaster'), stretches: many.toReversed() }, logs);
    expect(windows).toHaveLength(1);
    expect(windows[0]!.span).toEqual({ from: at('10:30'), to: at('10:21') + 900 * 39 + 3600 });
    expect(windows[0]!.what).toMatch(/not proven or cannot tell/);
  });

  it('no longest age: the safe set says that it cannot tell how long they rested', () => {
    const peanuts = from.plant.components.get('roasted peanuts')!;
    const { maxAge: _, ...without } = peanuts;
    const components = new Map(from.plant.components).set('roasted peanuts', without);
    const bare = { ...from, plant: { ...from.plant, components } };
    const { windows, cannotTell } = windowsOfRoast(bare, session, roast('peanut roaster'), dayLogs({}));
    expect(windows[0]!.safe).toEqual({ from: at('10:30'), to: at('11:46') });
    expect(cannotTell.join(' ')).toMatch(/the plant writes no "max age"/);
  });
});

it('every list to hold carries who may release', () => {
  expect(holdCautions.join(' ')).toMatch(/only a named person may release/);
  expect(holdCautions.join(' ')).toMatch(/HACCP team decides/);
});
