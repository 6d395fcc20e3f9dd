import { defineModel } from '../../model.js';
import { conversions, dextroseEquivalents, glucoseSyrup, numberAverageMolarMass, type Conversion } from '../glucoseSyrup.js';

export const glucoseSyrupModel = defineModel({
  id: 'glucose_syrup.composition',
  title: 'Composition of a glucose syrup',
  about:
    'Glucose and maltose from published spectra, the rest as longer chains, as many as make up the dextrose equivalent (one reducing end per molecule).',
  inputs: [
    { key: 'solids', unit: '1', meaning: 'dry substance, mass fraction', possible: [0, 1], default: 0.8 },
    {
      key: 'dextrose_equivalent',
      unit: '1',
      meaning: 'per cent of the dry substance',
      possible: dextroseEquivalents,
      fitted: [20, 70],
      default: 42,
    },
    { key: 'conversion', unit: '1', kind: 'choice', meaning: 'how the starch was broken down', choices: conversions, default: 'acid' },
  ],
  outputs: [
    { key: 'water', unit: '1', meaning: 'mass fraction of the syrup' },
    { key: 'glucose', unit: '1', meaning: 'mass fraction of the syrup' },
    { key: 'maltose', unit: '1', meaning: 'mass fraction of the syrup' },
    { key: 'higher_saccharides', unit: '1', meaning: 'mass fraction of the syrup' },
    { key: 'higher_saccharides_molar_mass', unit: 'g/mol', meaning: 'mean of the chains of three units and more' },
    { key: 'molar_mass', unit: 'g/mol', meaning: 'number average of the dry substance' },
    { key: 'sugars', unit: '1', meaning: 'glucose and maltose, as a label counts sugars' },
  ],
  sources: ['pancoast-junk-1980', 'dextrose-equivalent'],
  standing: 'memory',
  run: ({ solids, dextrose_equivalent, conversion }) => {
    const syrup = glucoseSyrup(solids, dextrose_equivalent, conversion as Conversion);
    const chains = syrup.higher_saccharides!;
    const within = (value: number) => ({ value, low: value * 0.9, high: value * 1.1 });
    return {
      water: syrup.water!,
      glucose: within(syrup.glucose!),
      maltose: within(syrup.maltose!),
      higher_saccharides: within(chains),
      ...(chains > 0 ? { higher_saccharides_molar_mass: within((1000 * chains) / syrup.higher_saccharides_mol!) } : {}),
      molar_mass: within(numberAverageMolarMass(dextrose_equivalent)),
      sugars: within(syrup.glucose! + syrup.maltose!),
    };
  },
});
