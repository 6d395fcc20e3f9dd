/** Saves version after version and prints each number once it is acknowledged. */
import { getVersion, insertVersion, openStore } from '../../src/index.js';

const store = await openStore(process.argv[2]!);
let { number } = await getVersion(store, 'p', 'latest');
for (;;) {
  const text = `after ${number}: ${'x'.repeat(20_000)}`;
  ({ number } = await insertVersion(store, 'p', { basedOn: number, files: new Map([['plant.yaml', text]]), author: 'A', reason: 'more' }));
  process.stdout.write(`${number}\n`);
}
