import type { Table } from '../../sources.js';

/**
 * Variance of an aflatoxin test in (ng/g)², each part a C^b at the reference mass, C in ng/g total aflatoxin:
 * sampling scales with 1 / sample mass (g), preparation with 1 / test portion (g), analysis with 1 / number of analyses.
 */
export const shelledPeanutVariance = {
  source: 'whitaker-1974',
  standing: 'memory',
  note: 'Shelled peanuts, 12 lb (5443 g) sample, 280 g portion. Sampling 3.95 C^1.396 and the two others as remembered; only the 8 % share of preparation at 1100 g is found elsewhere.',
  valid: { aflatoxin: [1, 300] },
  values: { sampleMass: 5443, portionMass: 280, sampling: [3.9539, 1.3955], preparation: [0.1196, 1.7296], analysis: [0.0637, 1.9339] },
} as const satisfies Table;

export const almondVariance = {
  source: 'codex-treenut-plan',
  standing: 'memory',
  note: '7730/ns 5.759 C^1.561 + 100/nss 0.170 C^1.646 + 0.0484 C²/na; 773 kernels per kg turn the kernels ns into 10 kg.',
  valid: { aflatoxin: [1, 300] },
  values: { sampleMass: 10_000, portionMass: 100, sampling: [5.759, 1.561], preparation: [0.17, 1.646], analysis: [0.0484, 2] },
} as const satisfies Table;

/** Anchors at 20 ng/g; the exponents are those remembered for shelled peanuts, so only 20 ng/g is the source's. */
export const cornVariance = {
  source: 'johansson-thesis',
  standing: 'found',
  note: 'Shelled corn, 2.5 lb (1134 g), 50 g, liquid chromatography: 214.0, 56.3 and 4.6 at 20 ng/g. Growth with C is not in the abstract.',
  valid: { aflatoxin: [20, 20] },
  values: { sampleMass: 1134, portionMass: 50, at20: [214.0, 56.3, 4.6], exponents: [1.3955, 1.7296, 1.9339] },
} as const satisfies Table;

/** Share of kernels taken out by electronic colour sorting and the share of aflatoxin that went with them. */
export const electronicSort = {
  source: 'peanut-science-1975-sort',
  standing: 'secondhand',
  note: 'Mean of lots sorted by an older electronic sorter, without blanching.',
  valid: { removed: [0, 0.1] },
  values: { removed: [0, 0.02, 0.04, 0.06, 0.08, 0.1], aflatoxin: [0, 0.16, 0.28, 0.37, 0.45, 0.51] },
} as const satisfies Table;

/** Blanching followed by electronic colour sorting: means over 8911 lots. */
export const blanchAndSort = {
  source: 'peanut-science-1997-blanching',
  standing: 'found',
  note: 'Aflatoxin down by 89.9 % at a weight loss of 16.8 % (skins, hearts, moisture and rejects). A mean over lots, no promise for one.',
  valid: {},
  values: { aflatoxin: 0.899, weightLoss: 0.168 },
} as const satisfies Table;
