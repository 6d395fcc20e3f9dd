import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { judgeKillStep, missingLimits } from '../../src/safety/lethality/kill-step.js';
import type { KillStepValidation, RoastLog } from '../../src/safety/lethality/roast-record.js';
import { runModel } from '../../src/model.js';
import { killStep } from '../../src/safety/lethality/kill-step-model.js';

/** An invented document of an invented roaster: shape only, proof of nothing. */
const document: KillStepValidation = {
  id: 'V-1',
  roaster: 'belt A',
  kind: 'plant',
  claim: '≥ 5 log10 at the middle of the bed',
  limits: {
    airTemperature: { min: 160 },
    airVelocity: { min: 1.25 },
    bedDepth: { max: 0.08 },
    residence: { min: 960 },
    rawMoisture: { min: 0.055, max: 0.07 },
  },
};

/** A sound log: instruments that move a little, one row a minute. */
function log(n = 60, change: Partial<Record<string, (i: number) => number>> = {}, step = 60): RoastLog {
  const column = (key: string, value: (i: number) => number) => Array.from({ length: n }, (_, i) => (change[key] ?? value)(i));
  const wave = (i: number) => Math.sin(i * 2.3) + 0.4 * Math.sin(i * 0.7);
  return {
    roaster: 'belt A',
    time: column('time', (i) => i * step),
    airTemperature: column('airTemperature', (i) => 163 + wave(i)),
    airVelocity: column('airVelocity', (i) => 1.32 + 0.02 * wave(i)),
    bedDepth: column('bedDepth', () => 0.075),
    residence: column('residence', () => 960),
    rawMoisture: 0.06,
  };
}
const at = (rows: readonly number[], value: number, otherwise: (i: number) => number) => (i: number) =>
  rows.includes(i) ? value : otherwise(i);
const air = (i: number) => 163 + Math.sin(i * 2.3);
const speed = (i: number) => 1.32 + 0.02 * Math.sin(i * 2.3);

describe('judgeKillStep', () => {
  it('is proven only with every reading inside every limit of a validation of this roaster', () => {
    const r = judgeKillStep(document, log());
    expect(r.verdict).toBe('proven');
    expect(r.reason).toBe(
      'All 60 readings lie inside every limit of V-1 of this roaster (air temperature, air velocity, bed depth, residence time, raw moisture).',
    );
    expect(r.rows).toEqual({ proven: 60, notProven: 0, cannotTell: 0 });
    expect(r.stretches).toHaveLength(1);
  });

  it.each([
    ['airTemperature', 159.9, 'Air temperature was down to 159.9 °C, below the 160 °C of V-1, in 1 of 60 readings, first at reading 31.'],
    ['airVelocity', 1.2, 'Air velocity was down to 1.2 m/s, below the 1.25 m/s of V-1, in 1 of 60 readings, first at reading 31.'],
    ['bedDepth', 0.0805, 'Bed depth was up to 80.5 mm, above the 80 mm of V-1, in 1 of 60 readings, first at reading 31.'],
    ['residence', 950, 'Residence time was down to 15.83 min, below the 16 min of V-1, in 1 of 60 readings, first at reading 31.'],
    ['rawMoisture', 0.05, 'Raw moisture was down to 5 %, below the 5.5 % of V-1, in 1 of 60 readings, first at reading 31.'],
    ['rawMoisture', 0.075, 'Raw moisture was up to 7.5 %, above the 7 % of V-1, in 1 of 60 readings, first at reading 31.'],
  ])('one reading of %s at %d is enough for not proven', (key, value, reason) => {
    const sound = log() as unknown as Record<string, readonly number[] | number>;
    const column = sound[key]!;
    const before = (i: number) => (typeof column === 'number' ? column : column[i]!);
    const changed = { ...log(60, key === 'rawMoisture' ? {} : { [key]: at([30], value, before) }) };
    const moist = key === 'rawMoisture' ? { rawMoisture: Array.from({ length: 60 }, (_, i) => (i === 30 ? value : 0.06)) } : {};
    const r = judgeKillStep(document, { ...changed, ...moist });
    expect(r.verdict).toBe('not proven');
    expect(r.reason).toBe(reason);
    expect(r.rows.notProven).toBe(1);
    const bad = r.stretches.find((s) => s.verdict === 'not proven')!;
    expect([bad.from, bad.to]).toEqual([1800, 1860]);
    expect(bad.exitTo).toBe(1860 + 960);
  });

  it('gives no credit for other limits being met by far: hotter air does not pay for slow air', () => {
    expect(
      judgeKillStep(document, log(60, { airTemperature: (i) => 185 + Math.sin(i), airVelocity: (i) => 1.24 - 0.01 * Math.sin(i) ** 2 }))
        .verdict,
    ).toBe('not proven');
  });
  it('does not mix two validations', () => {
    const slow: KillStepValidation = {
      ...document,
      id: 'V-2',
      limits: { ...document.limits, airVelocity: { min: 1 }, residence: { min: 1200 } },
    };
    const r = judgeKillStep([document, slow], log(60, { airVelocity: (i) => (i < 30 ? 1.1 : 1.32) + 0.01 * Math.sin(i) }));
    expect(r.verdict).toBe('not proven');
    expect(judgeKillStep([slow, document], log()).validation).toBe('V-1');
    expect(judgeKillStep([slow, document], log()).verdict).toBe('proven');
  });

  it.each([
    ['no document', undefined, 'There is no validation of roaster belt A: a kill step without a document is not proven.'],
    [
      'a published study',
      { ...document, kind: 'published' as const },
      'V-1 is a published study; only a validation of roaster belt A itself can prove its kill step.',
    ],
    ['another roaster', { ...document, roaster: 'belt B' }, 'V-1 is a validation of roaster belt B, not of belt A.'],
    [
      'a document without bed depth',
      { ...document, limits: { ...document.limits, bedDepth: {} } },
      'V-1 names no limit for bed depth; all of its conditions must be stated together.',
    ],
  ])('is not proven with %s', (_, validation, reason) => {
    const r = judgeKillStep(validation, log());
    expect([r.verdict, r.reason]).toEqual(['not proven', reason]);
  });
  it('is not proven outside the time a document was in force', () => {
    expect(judgeKillStep({ ...document, validUntil: 1800 }, log()).verdict).toBe('not proven');
    expect(judgeKillStep({ ...document, validFrom: 0, validUntil: 3600 }, log()).verdict).toBe('proven');
  });
  it('never takes colour as proof, nor against it', () => {
    expect(judgeKillStep(undefined, { ...log(), colour: 45 }).verdict).toBe('not proven');
    expect(judgeKillStep(document, { ...log(), colour: 60 }).verdict).toBe('proven');
  });
  it('sets published studies beside, with their own conditions, and not into the verdict', () => {
    const r = judgeKillStep(undefined, log());
    expect(r.beside.map((s) => s.source)).toEqual(['poirier-2014', 'sanders-calhoun-2014']);
    expect(judgeKillStep(undefined, log(60, { airVelocity: (i) => 1 + 0.01 * Math.sin(i) })).beside[0]!.here).toMatch(
      /air velocity goes down to 0.99/,
    );
  });
});

describe('a log that does not tell', () => {
  it('a gap', () => {
    const r = judgeKillStep(document, log(60, { time: (i) => i * 60 + (i > 20 ? 600 : 0) }));
    expect([r.verdict, r.reason]).toEqual(['cannot tell', 'No reading for 11 min after reading 21.']);
    expect(r.stretches.map((s) => s.verdict)).toEqual(['proven', 'cannot tell', 'proven']);
  });
  it('a gap of an hour names the clock change; a missing row of a quarter-hour log is a gap', () => {
    expect(judgeKillStep(document, log(60, { time: (i) => i * 60 + (i > 20 ? 3600 : 0) })).reason).toMatch(/change of the clock/);
    expect(judgeKillStep(document, log(32, { time: (i) => (i + (i > 9 ? 1 : 0)) * 900 }, 900)).verdict).toBe('cannot tell');
    expect(judgeKillStep(document, log(32, {}, 900)).verdict).toBe('proven');
  });
  it('a reading outside a limit beats a gap', () => {
    const r = judgeKillStep(document, log(60, { time: (i) => i * 60 + (i > 20 ? 600 : 0), airVelocity: at([40], 1, speed) }));
    expect(r.verdict).toBe('not proven');
    expect(r.reasons).toHaveLength(2);
  });
  it('an empty log', () => {
    const r = judgeKillStep(document, { roaster: 'belt A', time: [] });
    expect([r.verdict, r.reason]).toEqual(['cannot tell', 'The log is empty: no reading shows what this product met.']);
    expect(judgeKillStep(undefined, { roaster: 'belt A', time: [] }).verdict).toBe('not proven');
  });
  it('a missing column, a missing cell', () => {
    const { bedDepth: _, ...without } = log();
    expect(judgeKillStep(document, without as RoastLog).reason).toBe('Bed depth is not in the log, but V-1 holds only within its limit.');
    expect(judgeKillStep(document, log(60, { airVelocity: at([7], NaN, speed) })).reason).toBe(
      'Air velocity has no value in 1 of 60 readings, first at reading 8.',
    );
  });
  it('a stuck sensor', () => {
    const r = judgeKillStep(document, log(60, { airTemperature: (i) => (i > 25 ? 164.2 : air(i)) }));
    expect(r.verdict).toBe('cannot tell');
    expect(r.reason).toMatch(/^Air temperature shows 164.2 °C without any change from reading 27 to 60/);
    expect(judgeKillStep(document, log(60, { airVelocity: () => 1.3 })).verdict).toBe('cannot tell');
  });
  it('coarse readings that repeat by chance are not a stuck sensor', () => {
    expect(judgeKillStep(document, log(200, { airVelocity: (i) => Math.round(10 * (1.35 + 0.05 * Math.sin(i * 1.7))) / 10 })).verdict).toBe(
      'proven',
    );
  });
  it('a clock that runs back', () => {
    const r = judgeKillStep(document, log(60, { time: (i) => i * 60 - (i > 29 ? 600 : 0) }));
    expect(r.verdict).toBe('cannot tell');
    expect(r.reason).toMatch(/^The clock runs back by 9 min at reading 31/);
    expect(r.rows.cannotTell).toBe(20);
  });
  it('readings of one time with other values; harmless doubles are let pass', () => {
    expect(judgeKillStep(document, log(60, { time: (i) => (i === 30 ? 29 : i) * 60 })).verdict).toBe('cannot tell');
    const twice = log(60, {
      time: (i) => (i === 30 ? 29 : i) * 60,
      airTemperature: (i) => air(i === 30 ? 29 : i),
      airVelocity: (i) => speed(i === 30 ? 29 : i),
    });
    expect(judgeKillStep(document, twice, { longestInterval: 120 }).verdict).toBe('proven');
  });
  it.each([
    ['°F for °C', { airTemperature: (i: number) => 325 + Math.sin(i) }, /looks like °F \(163 °C\)/],
    ['kelvin', { airTemperature: (i: number) => 436.15 + Math.sin(i) }, /looks like kelvin \(163 °C\)/],
    ['a cold roast in °F', { airTemperature: (i: number) => 215 + Math.sin(i) }, /looks like °F \(10[123] °C\)/],
    ['feet per minute', { airVelocity: (i: number) => 256 + Math.sin(i) }, /looks like feet per minute/],
    ['millimetres', { bedDepth: () => 75 }, /looks like millimetres/],
    ['minutes', { residence: () => 16 }, /looks like minutes/],
  ])('%s is suspected, not judged', (_, change, pattern) => {
    const r = judgeKillStep(document, log(60, change));
    expect(r.verdict).toBe('cannot tell');
    expect(r.reason).toMatch(pattern);
  });
  it('per cent for a fraction, two columns swapped', () => {
    expect(judgeKillStep(document, { ...log(), rawMoisture: 6 }).reason).toMatch(/looks like per cent/);
    const swapped = log(60, { airTemperature: (i) => 1.3 + 0.01 * Math.sin(i), airVelocity: air });
    expect(judgeKillStep(document, swapped).verdict).not.toBe('proven');
  });
  it('a value entered once where an instrument is due', () => {
    expect(judgeKillStep(document, { ...log(), airVelocity: 1.3 }).reason).toBe(
      'Air velocity was entered once for the whole log, not logged.',
    );
  });
  it('readings further apart than the time in the roaster', () => {
    expect(judgeKillStep(document, log(20, {}, 1800)).reason).toMatch(/product passed unseen/);
  });
  it('a reading nearer to the limit than the instrument can tell', () => {
    const near = log(60, { airTemperature: at([5], 160.3, air) });
    expect(judgeKillStep(document, near).verdict).toBe('proven');
    expect(judgeKillStep(document, near, { instrumentError: { airTemperature: 0.5 } }).verdict).toBe('cannot tell');
  });
  it('a log that does not cover the time asked for', () => {
    expect(judgeKillStep(document, log(), { from: -3600, to: 3540 }).reason).toMatch(/begins 60 min after/);
    expect(judgeKillStep(document, log(), { from: 0, to: 3540 }).verdict).toBe('proven');
  });
  it('refuses columns of another length with one sentence', () => {
    expect(() => judgeKillStep(document, { ...log(), bedDepth: [0.075, 0.07] })).toThrow('bedDepth has 2 values but there are 60 times');
  });
});

describe('a batch validated by the temperature of its coldest product', () => {
  const batch: KillStepValidation = {
    id: 'B-1',
    roaster: 'drum',
    kind: 'plant',
    claim: '',
    limits: { productTemperature: { min: 135 }, residence: { min: 1080 } },
  };
  const curve = (hold: number, drop = false): RoastLog => {
    const minutes = Array.from({ length: 20 + hold + 5 }, (_, i) => i);
    return {
      roaster: 'drum',
      time: minutes.map((m) => m * 60),
      productTemperature: minutes.map((m) =>
        m < 20 ? 25 + 5.5 * m : m <= 20 + hold ? (drop && m === 30 ? 134.9 : 136 + Math.sin(m)) : 100 - m,
      ),
    };
  };
  it('counts from the first to the last hot reading, without edges', () => {
    expect(judgeKillStep(batch, curve(18)).verdict).toBe('proven');
    const r = judgeKillStep(batch, curve(17));
    expect([r.verdict, r.reason]).toEqual([
      'not proven',
      'Product temperature stayed at or above 135 °C for 17 min at the longest; B-1 needs 18 min.',
    ]);
  });
  it('one cold reading breaks the hold; a gap in it cannot tell', () => {
    expect(judgeKillStep(batch, curve(18, true)).verdict).toBe('not proven');
    const sound = curve(18);
    const keep = (_: number, i: number) => i < 25 || i > 30;
    const gap = {
      ...sound,
      time: Array.from(sound.time).filter(keep),
      productTemperature: (sound.productTemperature as number[]).filter(keep),
    };
    expect(judgeKillStep(batch, gap).verdict).toBe('cannot tell');
  });
  it('needs both the temperature and the hold in the document', () => {
    expect(missingLimits({ ...batch, limits: { productTemperature: { min: 135 } } })).toEqual(['residence']);
  });
});

describe('properties', () => {
  it('proven never comes with a reading outside or missing, whatever the log', () => {
    const near = (limit: number, spread: number) =>
      fc.oneof(fc.double({ min: limit - spread, max: limit + spread, noNaN: true }), fc.constant(NaN));
    fc.assert(
      fc.property(
        fc.array(
          fc.record({
            air: near(163, 6),
            speed: near(1.3, 0.1),
            bed: near(0.076, 0.006),
            stay: near(970, 20),
            wet: near(0.062, 0.01),
            step: fc.integer({ min: -5, max: 90 }),
          }),
          { maxLength: 40 },
        ),
        (rows) => {
          let clock = 0;
          const r = judgeKillStep(document, {
            roaster: 'belt A',
            time: rows.map((row) => (clock += row.step)),
            airTemperature: rows.map((row) => row.air),
            airVelocity: rows.map((row) => row.speed),
            bedDepth: rows.map((row) => row.bed),
            residence: rows.map((row) => row.stay),
            rawMoisture: rows.map((row) => row.wet),
          });
          const inside = rows.every(
            (row) => row.air >= 160 && row.speed >= 1.25 && row.bed <= 0.08 && row.stay >= 960 && row.wet >= 0.055 && row.wet <= 0.07,
          );
          const outside = rows.some(
            (row) => row.air < 160 || row.speed < 1.25 || row.bed > 0.08 || row.stay < 960 || row.wet < 0.055 || row.wet > 0.07,
          );
          if (r.verdict === 'proven') expect(inside && rows.length > 0).toBe(true);
          if (outside) expect(r.verdict).toBe('not proven');
          expect(r.reason.length).toBeGreaterThan(10);
          expect(r.rows.proven + r.rows.notProven + r.rows.cannotTell).toBe(rows.length);
        },
      ),
      { numRuns: 300 },
    );
  });
});

describe('the door', () => {
  const limits = {
    min_air_temperature_c: 160,
    min_air_velocity_m_s: 1.25,
    max_bed_depth_mm: 80,
    min_residence_min: 16,
    min_raw_moisture: 0.055,
    max_raw_moisture: 0.07,
  };
  const run = {
    time_min: [0],
    air_temperature_c: [163],
    air_velocity_m_s: [1.3],
    bed_depth_mm: [75],
    residence_min: [16],
    raw_moisture: [0.06],
  };
  const verdict = (more: object) => runModel(killStep, { ...run, ...more }).outputs.verdict!.value;
  it('judges one reading, and refuses proof without the document or one of its limits', () => {
    expect(verdict({ validation_id: 'V-1', ...limits })).toBe('proven');
    expect(verdict({})).toBe('not proven');
    expect(verdict({ validation_id: 'V-1', ...limits, max_bed_depth_mm: undefined })).toBe('not proven');
    expect(verdict({ validation_id: 'V-1', ...limits, validation_kind: 'published' })).toBe('not proven');
    expect(verdict({ validation_id: 'V-1', ...limits, roaster: 'B', validation_roaster: 'A' })).toBe('not proven');
    expect(verdict({ validation_id: 'V-1', ...limits, air_velocity_m_s: [1] })).toBe('not proven');
    expect(
      verdict({
        validation_id: 'V-1',
        ...limits,
        time_min: [],
        air_temperature_c: [],
        air_velocity_m_s: [],
        bed_depth_mm: [],
        residence_min: [],
        raw_moisture: [],
      }),
    ).toBe('cannot tell');
  });
});

describe('a long log', () => {
  it('of 100 000 rows is judged row by row', () => {
    const n = 100_000;
    const typed = (value: (i: number) => number) => Float64Array.from({ length: n }, (_, i) => value(i));
    const long: RoastLog = {
      roaster: 'belt A',
      time: typed((i) => i),
      airTemperature: typed((i) => 163 + Math.sin(i * 2.3)),
      airVelocity: typed((i) => 1.32 + 0.02 * Math.sin(i * 2.3)),
      bedDepth: typed(() => 0.075),
      residence: typed(() => 960),
      rawMoisture: 0.06,
    };
    const r = judgeKillStep(document, long);
    expect(r.verdict).toBe('proven');
    expect(r.rows.proven).toBe(n);
  });
});
