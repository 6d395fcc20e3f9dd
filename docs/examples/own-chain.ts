/** A chain of your own from published models: how a syrup boils at an altitude, and what makes that uncertain. */
import { buildChain, evaluate, explain, vary } from '@barwright/chain';
import { boilingPoint, modelById, runModel, standardPressure } from '@barwright/science';

const chain = buildChain(
  [
    { id: 'altitude', unit: 'm', meaning: 'altitude', value: 1600, origin: 'entered' },
    { id: 'solids', unit: '1', meaning: 'sucrose in the syrup', value: 0.85, origin: 'measured', sd: 0.004 },
    { id: 'weather', unit: 'Pa', meaning: 'air pressure above that of the altitude', value: 0, origin: 'assumed', sd: 900 },
  ],
  [
    {
      id: 'pressure',
      title: 'Air pressure',
      inputs: ['altitude', 'weather'],
      outputs: [{ id: 'pressure', unit: 'Pa', meaning: 'air pressure, absolute' }],
      equation: 'standard atmosphere + weather',
      run: (altitude: number, weather: number) => standardPressure(altitude) + weather,
    },
    {
      id: 'boiling',
      title: 'Boiling point',
      inputs: ['solids', 'pressure'],
      outputs: [{ id: 'boiling_point', unit: '°C', meaning: 'boiling point of the syrup' }],
      equation: 'water activity of the syrup · vapour pressure of water = pressure',
      run: (solids: number, pressure: number) => boilingPoint({ water: 1 - solids, sucrose: solids }, pressure),
    },
  ],
);
const state = evaluate(chain);
console.log(`boils at ${state.number('boiling_point').toFixed(1)} °C under ${(state.number('pressure') / 1000).toFixed(1)} kPa`);
console.log(`from ${explain(chain, state, 'boiling_point').inputs.map(({ id }) => id).join(' and ')}`);
const [spread] = vary(chain, state, { outputs: ['boiling_point'] }).outputs;
console.log(`standard deviation ${spread!.sd.toFixed(2)} K, most of it by ${spread!.shares!.ranked[0]!.id}`);

// The same door that the command `barwright model` and HTTP use; keys carry the unit, the answer its interval and sources.
const answer = runModel(modelById.get('sucrose.boiling_point')!, { solids: 0.85, pressure_pa: state.number('pressure') });
const { value, low, high } = answer.outputs['boiling_point_c']!;
console.log(`${Number(value).toFixed(1)} °C (${low!.toFixed(1)} to ${high!.toFixed(1)}), fitted: ${answer.fitted}`);

// Prints
// boils at 108.3 °C under 83.5 kPa
// from solids and pressure
// standard deviation 0.56 K, most of it by solids
// 108.3 °C (106.2 to 110.4), fitted: true
