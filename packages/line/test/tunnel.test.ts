import { beforeAll, describe, expect, it } from 'vitest';
import { Session } from '@barwright/chain';
import { atSpeed, NoTunnel, plantChain, tunnelHistory, type PlantChain } from '../src/index.js';
import { examplePlant } from './pellamoor.js';

let from: PlantChain;
beforeAll(async () => {
  from = plantChain(await examplePlant('pellamoor'));
});
const fresh = () => new Session(from.chain);

describe('a bar through the tunnel', () => {
  it('takes out what the bar gives up: coat, centre and crystals', () => {
    const session = fresh();
    const run = tunnelHistory(from, session);
    // By hand: centres 1,947 kg/h at about 2.03 kJ/(kg K), coat 864 kg/h at about 1.6, crystals 0.54 of 33.7 % fat at 157 kJ/kg.
    const centres = (1947 / 3600) * 2030 * (24 - run.exitMean.value);
    const coat = (864 / 3600) * (1600 * (30.4 - run.exitMean.value) + 0.337 * (run.solids - 0.015) * 157_000);
    expect(Math.abs(run.load / (centres + coat) - 1)).toBeLessThan(0.12);
    expect(run.loadByZone.reduce((a, b) => a + b, 0)).toBeCloseTo(run.load, 6);
  });

  it('ends between the coldest air and the coat as it came in, with solids below those at rest', () => {
    const run = tunnelHistory(from, fresh());
    expect(run.exitSurface.value).toBeGreaterThan(11.5);
    expect(run.exitSurface.value).toBeLessThan(30.4);
    expect(run.solids).toBeGreaterThan(0.015);
    expect(run.solids).toBeLessThanOrEqual(run.solidsAt20 + 0.05);
    expect(run.dewMargin.value).toBeCloseTo(run.coldestSurface.value - run.dewPoint, 9);
    expect(run.exitSurface.low).toBeLessThan(run.exitSurface.value);
    expect(run.exitSurface.high).toBeGreaterThan(run.exitSurface.value);
  });

  it('is colder with colder air, warmer at speed, warmer under a heavier coat', () => {
    const session = fresh();
    const base = tunnelHistory(from, session).exitSurface.value;
    expect(tunnelHistory(from, session, { rate: 1050 }).exitSurface.value).toBeGreaterThan(base);
    session.set('set.cooling_tunnel.zone_2', 9);
    expect(tunnelHistory(from, session).exitSurface.value).toBeLessThan(base);
    session.undo();
    session.set('coat.mass', 0.018);
    expect(tunnelHistory(from, session).exitSurface.value).toBeGreaterThan(base);
  });

  it("shifts by the plant's own offset and nothing else does", () => {
    const session = fresh();
    const base = tunnelHistory(from, session);
    session.set('station.cooling_tunnel.exit_offset', -1.8);
    const moved = tunnelHistory(from, session);
    expect(moved.exitSurface.value - base.exitSurface.value).toBeCloseTo(-1.8, 9);
    expect(moved.load).toBe(base.load);
    expect(base.notes.join(' ')).toMatch(/not calibrated/);
    expect(moved.notes.join(' ')).not.toMatch(/not calibrated/);
  });

  it('says when water would settle on the bars', () => {
    const session = fresh();
    session.set({ 'plant.room_temperature': 28, 'plant.room_humidity': 0.8 });
    expect(tunnelHistory(from, session).notes.join(' ')).toMatch(/water may settle on bars/);
  });

  it('refuses a line without a tunnel that it could compute', async () => {
    const other = await examplePlant('highmark');
    const line = [...other.lines.values()][0]!;
    const without = {
      ...other,
      lines: new Map([[line.name, { ...line, stations: line.stations.filter(({ name }) => name !== 'tunnel') }]]),
    };
    const chain = plantChain(without);
    expect(() => tunnelHistory(chain, new Session(chain.chain))).toThrow(NoTunnel);
  });
});

describe('another line speed', () => {
  it('1,050 bars a minute: slab former first, then guillotine, enrober and tunnel without a margin, spreader and nougat without catch-up', () => {
    const answer = atSpeed(from, fresh(), 1050);
    expect(answer.first!.name).toBe('slab former');
    expect(answer.stations.slice(1, 4).map(({ name, fullAt }) => [name, Math.round(fullAt)])).toEqual([
      ['guillotine', 1050],
      ['enrober', 1050],
      ['cooling tunnel', 1050],
    ]);
    expect(answer.stations.filter(({ verdict }) => verdict === 'no catch-up').map(({ name }) => name)).toEqual([
      'guillotine',
      'enrober',
      'cooling tunnel',
      'peanut spreader',
      'nougat line',
    ]);
    expect(answer.mostPossible).toBeCloseTo(1000, 6);
    expect(60 * answer.beltSpeed.after).toBeCloseTo(4.27, 2);
  });

  it('shortens the time the accumulation bears a wrapper down from 24.2 to 13.8 min', () => {
    const { buffers } = atSpeed(from, fresh(), 1050);
    const wrappers = buffers.find(({ station }) => station === 'flow wrappers')!;
    expect(wrappers.oneDown.before / 60).toBeCloseTo(24.2, 1);
    expect(wrappers.oneDown.after / 60).toBeCloseTo(13.8, 1);
  });

  it('takes 0.8 min from the tunnel and warms the exit by some tenths of a kelvin', () => {
    const { tunnel } = atSpeed(from, fresh(), 1050);
    expect(tunnel!.before.dwell / 60).toBeCloseTo(9.23, 2);
    expect(tunnel!.after.dwell / 60).toBeCloseTo(8.44, 2);
    const warmer = tunnel!.after.exitSurface.value - tunnel!.before.exitSurface.value;
    expect(warmer).toBeGreaterThan(0.2);
    expect(warmer).toBeLessThan(1);
  });

  it('never lets a kill step be shortened for speed, and leaves the session as it was', () => {
    const session = fresh();
    const { cautions } = atSpeed(from, session, 1050);
    expect(cautions.join(' ')).toMatch(/peanut roaster is a kill step, proven only inside every limit of PV-07/);
    expect(session.number('line.rate')).toBeCloseTo(960, 9);
    expect(session.canUndo).toBe(false);
  });

  it('nothing breaks at the present speed', () => {
    const { first, advice } = atSpeed(from, fresh(), 960);
    expect(first).toBeUndefined();
    expect(advice[0]).toMatch(/Every station can do 960/);
  });

  it('refuses a rate of nothing', () => expect(() => atSpeed(from, fresh(), 0)).toThrow(/above 0/));
});

describe('temperer and roasters in the chain', () => {
  it('temperer: duty is sensible heat and heat of crystals, the coolant warms by it', () => {
    const session = fresh();
    // By hand: 962 kg/h, 45 to 27 °C at about 1.62 kJ/(kg K), 1.5 % of 33.7 % fat at 157 kJ/kg
    const flow = 962 / 3600;
    const hand = flow * (1620 * 18 + 0.337 * 0.015 * 157_000);
    expect(Math.abs(session.number('station.temperer.duty') / hand - 1)).toBeLessThan(0.05);
    const warmed = session.number('station.temperer.coolant_out') - session.number('set.temperer.coolant_temperature');
    expect(warmed * (6000 / 3600) * 4190).toBeCloseTo(session.number('station.temperer.duty'), 3);
  });

  it('roasters: the water driven off is the difference of the flows', () => {
    const session = fresh();
    const [fed, out] = [session.number('flow.roasted_peanuts.in'), session.number('flow.roasted_peanuts.roast_in')];
    expect(fed).toBeCloseTo(out, 9);
    const left = session.number('station.peanut_roaster.evaporated');
    expect(left).toBeCloseTo(fed * (1 - (1 - 0.06) / (1 - 0.015)), 6);
    expect(session.number('station.peanut_roaster.heat')).toBeGreaterThan((left / 3600) * 2_257_000);
  });

  it('peanuts: the drying curve of one study lies near what roasts to colour left (Sanders 1998: 1.13 to 1.43 %)', () => {
    const value = fresh().number('station.peanut_roaster.predicted_moisture');
    expect(value).toBeGreaterThan(0.006);
    expect(value).toBeLessThan(0.0193);
  });
});
