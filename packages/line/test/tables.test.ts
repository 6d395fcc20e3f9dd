import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitCasson } from '@barwright/science';
import { BadTable, flowTable, headerOf, readClock, roastTable, stopsTable, tableOf, temperTable, tunnelTable } from '../src/index.js';
import { demoDay, rowsOf } from './day.js';

describe('headers of instruments and spreadsheets', () => {
  it.each([
    ['zone_air_C', 'zone air', '°C'],
    ['Zone air (°C)', 'zone air', '°C'],
    ['Temp [°F]', 'temp', '°F'],
    ['air_velocity_m_s', 'air velocity', 'm/s'],
    ['Air velocity, m/s', 'air velocity', 'm/s'],
    ['velocity (fpm)', 'velocity', 'ft/min'],
    ['bed_depth_mm', 'bed depth', 'mm'],
    ['residence_min', 'residence', 'min'],
    ['temper_slope_C_min', 'temper slope', 'K/min'],
    ['plastic_viscosity_Pas', 'plastic viscosity', 'Pa·s'],
    ['yield_Pa', 'yield', 'Pa'],
    ['shear_rate_1_s', 'shear rate', '1/s'],
    ['Shear rate (1/s)', 'shear rate', '1/s'],
    ['moisture_pct', 'moisture', '%'],
    ['Moisture %', 'moisture', '%'],
    ['time', 'time', undefined],
    ['temper_index', 'temper index', undefined],
  ])('%s', (text, words, unit) => expect(headerOf(text)).toMatchObject({ words, unit }));

  it('keeps a unit that it does not know, so that it can be told', () =>
    expect(headerOf('pressure (furlong)')).toEqual({ words: 'pressure', unit: 'furlong', known: false }));
});

describe('tables', () => {
  it('finds the header under titles, and a row of units below it', () => {
    const table = tableOf([['Roaster 2'], [], ['time', 'zone air', 'velocity'], ['', '°C', 'm/s'], ['06:00', '163', '1.3']], 'a log');
    expect(table.columns.map(({ unit }) => unit)).toEqual([undefined, '°C', 'm/s']);
    expect(table.rowNumbers).toEqual([5]);
    expect(table.said.join(' ')).toMatch(/One line above the headers of a log was skipped/);
  });

  it.each([
    [[], /a log is empty/],
    [[['', '']], /a log is empty/],
    [[['time', 'zone air']], /has headers \(time, zone air\) but no reading below them/],
    [
      [
        ['06:00', '163'],
        ['06:15', '162'],
      ],
      /has no line of headers/,
    ],
  ])('%j is refused in one sentence', (rows, sentence) => {
    expect(() => tableOf(rows as string[][], 'a log')).toThrow(BadTable);
    expect(() => tableOf(rows as string[][], 'a log')).toThrow(sentence as RegExp);
  });
});

describe('clocks', () => {
  it.each([
    [['2026-03-17T06:00', '2026-03-17T06:15:30'], 930],
    [['2026-03-17 06:00', '2026-03-18 06:00'], 86_400],
    [['17.03.2026 23:50', '18.03.2026 00:10'], 1200],
    [['3/17/2026 11:50 pm', '3/18/2026 12:10 am'], 1200],
    [['23:50', '00:10'], 1200],
    [['11:50 pm', '12:10 am'], 1200],
    [['46098.5', '46098.51'], 864],
  ])('%j are %d s apart', (cells, apart) => {
    const { seconds } = readClock(cells, 'a log', undefined, 'min');
    expect(seconds[1]! - seconds[0]!).toBeCloseTo(apart, 3);
  });

  it.each([
    ['min', 60],
    ['s', 1],
    ['h', 3600],
  ] as const)('plain numbers in %s', (unit, factor) =>
    expect([...readClock(['0', '2'], 'a log', unit, 'min').seconds]).toEqual([0, 2 * factor]),
  );

  it('tells what it assumed, and what it could not read', () => {
    expect(readClock(['1', '2'], 'a log', undefined, 'min').said).toEqual(['The times of a log have no unit; minutes are assumed.']);
    expect(readClock(['06:00', 'noonish', '06:30'], 'a log', undefined, 'min').said).toEqual([
      'One time of a log cannot be read, the first "noonish".',
    ]);
    expect(readClock(['03/04/2026 06:00', '03/04/2026 06:15'], 'a log', undefined, 'min').said[0]).toMatch(
      /day or the month cannot be told/,
    );
  });

  it('a clock set back by an hour stays set back: the judge must see it', () => {
    const { seconds } = readClock(['02:30', '02:45', '02:00', '02:15'], 'a log', undefined, 'min');
    expect(seconds[2]! - seconds[1]!).toBe(-2700);
  });

  it('gives times back as they were written', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1439 }), (minute) => {
        const text = `${String(Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`;
        const clock = readClock([text], 'a log', undefined, 'min');
        return clock.words(clock.seconds[0]!) === text;
      }),
    );
  });
});

describe('roast logs', () => {
  const rows = demoDay('peanut_roast.csv');
  const read = (with_: string[][]) => roastTable(with_, 'peanut_roast.csv', 'peanut roaster');

  it('takes zone air, velocity, depth and residence, in SI, and neither the exit nor the roasted moisture', () => {
    const { log, columns, lots } = read(rows);
    expect(columns.map(({ quantity }) => quantity)).toEqual(['airTemperature', 'airVelocity', 'bedDepth', 'residence', 'colour']);
    expect((log.airTemperature as Float64Array)[0]).toBe(162.1);
    expect((log.bedDepth as Float64Array)[0]).toBeCloseTo(0.074, 9);
    expect((log.residence as Float64Array)[0]).toBe(960);
    expect(log.productTemperature).toBeUndefined();
    expect(log.rawMoisture).toBeUndefined();
    expect(lots![0]).toBe('PN-2207');
  });

  it('reads °F, feet a minute, inches and a decimal comma as what they are', () => {
    const { log, said } = read([
      ['Time', 'Zone 1 air (°F)', 'Zone 2 air (°F)', 'Air velocity (fpm)', 'Bed depth (in)', 'Residence (min)'],
      ['06:00', '325,4', '323,6', '256', '2,95', '16'],
      ['06:15', '326,0', '325,0', '256', '2,95', '16'],
    ]);
    expect((log.airTemperature as Float64Array)[0]).toBeCloseTo((323.6 - 32) / 1.8, 9);
    expect((log.airVelocity as Float64Array)[0]).toBeCloseTo(256 * 0.00508, 9);
    expect((log.bedDepth as Float64Array)[0]).toBeCloseTo(0.07493, 9);
    expect(said.join(' ')).toMatch(/2 columns give the air temperature .* the lowest of each line counts/);
    expect(said.join(' ')).toMatch(/decimal comma/);
  });

  it('takes the deepest bed and the slowest air of several probes, never a mean', () => {
    const { log } = read([
      ['time', 'bed depth left mm', 'bed depth right mm', 'air velocity 1 m/s', 'air velocity 2 m/s'],
      ['06:00', '74', '79', '1.3', '1.2'],
      ['06:15', '75', '76', '1.3', '1.4'],
    ]);
    expect([...(log.bedDepth as Float64Array)]).toEqual([0.079, 0.076]);
    expect([...(log.airVelocity as Float64Array)]).toEqual([1.2, 1.3]);
  });

  it('does not take a speed for a temperature: a header with another unit is told, not used', () => {
    const { log, said } = read([
      ['time', 'zone air (m/s)'],
      ['06:00', '1.3'],
      ['06:15', '1.3'],
    ]);
    expect(log.airTemperature).toBeUndefined();
    expect(said.join(' ')).toMatch(
      /"zone air \(m\/s\)" is in m\/s, but the air temperature is a temperature such as °C; it is not taken for it/,
    );
  });

  it('takes a comma for a decimal sign where any cell of the table shows it, and for thousands where points stand beside', () => {
    const depth = (cells: readonly string[][]) =>
      read([['time', 'zone air °C', 'bed depth mm'], ...cells.map((row, i) => [`06:${i}0`, ...row])]).log.bedDepth as Float64Array;
    expect(
      depth([
        ['163,2', '75,125'],
        ['162,8', '75,250'],
      ])[0],
    ).toBeCloseTo(0.075125, 9);
    expect(
      depth([
        ['163.2', '1,075'],
        ['162.8', '1,075'],
      ])[0],
    ).toBeCloseTo(1.075, 9);
  });

  it('does not guess a comma that could be either: the column counts as missing and says so', () => {
    const { log, said } = read([
      ['time', 'zone air °C'],
      ['06:00', '162,125'],
      ['06:15', '163,250'],
    ]);
    expect([...(log.airTemperature as Float64Array)].every(Number.isNaN)).toBe(true);
    expect(said.join(' ')).toMatch(/Whether the comma in "162,125" of "zone air °C" is a decimal sign or parts thousands cannot be told/);
  });

  it('counts empty cells and words as missing, never as 0', () => {
    const { log, said } = read([
      ['time', 'zone_air_C'],
      ['06:00', '163'],
      ['06:15', ''],
      ['06:30', 'fault'],
      ['06:45', 'n/a'],
    ]);
    expect([...(log.airTemperature as Float64Array)].map(Number.isNaN)).toEqual([false, true, true, true]);
    expect(said.join(' ')).toMatch(/One cell of "zone_air_C" is no number and counts as missing \(line 4: "fault"\)/);
  });

  it('assumes no unit for a kill step: a column without one is missing, times without one are refused', () => {
    const { log, said } = read([
      ['time', 'zone air', 'bed depth', 'residence'],
      ['06:00', '163', '9', '600'],
      ['06:15', '163', '9', '600'],
    ]);
    for (const column of [log.airTemperature, log.bedDepth, log.residence])
      expect([...(column as Float64Array)].every(Number.isNaN)).toBe(true);
    expect(said.join(' ')).toMatch(/"bed depth" has no unit and counts as missing: write the unit into its header, such as \(mm\)/);
    expect(() => read(rowsOf('time,nib_bed_C\n0,136\n1,136'))).toThrow(/times of peanut_roast.csv are numbers without a unit/);
  });

  it('takes no set point for a reading, no roasted moisture for the raw one', () => {
    const { log, said } = read(
      rowsOf('time,zone_air_set_C,zone_air_C,moisture in product %,ambient air C\n06:00,163,158,1.5,22\n06:15,163,158,1.5,22'),
    );
    expect((log.airTemperature as Float64Array)[0]).toBe(158);
    expect(log.rawMoisture).toBeUndefined();
    expect(said.join(' ')).toMatch(/no readings: "zone_air_set_C" left out/);
  });

  it('asks for a column of times', () => {
    expect(() => read(rowsOf('zone_air_C,depth_mm\n163,75\n162,75'))).toThrow(/has no column of times among "zone_air_C", "depth_mm"/);
  });
});

describe('temper, tunnel, stops', () => {
  it('reads the tests of the demo day with slopes per minute', () => {
    const table = temperTable(demoDay('temper.csv'), 'temper.csv');
    if (table.kind !== 'tests') throw new Error('a log of tests is expected');
    expect(table.series.slope![14]).toBeCloseTo(0.75, 9);
    expect(table.series.coolant![15]).toBe(16.4);
    expect(table.clock.words(table.clock.seconds[14]!)).toBe('17 Mar 13:30');
  });

  it('takes time and temperature alone for a cooling curve in seconds', () => {
    const table = temperTable(rowsOf('time_s,temperature_C\n0,32\n10,30\n20,28'), 'curve.csv');
    expect(table).toMatchObject({ kind: 'curve' });
    if (table.kind === 'curve') expect([...table.time]).toEqual([0, 10, 20]);
  });

  it('reads zones, exit, room and marks of the tunnel', () => {
    const { zones, exit, humidity, marks } = tunnelTable(demoDay('tunnel.csv'), 'tunnel.csv');
    expect(zones).toHaveLength(3);
    expect(exit![0]).toBe(18);
    expect(humidity![0]).toBeCloseTo(0.54, 9);
    expect(marks![27]).toBe(9);
  });

  it('reads stops with machine and reason', () => {
    const stops = stopsTable(demoDay('stops.csv'), 'stops.csv');
    expect(stops.find(({ reason }) => /temper correction/.test(reason))).toMatchObject({ machine: 'cooling tunnel' });
  });
});

describe('flow curves', () => {
  const law = (rate: number) => (Math.sqrt(9.5) + Math.sqrt(2.3 * rate)) ** 2;
  const rates = [2, 5, 10, 20, 30, 40, 50];

  it('gives back the Casson values that made the table, by stress, by viscosity, in other units', () => {
    const tables = [
      [['Shear rate (1/s)', 'Shear stress (Pa)'], ...rates.map((rate) => [String(rate), law(rate).toFixed(6)])],
      [['shear_rate_1_s', 'viscosity_mPas'], ...rates.map((rate) => [String(rate), ((1000 * law(rate)) / rate).toFixed(6)])],
      [['Shear rate', 'Stress [dyn/cm2]'], ['1/s', ''], ...rates.map((rate) => [String(rate), (10 * law(rate)).toFixed(6)])],
    ];
    for (const table of tables) {
      const { law: fitted } = fitCasson(flowTable(table, 'flow.csv').up);
      if (fitted.law !== 'casson') throw new Error('a Casson law is expected');
      expect(fitted.yieldValue).toBeCloseTo(9.5, 4);
      expect(fitted.plasticViscosity).toBeCloseTo(2.3, 5);
    }
  });

  it('parts the ramp up from the ramp down', () => {
    const both = [...rates, ...rates.toReversed().slice(1)];
    const { up, down } = flowTable([['rate 1/s', 'stress Pa'], ...both.map((rate) => [String(rate), String(law(rate))])], 'flow.csv');
    expect(up).toHaveLength(7);
    expect(down).toHaveLength(6);
  });

  it('says first that a falling stress is no flow curve, and which reading is off', () => {
    const falling = flowTable(rowsOf('rate 1/s,stress Pa\n5,100\n10,80\n20,50\n40,20'), 'flow.csv');
    expect(falling.said[0]).toContain('goes from 100 Pa at 5 1/s to 20 Pa at 40 1/s');
    const odd = flowTable(rowsOf('rate 1/s,stress Pa\n5,20\n10,30\n20,400\n40,70\n60,90'), 'flow.csv');
    expect(odd.said[0]).toContain('falls from 400 Pa at 20 1/s to 70 Pa at 40 1/s');
    expect(flowTable(rowsOf('rate 1/s,stress Pa\n5,20\n10,30\n20,45'), 'flow.csv').said.join(' ')).not.toContain('stress');
  });
  it('refuses a table without stress, naming its columns', () => {
    expect(() => flowTable(rowsOf('rate,torque\n1,2\n2,3'), 'flow.csv')).toThrow(
      /has the columns "rate", "torque"; a shear rate in 1\/s and a stress/,
    );
  });
});
