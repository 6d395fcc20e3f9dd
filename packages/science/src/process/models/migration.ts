import { BadInput } from '../../errors.js';
import { defineModel, type Model } from '../../model.js';
import { waterDiffusivity } from '../../water/diffusivity.js';
import { meanTemperatureRatio } from '../conduction/solid.js';
import { commonActivity, contactActivity, gabIsotherm, linearIsotherm, tableIsotherm, type Isotherm } from '../migration/isotherm.js';
import { migrate, migrationRanges, type MoistureLayer } from '../migration/layers.js';
import { fraction, nonNegative, positive, series, temperature } from './inputs.js';

const day = 86_400;
const storage = temperature('temperature_c', 'storage temperature; drives what passes films', { default: 20, possible: [-20, 60] });

function oneOf(list: readonly number[], i: number, key: string): number {
  const value = list.length === 1 ? list[0] : list[i];
  if (value === undefined) throw new BadInput(`${key} has ${list.length} values, but one for each layer (or one for all) is expected`);
  return value;
}

export const migrationModels: readonly Model[] = [
  defineModel({
    id: 'migration.two_layer',
    title: 'Water that moves between two layers sealed together',
    about: 'Diffusion with a straight isotherm in each layer, activity continuous at the contact or a film between; capacity = ρ dm/daw.',
    inputs: [
      positive('thickness_a_m', 'm', 'thickness of layer a', { possible: migrationRanges.thickness }),
      positive('thickness_b_m', 'm', 'thickness of layer b', { possible: migrationRanges.thickness }),
      positive('diffusivity_a_m2_s', 'm²/s', 'diffusivity of water in a', { possible: migrationRanges.diffusivity }),
      positive('diffusivity_b_m2_s', 'm²/s', 'diffusivity of water in b', { possible: migrationRanges.diffusivity }),
      positive('capacity_a_kg_m3', 'kg/m³', 'water by volume and unit of activity in a', { possible: migrationRanges.capacity }),
      positive('capacity_b_kg_m3', 'kg/m³', 'water by volume and unit of activity in b', { possible: migrationRanges.capacity }),
      fraction('water_activity_a', 'water activity of a at the start'),
      fraction('water_activity_b', 'water activity of b at the start'),
      nonNegative('film_permeance_kg_m2_s_pa', 'kg/(m² s Pa)', 'permeance of a film between them; 0 for bare contact', { default: 0 }),
      storage,
      nonNegative('time_d', 'd', 'time', { possible: [0, 1e6] }),
    ],
    outputs: [
      { key: 'mean_water_activity_a', unit: '1', meaning: 'mean water activity of a' },
      { key: 'mean_water_activity_b', unit: '1', meaning: 'mean water activity of b' },
      { key: 'contact_water_activity', unit: '1', meaning: 'water activity of a at the contact' },
      { key: 'early_contact_water_activity', unit: '1', meaning: 'contact while both layers are thick: Σ s√D a/Σ s√D' },
      { key: 'equilibrium_water_activity', unit: '1', meaning: 'water activity in the end' },
      { key: 'water_moved_g_m2', unit: 'g/m²', meaning: 'water gone from a to b' },
    ],
    sources: ['crank-1975', 'labuza-hyman-1998'],
    standing: 'memory',
    run: (x) => {
      const layer = (thickness: number, diffusivity: number, capacity: number, start: number): MoistureLayer => ({
        thickness,
        dryDensity: 1,
        isotherm: linearIsotherm(capacity),
        diffusivity,
        start,
      });
      const a = layer(x.thickness_a_m, x.diffusivity_a_m2_s, x.capacity_a_kg_m3, x.water_activity_a);
      const b = layer(x.thickness_b_m, x.diffusivity_b_m2_s, x.capacity_b_kg_m3, x.water_activity_b);
      const film = x.film_permeance_kg_m2_s_pa > 0 ? [x.film_permeance_kg_m2_s_pa] : [];
      const result = migrate([a, b], film, {}, x.temperature_c, [x.time_d * day]);
      return {
        mean_water_activity_a: result.meanActivity[0]!,
        mean_water_activity_b: result.meanActivity[1]!,
        contact_water_activity: result.contactActivity[0]!,
        early_contact_water_activity: contactActivity(
          { capacity: x.capacity_a_kg_m3, diffusivity: x.diffusivity_a_m2_s, start: x.water_activity_a },
          { capacity: x.capacity_b_kg_m3, diffusivity: x.diffusivity_b_m2_s, start: x.water_activity_b },
        ),
        equilibrium_water_activity: commonActivity([
          { dryMass: x.thickness_a_m, isotherm: a.isotherm, start: x.water_activity_a },
          { dryMass: x.thickness_b_m, isotherm: b.isotherm, start: x.water_activity_b },
        ]),
        water_moved_g_m2: 1000 * x.thickness_a_m * x.capacity_a_kg_m3 * (x.water_activity_a - result.meanActivity[0]!),
      };
    },
  }),
  defineModel({
    id: 'migration.layers',
    title: 'Water that moves between the layers of a bar and through its coat and wrapper',
    about:
      'Non-linear diffusion on water activity through any number of layers, GAB or straight isotherms, films between layers and outside. Constant ' +
      'diffusivity, or that of water in amorphous sugar at the local activity times a factor (default 10; 1 to 100 in use).',
    inputs: [
      series('thicknesses_m', 'm', 'thickness of each layer', { possible: migrationRanges.thickness }),
      series('dry_densities_kg_m3', 'kg/m³', 'dry matter by volume of each layer', { possible: migrationRanges.dryDensity }),
      series('water_activities', '1', 'water activity of each layer at the start', { possible: [0, 1] }),
      { key: 'isotherm', unit: '1', meaning: 'kind of isotherm', kind: 'choice', choices: ['gab', 'linear'], default: 'gab' },
      series('gab_monolayers', 'kg/kg', 'GAB monolayer of each layer, on dry matter', { default: [], possible: [1e-5, 10] }),
      series('gab_cs', '1', 'GAB C of each layer', { default: [], possible: [1e-3, 1e6] }),
      series('gab_ks', '1', 'GAB K of each layer', { default: [], possible: [1e-5, 10] }),
      series('isotherm_slopes', 'kg/kg', 'slope of each straight isotherm', { default: [], possible: [1e-5, 100] }),
      {
        key: 'diffusivity_rule',
        unit: '1',
        meaning: 'constant, or the sucrose fit times a factor',
        kind: 'choice',
        choices: ['constant', 'sucrose_fit'],
        default: 'constant',
      },
      series('diffusivities_m2_s', 'm²/s', 'diffusivity of water in each layer', { default: [], possible: migrationRanges.diffusivity }),
      series('diffusivity_factors', '1', 'factor on the sucrose fit for each layer', { default: [10], possible: [1e-6, 1e6] }),
      series('film_permeances_kg_m2_s_pa', 'kg/(m² s Pa)', 'film between each pair of layers; 0 or none for bare contact', {
        default: [],
        possible: [0, 1],
      }),
      nonNegative('bottom_permeance_kg_m2_s_pa', 'kg/(m² s Pa)', 'coat and wrapper below; 0 seals', { default: 0 }),
      nonNegative('top_permeance_kg_m2_s_pa', 'kg/(m² s Pa)', 'coat and wrapper above; 0 seals', { default: 0 }),
      fraction('relative_humidity', 'humidity outside', { default: 0.6 }),
      storage,
      series('times_d', 'd', 'times to report, rising', { default: [7, 30, 90, 180, 365], possible: [0, 1e6] }),
    ],
    outputs: [
      { key: 'mean_water_activities', unit: '1', meaning: 'mean water activity of each layer at the last time' },
      { key: 'mean_moistures_dry_basis', unit: 'kg/kg', meaning: 'mean moisture of each layer at the last time' },
      { key: 'history_water_activities', unit: '1', meaning: 'mean water activities, all layers at the first time, then at the next …' },
      { key: 'contact_water_activities', unit: '1', meaning: 'both sides of each contact at the last time' },
      { key: 'water_gain_g_m2', unit: 'g/m²', meaning: 'water that came in from outside' },
      { key: 'profile_x_m', unit: 'm', meaning: 'places of the profile' },
      { key: 'profile_water_activity', unit: '1', meaning: 'water activity there at the last time' },
      { key: 'equilibrium_water_activity', unit: '1', meaning: 'water activity in the end, were it sealed' },
    ],
    sources: ['crank-1975', 'labuza-hyman-1998', 'price-2014'],
    standing: 'memory',
    run: (x) => {
      const layers = x.thicknesses_m.map((thickness, i): MoistureLayer => {
        const isotherm: Isotherm =
          x.isotherm === 'gab'
            ? gabIsotherm([oneOf(x.gab_monolayers, i, 'gab_monolayers'), oneOf(x.gab_cs, i, 'gab_cs'), oneOf(x.gab_ks, i, 'gab_ks')])
            : linearIsotherm(oneOf(x.isotherm_slopes, i, 'isotherm_slopes'));
        const factor = oneOf(x.diffusivity_factors, i, 'diffusivity_factors');
        return {
          thickness,
          dryDensity: oneOf(x.dry_densities_kg_m3, i, 'dry_densities_kg_m3'),
          isotherm,
          diffusivity:
            x.diffusivity_rule === 'sucrose_fit'
              ? (aw) => factor * waterDiffusivity('sucrose', aw)
              : oneOf(x.diffusivities_m2_s, i, 'diffusivities_m2_s'),
          start: oneOf(x.water_activities, i, 'water_activities'),
        };
      });
      const face = (permeance: number) => ({ permeance, waterActivity: x.relative_humidity });
      const films = x.film_permeances_kg_m2_s_pa.map((permeance) => (permeance > 0 ? permeance : Infinity));
      const result = migrate(
        layers,
        films,
        { first: face(x.bottom_permeance_kg_m2_s_pa), last: face(x.top_permeance_kg_m2_s_pa) },
        x.temperature_c,
        x.times_d.map((time) => time * day),
      );
      const n = layers.length;
      const contacts = 2 * (n - 1);
      return {
        mean_water_activities: { value: Array.from(result.meanActivity.slice(-n)) },
        mean_moistures_dry_basis: { value: Array.from(result.meanMoisture.slice(-n)) },
        history_water_activities: { value: Array.from(result.meanActivity) },
        contact_water_activities: { value: contacts > 0 ? Array.from(result.contactActivity.slice(-contacts)) : [] },
        water_gain_g_m2: 1000 * result.gained.at(-1)!,
        profile_x_m: { value: Array.from(result.position) },
        profile_water_activity: { value: Array.from(result.activity) },
        equilibrium_water_activity: commonActivity(
          layers.map((layer) => ({ dryMass: layer.thickness * layer.dryDensity, isotherm: layer.isotherm, start: layer.start })),
        ),
      };
    },
  }),
  defineModel({
    id: 'migration.contact_water_activity',
    title: 'Water activity at the contact of two layers in the first days',
    about: 'Half-space on half-space: Σ s√D a/Σ s√D, s = ρ dm/daw.',
    inputs: [
      positive('capacity_a_kg_m3', 'kg/m³', 'ρ dm/daw of a', { possible: migrationRanges.capacity }),
      positive('capacity_b_kg_m3', 'kg/m³', 'ρ dm/daw of b', { possible: migrationRanges.capacity }),
      positive('diffusivity_a_m2_s', 'm²/s', 'diffusivity in a', { possible: migrationRanges.diffusivity }),
      positive('diffusivity_b_m2_s', 'm²/s', 'diffusivity in b', { possible: migrationRanges.diffusivity }),
      fraction('water_activity_a', 'water activity of a'),
      fraction('water_activity_b', 'water activity of b'),
    ],
    outputs: [{ key: 'contact_water_activity', unit: '1', meaning: 'water activity at the contact' }],
    sources: ['crank-1975'],
    standing: 'memory',
    run: (x) => ({
      contact_water_activity: contactActivity(
        { capacity: x.capacity_a_kg_m3, diffusivity: x.diffusivity_a_m2_s, start: x.water_activity_a },
        { capacity: x.capacity_b_kg_m3, diffusivity: x.diffusivity_b_m2_s, start: x.water_activity_b },
      ),
    }),
  }),
  defineModel({
    id: 'migration.equilibrium',
    title: 'Water activity at which two parts sealed together come to rest',
    about: 'The water they brought is all there: Σ M m(aw) is kept. Isotherms as tables of points joined by straight lines.',
    inputs: [
      positive('dry_mass_a_kg', 'kg', 'dry mass of a'),
      positive('dry_mass_b_kg', 'kg', 'dry mass of b'),
      fraction('water_activity_a', 'water activity of a at the start'),
      fraction('water_activity_b', 'water activity of b at the start'),
      series('activities_a', '1', 'points of the isotherm of a: water activities, rising', { possible: [0, 1] }),
      series('moistures_a', 'kg/kg', 'moistures of a on dry matter', { possible: [0, 10] }),
      series('activities_b', '1', 'points of the isotherm of b: water activities, rising', { possible: [0, 1] }),
      series('moistures_b', 'kg/kg', 'moistures of b on dry matter', { possible: [0, 10] }),
    ],
    outputs: [
      { key: 'water_activity', unit: '1', meaning: 'common water activity' },
      { key: 'moisture_a', unit: 'kg/kg', meaning: 'moisture of a there, dry basis' },
      { key: 'moisture_b', unit: 'kg/kg', meaning: 'moisture of b there, dry basis' },
      { key: 'water_moved_kg', unit: 'kg', meaning: 'water gone from a to b' },
    ],
    sources: ['labuza-hyman-1998'],
    standing: 'memory',
    run: (x) => {
      const a = tableIsotherm(x.activities_a, x.moistures_a);
      const b = tableIsotherm(x.activities_b, x.moistures_b);
      const aw = commonActivity([
        { dryMass: x.dry_mass_a_kg, isotherm: a, start: x.water_activity_a },
        { dryMass: x.dry_mass_b_kg, isotherm: b, start: x.water_activity_b },
      ]);
      return {
        water_activity: aw,
        moisture_a: a.moisture(aw),
        moisture_b: b.moisture(aw),
        water_moved_kg: x.dry_mass_a_kg * (a.moisture(x.water_activity_a) - a.moisture(aw)),
      };
    },
  }),
  defineModel({
    id: 'migration.plane_sheet',
    title: 'Fractional uptake or loss of a sheet at constant surface',
    about: '1 - Σ 8/((2n+1)²π²) exp(-(2n+1)²π² Fo/4), Fo = D t/L², L half the thickness (whole where one face is closed).',
    inputs: [
      positive('thickness_m', 'm', 'thickness', { possible: migrationRanges.thickness }),
      positive('diffusivity_m2_s', 'm²/s', 'diffusivity', { possible: migrationRanges.diffusivity }),
      nonNegative('time_s', 's', 'time'),
      { key: 'open_faces', unit: '1', meaning: 'faces that take part', kind: 'choice', choices: ['both', 'one'], default: 'both' },
    ],
    outputs: [
      { key: 'uptake', unit: '1', meaning: 'share of the final change, 0 to 1' },
      { key: 'fourier', unit: '1', meaning: 'D t/L²' },
      { key: 'half_time_s', unit: 's', meaning: 'time to half of the final change' },
      { key: 'relaxation_time_s', unit: 's', meaning: 'last time constant, 4 L²/(π² D)' },
    ],
    sources: ['crank-1975'],
    standing: 'memory',
    run: (x) => {
      const length = x.open_faces === 'both' ? x.thickness_m / 2 : x.thickness_m;
      const fourier = (x.diffusivity_m2_s * x.time_s) / length ** 2;
      return {
        uptake: 1 - meanTemperatureRatio('slab', Infinity, fourier),
        fourier,
        half_time_s: (0.19674 * length ** 2) / x.diffusivity_m2_s,
        relaxation_time_s: (4 * length ** 2) / (Math.PI ** 2 * x.diffusivity_m2_s),
      };
    },
  }),
];
