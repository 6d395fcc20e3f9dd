import { beforeAll, describe, expect, it } from 'vitest';
import { Session } from '@barwright/chain';
import {
  carryValidation,
  countsTable,
  judgeRoast,
  judgeTemper,
  NotOnLine,
  plantChain,
  roasterNamed,
  roastTable,
  stopsTable,
  temperTable,
  tunnelHistory,
  tunnelOffset,
  tunnelTable,
  type PlantChain,
} from '../src/index.js';
import { demoDay, rowsOf } from './day.js';
import { examplePlant } from './pellamoor.js';

let from: PlantChain;
beforeAll(async () => {
  from = plantChain(await examplePlant('pellamoor'));
});

describe('validations of the plant', () => {
  it('carries all five limits of the peanut roaster, in SI', () => {
    const { validation, unread } = carryValidation(from.plant.validations.find(({ id }) => id === 'PV-07')!);
    expect(unread).toEqual([]);
    expect(validation).toMatchObject({
      roaster: 'peanut roaster',
      kind: 'plant',
      limits: {
        airTemperature: { min: 160 },
        airVelocity: { min: 1.25 },
        bedDepth: { max: 0.08 },
        residence: { min: 960 },
        rawMoisture: { min: 0.055, max: 0.07 },
      },
    });
  });

  it('takes the nib bed for the product', () => {
    const { validation } = carryValidation(from.plant.validations.find(({ id }) => id === 'BV-03')!);
    expect(validation.limits).toEqual({ productTemperature: { min: 135 }, residence: { min: 1080 } });
  });
});

describe('was the kill step met?', () => {
  const rows = demoDay('peanut_roast.csv');
  const judge = (with_: string[][], station = 'peanut roaster', options = {}) => {
    const found = roasterNamed(from, station);
    return judgeRoast(from, found, roastTable(with_, 'a log', found.name), options);
  };
  const altered = (first: number, last: number, column: number, cell: string) =>
    rows.map((row, i) => (i >= first && i <= last ? row.map((old, j) => (j === column ? cell : old)) : row));

  it('the demo day: every reading inside every limit of PV-07, raw moisture from the intake of each lot', () => {
    const answer = judge(rows);
    expect(answer).toMatchObject({ verdict: 'proven', validation: 'PV-07', rows: { proven: 78, notProven: 0, cannotTell: 0 } });
    expect(answer.said.join(' ')).toMatch(/PN-2207 6.0 %, PN-2211 6.6 %/);
    expect(answer.stretches).toHaveLength(1);
    expect(answer.stretches[0]!.lines).toEqual([2, 79]);
  });

  it('a fan slowed to 1.0 m/s for 45 min: not proven, which lines, until when product left, which bars', () => {
    const answer = judge(altered(20, 22, 3, '1.0'));
    expect(answer.verdict).toBe('not proven');
    expect(answer.reason).toMatch(/Air velocity was down to 1 m\/s, below the 1.25 m\/s of PV-07, in 3 of 78 readings/);
    const [worst] = answer.stretches;
    expect(worst).toMatchObject({
      verdict: 'not proven',
      from: '17 Mar 10:45',
      to: '17 Mar 11:30',
      lines: [21, 23],
      exitTo: '17 Mar 11:46',
    });
    // 30 to 60 min from roaster to cutter, through the hopper
    expect(worst!.cut).toEqual(['17 Mar 11:15', '17 Mar 12:46']);
    expect(answer.beside.map(({ source }) => source)).toContain('poirier-2014');
  });

  it.each([
    ['a bed a millimetre too deep', 4, '81', /Bed depth was up to 81 mm/],
    ['air a degree too cold', 2, '159', /Air temperature was down to 159 °C/],
    ['a minute too short', 5, '15', /Residence time was down to 15 min/],
  ])('%s is not proven, however good the colour is', (_, column, cell, sentence) => {
    const answer = judge(altered(30, 30, column, cell));
    expect(answer.verdict).toBe('not proven');
    expect(answer.reasons.join(' ')).toMatch(sentence);
  });

  it.each([
    [
      'an empty cell',
      (r: string[][]) => r.map((row, i) => (i === 30 ? row.map((old, j) => (j === 2 ? '' : old)) : row)),
      /Air temperature has no value/,
    ],
    ['a gap', (r: string[][]) => r.filter((_, i) => i < 30 || i > 35), /No reading for 105 min/],
    [
      'a stuck sensor',
      (r: string[][]) => r.map((row, i) => (i > 20 && i < 60 ? row.map((old, j) => (j === 2 ? '163.0' : old)) : row)),
      /the sensor may be stuck/,
    ],
    ['a clock set back', (r: string[][]) => r.map((row, i) => (i === 31 ? ['2026-03-17T13:05', ...row.slice(1)] : row)), /clock runs back/],
    ['no column of velocity', (r: string[][]) => r.map((row) => row.filter((_, j) => j !== 3)), /Air velocity is not in the log/],
    [
      'an unknown lot',
      (r: string[][]) => r.map((row, i) => (i === 0 ? row : row.map((old, j) => (j === 1 ? 'PN-9999' : old)))),
      /Raw moisture has no value/,
    ],
    [
      '°F under a header of °C',
      (r: string[][]) => r.map((row, i) => (i === 0 ? row : row.map((old, j) => (j === 2 ? String(1.8 * Number(old) + 32) : old)))),
      /looks like °F/,
    ],
  ])('%s: cannot tell, and says why', (_, change, sentence) => {
    const answer = judge(change(rows));
    expect(answer.verdict).toBe('cannot tell');
    expect(answer.reasons.join(' ')).toMatch(sentence);
  });

  it('takes a raw moisture that is entered, and judges it', () => {
    const without = rows.map((row) => row.filter((_, j) => j !== 1));
    expect(judge(without).verdict).toBe('cannot tell');
    expect(judge(without, 'peanut roaster', { rawMoisture: 0.062 }).verdict).toBe('proven');
    expect(judge(without, 'peanut roaster', { rawMoisture: 0.072 }).verdict).toBe('not proven');
  });

  it('the bean roaster by its nib bed: 20 min above 135 °C is proven, 15 min is not', () => {
    const batch = (hot: number) =>
      rowsOf(
        [
          'time_min,nib_bed_C',
          ...Array.from({ length: 41 }, (_, i) => `${i},${i < 10 ? 60 + 7.6 * i : i <= 10 + hot ? 136 + 0.1 * (i % 5) : 120 - i}`),
        ].join('\n'),
      );
    expect(judge(batch(20), 'bean roaster').verdict).toBe('proven');
    const short = judge(batch(15), 'bean roaster');
    expect(short.verdict).toBe('not proven');
    expect(short.reason).toMatch(/BV-03 needs 18 min/);
  });

  it('a plant without a validation proves nothing', async () => {
    const bare = plantChain({ ...(await examplePlant('pellamoor')), validations: [] });
    const station = roasterNamed(bare, 'peanut roaster');
    const answer = judgeRoast(bare, station, roastTable(rows, 'a log', station.name));
    expect(answer.verdict).toBe('not proven');
    expect(answer.reason).toMatch(/no validation/);
  });

  it('a limit that no log is judged by leaves it open: there is no credit for the others', async () => {
    const plant = await examplePlant('pellamoor');
    const [first, ...others] = plant.validations;
    const humid = {
      ...first!,
      limits: [
        ...first!.limits,
        {
          ...first!.limits[0]!,
          name: 'steam',
          slug: 'steam',
          value: { ...first!.limits[0]!.value, dimension: 'pressure' as const, text: '≤ 2 bar' },
        },
      ],
    };
    const chain = plantChain({ ...plant, validations: [humid, ...others] });
    const station = roasterNamed(chain, 'peanut roaster');
    const answer = judgeRoast(chain, station, roastTable(rows, 'a log', station.name));
    expect(answer.verdict).toBe('cannot tell');
    expect(answer.reason).toMatch(/also holds only within steam ≤ 2 bar/);
  });

  it('asks which roaster where there are two, and names them', () => {
    expect(() => roasterNamed(from)).toThrow(NotOnLine);
    expect(() => roasterNamed(from)).toThrow(/"bean roaster", "peanut roaster"/);
  });
});

describe('temper over the shift', () => {
  const tests = () => {
    const table = temperTable(demoDay('temper.csv'), 'temper.csv');
    if (table.kind !== 'tests') throw new Error('a log of tests is expected');
    return table;
  };
  const session = () => new Session(from.chain);
  const beside = () => ({
    tunnel: tunnelTable(demoDay('tunnel.csv'), 'tunnel.csv'),
    stops: stopsTable(demoDay('stops.csv'), 'stops.csv'),
    counts: countsTable(demoDay('flow_5min.csv'), 'flow_5min.csv'),
  });

  it('one incident: under-tempered, by the coolant supply, not the throughput', () => {
    const { incidents } = judgeTemper(from, session(), tests(), { beside: beside() });
    expect(incidents).toHaveLength(1);
    const [one] = incidents;
    expect(one).toMatchObject({ state: 'under', cause: 'coolant supply', firstOut: '17 Mar 13:30', lastOut: '17 Mar 14:30' });
    expect(one!.during['coolant']).toBeCloseTo(16.2, 1);
    expect(one!.why.join(' ')).toMatch(/what it took did not change/);
  });

  it('the window: 13:00 to 15:00 by the tests, 13:05 to 14:34 with tunnel and stops beside', () => {
    const [alone] = judgeTemper(from, session(), tests()).incidents;
    expect(alone!.conservative).toEqual(['17 Mar 13:00', '17 Mar 15:00']);
    expect(alone!.enrobed).toEqual(alone!.conservative);
    const [narrow] = judgeTemper(from, session(), tests(), { beside: beside() }).incidents;
    expect(narrow!.conservative).toEqual(['17 Mar 13:00', '17 Mar 15:00']);
    expect(narrow!.enrobed).toEqual(['17 Mar 13:05', '17 Mar 14:34']);
    expect(narrow!.narrowedBy).toHaveLength(2);
  });

  it('as one stood there at 13:30: one test out, still open', () => {
    const log = tests();
    const [one] = judgeTemper(from, session(), log, { until: log.clock.seconds[14]! }).incidents;
    expect(one!.conservative).toEqual(['17 Mar 13:00', 'end of the log, still open']);
  });

  it('what came later is not known at 13:30: neither the stop that ended it nor later marks narrow the window', () => {
    const log = tests();
    const [one] = judgeTemper(from, session(), log, { beside: beside(), until: log.clock.seconds[14]! }).incidents;
    expect(one!.enrobed).toEqual(['17 Mar 13:05', 'still open']);
    expect(one!.narrowedBy.join(' ')).not.toMatch(/stood until/);
    expect(one!.minutes).toBeCloseTo(25, 0);
  });

  it('ends are told as numbers too, open ones left out', () => {
    const log = tests();
    const [one] = judgeTemper(from, session(), log, { until: log.clock.seconds[14]! }).incidents;
    expect(one!.at.conservative).toEqual({ from: Date.UTC(2026, 2, 17, 13) / 1000 });
  });

  it('throughput up, coolant steady: the throughput is named', () => {
    const rows = [
      'time,temper_slope_C_min,coolant_in_C,throughput_kg_h',
      ...Array.from({ length: 8 }, (_, i) => `${8 + i}:00,${i < 6 ? 0 : 0.9},12.0,${i < 6 ? 950 : 1250}`),
    ];
    const table = temperTable(rowsOf(rows.join('\n')), 'temper.csv');
    if (table.kind !== 'tests') throw new Error('a log of tests is expected');
    expect(judgeTemper(from, session(), table).incidents[0]!.cause).toBe('throughput');
  });

  it('counts the minutes to the limit of a slope that drifts', () => {
    const rows = [
      'time,temper_slope_C_min',
      ...[0.02, 0.08, 0.15, 0.21, 0.28].map((slope, i) => `${8 + Math.floor(i / 2)}:${i % 2 ? '30' : '00'},${slope}`),
    ];
    const table = temperTable(rowsOf(rows.join('\n')), 'temper.csv');
    if (table.kind !== 'tests') throw new Error('a log of tests is expected');
    const [slope] = judgeTemper(from, session(), table).trends;
    // 0.13 K/min an hour; 0.12 are left of 0.4: 55 min
    expect(slope).toMatchObject({ what: 'slope', sure: true });
    expect(slope!.minutesToLimit).toBeGreaterThan(50);
    expect(slope!.minutesToLimit).toBeLessThan(60);
    expect(slope!.earliest!).toBeLessThan(slope!.minutesToLimit!);
  });

  it('cannot tell the cause without a coolant temperature', () => {
    const rows = tests();
    const { coolant: _, ...series } = rows.series;
    const [one] = judgeTemper(from, session(), { ...rows, series }).incidents;
    expect(one!.cause).toBeUndefined();
    expect(one!.why.join(' ')).toMatch(/cannot be told/);
  });
});

describe('the tunnel against its log', () => {
  it('finds the offset of the demo day, leaves the marked bars out, and the offset then brings the exit to the measured one', () => {
    const session = new Session(from.chain);
    const fit = tunnelOffset(from, session, tunnelTable(demoDay('tunnel.csv'), 'tunnel.csv'), 'tunnel.csv');
    expect(fit.leftOut).toBe(5);
    expect(fit.readings).toBe(72);
    expect(fit.high - fit.low).toBeLessThan(0.3);
    session.set('station.cooling_tunnel.exit_offset', fit.offset);
    expect(tunnelHistory(from, session).exitSurface.value).toBeCloseTo(fit.measured, 0);
  });
});
