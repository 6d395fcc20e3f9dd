import { createRequire } from 'node:module';

/** The two families of the drawn language, embedded in the PDF. Licence of both: SIL Open Font License 1.1. */
export type Face = 'number' | 'number strong' | 'sentence' | 'sentence strong';

const require = createRequire(import.meta.url);
const office = (subset: string, weight: number) =>
  require.resolve(`@fontsource/ysabeau-office/files/ysabeau-office-${subset}-${weight}-normal.woff`);
const piazzolla = (file: string) => require.resolve(`@expo-google-fonts/piazzolla/${file}`);

/** Files of each face in the order in which a letter is looked for: Latin, European letters, Greek, signs. */
export function fontFiles(): Readonly<Record<Face, readonly string[]>> {
  const subsets = ['latin', 'latin-ext', 'greek', 'math', 'symbols'];
  return {
    number: subsets.map((subset) => office(subset, 500)),
    'number strong': subsets.map((subset) => office(subset, 700)),
    sentence: [piazzolla('500Medium/Piazzolla_500Medium.ttf'), ...subsets.map((subset) => office(subset, 500))],
    'sentence strong': [piazzolla('700Bold/Piazzolla_700Bold.ttf'), ...subsets.map((subset) => office(subset, 700))],
  };
}
