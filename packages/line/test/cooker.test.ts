import { Session } from '@barwright/chain';
import { loadPlant } from '@barwright/plant';
import { readPlantFolder } from '@barwright/plant/node';
import {
  batchCook,
  composition,
  cookRelation,
  filmConductance,
  latentHeatOfVaporisation,
  levelSensitivity,
  saturationTemperature,
  type Composition,
} from '@barwright/science';
import fc from 'fast-check';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { cookerAnswers, cookTable, NoCook, plantChain, rowsOfText, type PlantChain } from '../src/index.js';
import { boilingHeat, steamCarries } from '../src/cooker-heat.js';
import { demoDay } from './day.js';
import { examplePlant } from './pellamoor.js';

const folder = (name: string) => readPlantFolder(fileURLToPath(new URL(`../../../examples/${name}`, import.meta.url)));

/** An example with one text of its components replaced. */
async function withText(name: string, before: string, after: string): Promise<PlantChain> {
  const files = new Map(await folder(name));
  const text = files.get('components.yaml')!;
  if (!text.includes(before)) throw new Error(`${name} holds no "${before}"`);
  files.set('components.yaml', text.replace(before, after));
  const loaded = loadPlant(files);
  if (!loaded.ok) throw new Error(JSON.stringify(loaded.problems));
  return plantChain(loaded.plant);
}

const film = () =>
  withText(
    'pellamoor',
    '        probe offset: 0 K                  # what the probe shows less the truth\n',
    `        cooker: { kind: film, steam: 7 bar, heating surface: 6 m², heat transfer: 900 W/m²/K, holds: 12 kg, temperature spread: 0.3 K, level spread: 4 % }\n`,
  );

const tollhythe = plantChain(await examplePlant('tollhythe'));
const c = 'soft_caramel';
const s = `${c}.stage.vacuum_cook`;

describe('the kettle in the chain', () => {
  const session = new Session(tollhythe.chain);
  const x = (id: string) => session.number(`${c}.${id}`);
  const ua = x('heating_surface') * x('heat_transfer');

  it('takes as long as the balance in sixty steps, within 3 %', () => {
    const inside = session.value(`${s}.in_composition`) as Composition;
    const perCharge = session.number(`${s}.in_mass`) / x('charge_sum');
    const mass = x('batch_charge') * perCharge;
    const contents = session.value(`${s}.contents`) as Composition;
    const walked = batchCook(
      { mass, moisture: inside[0]!, temperature: x('cook_feed_temperature') },
      contents[0]!,
      cookRelation(inside, x('cook_pressure'), 0),
      { medium: x('steam_temperature'), conductance: ua },
    );
    expect(Math.abs(x('boil_time') / walked.boilTime - 1)).toBeLessThan(0.03);
    expect(Math.abs(x('warm_time') / walked.heatUpTime - 1)).toBeLessThan(0.03);
    expect(Math.abs(x('steam_batch') / walked.steam - 1)).toBeLessThan(0.03);
    expect(x('boil_rate') / 3600).toBeLessThan(walked.startRate);
    expect(x('boil_rate') / 3600).toBeGreaterThan(walked.endRate);
  });

  it('condenses as much steam as its duty asks, and drives off what the flows say', () => {
    expect((x('steam_flow') / 3600) * latentHeatOfVaporisation(x('steam_temperature'))).toBeCloseTo(x('cook_duty'), 3);
    expect(x('cook_evaporation')).toBeCloseTo(session.number(`flow.${c}.vapour`), 6);
    expect(x('cook_fuel') * x('boiler_efficiency')).toBeCloseTo(x('cook_duty'), 3);
    // A kettle that rated speed keeps busy all the time drives off what the line asks, but for the warming.
    const share = (x('boil_time') / (x('warm_time') + x('boil_time'))) * x('kettles_needed');
    expect(share * x('boil_rate')).toBeCloseTo(x('cook_evaporation'), 4);
    expect(x('moisture_sd')).toBeCloseTo(Math.abs(x('moisture_per_kelvin')) * x('temperature_spread'), 9);
  });

  it('is quicker with hotter steam and more wall, at every pressure a kettle meets', () => {
    fc.assert(
      fc.property(fc.double({ min: 2e5, max: 12e5, noNaN: true }), fc.double({ min: 0.5, max: 10, noNaN: true }), (pressure, area) => {
        const one = new Session(tollhythe.chain, { [`${c}.steam_pressure`]: pressure, [`${c}.heating_surface`]: area });
        const more = new Session(tollhythe.chain, { [`${c}.steam_pressure`]: 1.05 * pressure, [`${c}.heating_surface`]: area });
        const wider = new Session(tollhythe.chain, { [`${c}.steam_pressure`]: pressure, [`${c}.heating_surface`]: 2 * area });
        expect(more.number(`${c}.boil_time`)).toBeLessThan(one.number(`${c}.boil_time`));
        expect(wider.number(`${c}.boil_time`)).toBeCloseTo(one.number(`${c}.boil_time`) / 2, 6);
      }),
      { numRuns: 40 },
    );
  });

  it('says so where the steam is too cold, and computes nothing', () => {
    const cold = new Session(tollhythe.chain, { [`${c}.steam_pressure`]: 60_000 });
    const status = cold.status(`${c}.boil_time`);
    expect(status.ok).toBe(false);
    const [answer] = cookerAnswers(tollhythe, cold);
    expect(answer!.needs.join(' ')).toMatch(/Steam of 8\d\.\d °C does not carry soft caramel past/);
    expect(cold.number(`${c}.steam_flow`)).toBeGreaterThan(0);
  });
});

describe('the film in the chain', () => {
  it('asks the conductance of the balance in sixty steps within 3 %, and answers to its level within 10 %', async () => {
    const from = await film();
    const session = new Session(from.chain);
    const x = (id: string) => session.number(`caramel.${id}`);
    const place = 'caramel.stage.cook_and_brown';
    const inside = session.value(`${place}.in_composition`) as Composition;
    const contents = session.value(`${place}.contents`) as Composition;
    const flow = (session.number('flow.caramel.in') / 3600) * session.number(`${place}.in_mass`);
    const feed = { mass: flow, moisture: inside[0]!, temperature: x('cook_feed_temperature') };
    const relation = cookRelation(inside, x('cook_pressure'), 0);
    const walked = filmConductance(feed, contents[0]!, relation, x('steam_temperature'));
    expect(Math.abs(x('conductance_needed') / walked.conductance - 1)).toBeLessThan(0.03);
    expect(x('wall_use')).toBeCloseTo(x('conductance_needed') / 5400, 9);
    const level = levelSensitivity(feed, relation, { medium: x('steam_temperature'), conductance: walked.conductance });
    const byLevel = Math.sqrt(x('moisture_sd') ** 2 - (x('moisture_per_kelvin') * 0.3) ** 2) / 0.04;
    expect(Math.abs(byLevel / Math.abs(level.moisture) - 1)).toBeLessThan(0.1);
    // Mean of feed and product, kg/h.
    expect(x('residence')).toBeCloseTo((3600 * 12) / (3600 * flow - x('cook_evaporation') / 2), 6);
    const [answer] = cookerAnswers(from, session);
    expect(answer!.kind).toBe('film');
    expect(answer!.advice.join(' ')).toMatch(/The film uses \d+ % of its wall/);
  });
});

describe('boilingHeat', () => {
  it('is the published evaporator', () => {
    // Geankoplis, example 8.4-1 (from memory): 9072 kg/h of 1 % solids at 37.8 °C to 1.5 %, steam of 143.3 kPa: 4108 kg/h of steam.
    // The book's area of 149.3 m² at 1704 W/m² K puts all heat at the boiling point: 254 kW/K; here the warming has its own difference.
    const thin = composition({ water: 0.99, sucrose: 0.01 });
    const steam = saturationTemperature(143_270);
    const { boil } = boilingHeat(thin, 9072, 3024, 37.8, 101_325, 0, steamCarries(steam, 'it'));
    const evaporating = 3024 * 2257e3; // J, latent heat of the book
    expect(Math.abs(boil / (evaporating / 10) - 1)).toBeLessThan(0.02); // 110 °C of steam over 100 °C
  });

  it('needs no warming where the feed comes above its boil', () => {
    const syrup = composition({ water: 0.25, sucrose: 0.75 });
    expect(boilingHeat(syrup, 1, 0.1, 130, 101_325, 0, steamCarries(165, 'it')).warm).toBe(0);
  });
});

describe('cookerAnswers', () => {
  it('names what the demo does not say, and invents nothing for it', async () => {
    const from = plantChain(await examplePlant('pellamoor'));
    const session = new Session(from.chain);
    const answers = cookerAnswers(from, session);
    expect(answers.map(({ component }) => component)).toEqual(['caramel', 'nougat']);
    for (const { needs, ids } of answers) {
      expect(needs.join(' ')).toMatch(/Steam and time need the cooker/);
      expect(ids.some((id) => /steam|boil_time/.test(id))).toBe(false);
    }
    expect(session.overrides()).toEqual({});
  });

  it('follows a probe that is off into moisture, activity, viscosity, grams and money', async () => {
    const from = plantChain(await examplePlant('pellamoor'));
    const session = new Session(from.chain);
    const [answer] = cookerAnswers(from, session, { component: 'caramel', probe: 1 });
    const { moisture, changes, water, money } = answer!.probe!;
    // Nearly the slope of the boiling line: vessel and finished mass differ only by what is added later.
    expect(moisture.after - moisture.before).toBeCloseTo(-session.number('caramel.moisture_per_kelvin'), 3);
    const of = (id: string) => changes.find((one) => one.id === id)!;
    expect(of('caramel.water_activity').after).toBeGreaterThan(of('caramel.water_activity').before);
    expect(of('caramel.viscosity').after).toBeLessThan(of('caramel.viscosity').before);
    expect(water).toBeCloseTo(session.number('layer.caramel.mass') * (moisture.after - moisture.before), 12);
    expect(money).toBeCloseTo((of('bar.cost').after - of('bar.cost').before) * 860_160, 6);
    const none = cookerAnswers(from, session, { component: 'caramel', probe: 0 })[0]!.probe!;
    expect(none.moisture.after).toBeCloseTo(none.moisture.before, 9);
    expect(() => cookerAnswers(from, session, { component: 'caramel', probe: 40 })).toThrow(NoCook);
    expect(() => cookerAnswers(from, session, { component: 'toffee' })).toThrow(/toffee/);
  });

  it('reads the scatter of the good cooks of a log, the bad ones left out', async () => {
    const from = plantChain(await examplePlant('pellamoor'));
    const log = cookTable(demoDay('caramel_batches.csv'), 'caramel');
    const { spread } = cookerAnswers(from, new Session(from.chain), { component: 'caramel', log })[0]!;
    expect(spread!.batches).toBeLessThan(24);
    expect(spread!.kelvin).toBeGreaterThan(0.05);
    expect(spread!.kelvin).toBeLessThan(0.3);
    expect(spread!.seen!).toBeLessThan(0.003);
    const short = cookTable(rowsOfText('batch,cook_end,cook_temp_C\nA,2026-03-17T06:00,117.5\n', 'short'), 'short');
    expect(cookerAnswers(from, new Session(from.chain), { component: 'caramel', log: short })[0]!.spread).toBeUndefined();
  });

  it('answers for a cook that ends by its temperature', async () => {
    const from = plantChain(await examplePlant('highmark'));
    const [answer] = cookerAnswers(from, new Session(from.chain));
    expect(answer!.probe!.moisture.after).toBeGreaterThan(answer!.probe!.moisture.before);
    expect(answer!.advice.join(' ')).toMatch(/no window that was written breaks/);
  });
});
