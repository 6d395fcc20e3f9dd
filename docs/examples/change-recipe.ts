/** A recipe changed in the text of its file, compared with the old one, and the weighing list of the new one. */
import { compare, evaluate } from '@barwright/chain';
import { inWords, plantChain } from '@barwright/line';
import { runSheet } from '@barwright/paper';
import { editPlant, loadPlant } from '@barwright/plant';
import { readPlantFolder } from '@barwright/plant/node';

const files = await readPlantFolder('examples/pellamoor');
const chocolate = ['components', 'milk chocolate', 'stages', 0, 'add'];
const changed = editPlant(files, [
  { file: 'components.yaml', path: [...chocolate, 'cocoa butter'], value: '20.0 %' },
  { file: 'components.yaml', path: [...chocolate, 'sugar'], value: '44.0 %' },
]); // comments and columns stay as they were

const read = (texts: typeof files) => {
  const loaded = loadPlant(texts);
  if (!loaded.ok) throw new Error(loaded.problems.map(({ file, line, message }) => `${file}:${line} ${message}`).join('\n'));
  const from = plantChain(loaded.plant);
  return { from, state: evaluate(from.chain) };
};
const old = read(files);
const now = read(changed);

const { differences } = compare(old.state, now.state);
for (const id of ['milk_chocolate.fat', 'milk_chocolate.cost', 'bar.cost']) {
  const { quantity, before, after } = differences.find((each) => each.id === id)!;
  console.log(`${quantity.meaning}: ${inWords(quantity, before)} → ${inWords(quantity, after)}`);
}
const list = runSheet(now.from, now.state).charges.find(({ component }) => component === 'milk chocolate')!;
for (const { name, mass } of list.rows.slice(0, 3)) console.log(`${mass.toFixed(1)} kg ${name}`);

// Prints
// fat, emulsifiers included in milk chocolate: 33.71 % → 34.21 %
// cost of milk chocolate, per kg made: 4.892 EUR/kg → 4.953 EUR/kg
// cost of a bar, no credit for trim used again: 13.30 ct → 13.39 ct
// 1320.0 kg sugar
// 600.0 kg cocoa butter
// 540.0 kg whole milk powder
