/** The caramel came in 0.8 % wetter than it should: what follows, and which cook gives a wanted water activity. */
import { brokenWindows, Session, solve } from '@barwright/chain';
import { inWords, plantChain } from '@barwright/line';
import { loadPlant } from '@barwright/plant';
import { readPlantFolder } from '@barwright/plant/node';

const loaded = loadPlant(await readPlantFolder('examples/pellamoor'));
if (!loaded.ok) throw new Error(loaded.problems[0]!.message);
const { chain } = plantChain(loaded.plant, 'Kestrowan');
const session = new Session(chain);
const before = session.snapshot();
const words = (id: string, value = session.value(id)) => inWords(chain.quantities[chain.index.get(id)!]!, value);

// Values go in and come out in the units inside: shares from 0 to 1, °C, kg, s, Pa.
session.observe('caramel.moisture', { value: 0.103, note: 'titration, 12:08' });
for (const id of ['caramel.water_activity', 'step.caramel_nougat', 'caramel.cook_temperature', 'bar.mass'])
  console.log(`${id} ${words(id, before.value(id))} → ${words(id)}`);
console.log(`outside: ${brokenWindows(session).map(({ id }) => id).join(', ')}`);
session.undo();

// The recipe is written by moisture, so moisture is the root that gives the water activity; the cook follows.
const solution = solve(chain, session, { target: 'caramel.water_activity', value: 0.54, knob: 'caramel.moisture', low: 0.08, high: 0.13 });
if (!solution.found) throw new Error('No moisture gives that');
const cook = solution.state.value('caramel.cook_temperature');
console.log(`0.54 at ${words('caramel.moisture', solution.knobValue)}, cooked to ${words('caramel.cook_temperature', cook)}`);
console.log(`then outside: ${solution.broken.map(({ id }) => id).join(', ')}`);

// Prints
// caramel.water_activity 0.465 → 0.496
// step.caramel_nougat 0.047 → 0.079
// caramel.cook_temperature 119.7 °C → 117.9 °C
// bar.mass 48.80 g → 48.80 g
// outside: caramel.moisture, caramel.viscosity, step.caramel_nougat
// 0.54 at 11.46 %, cooked to 115.6 °C
// then outside: caramel.moisture, caramel.viscosity, step.caramel_nougat
