export { airFraction, dispersedConductivity, foamConductivity, foamDensity, overrun } from './foam.js';
export { sucroseApparentVolume, sucroseSolutionDensity, waterDensity } from './sugar-solution.js';
export { density, specificHeat, thermalConductivity, thermalDiffusivity, thermalRange, type PhaseState } from './thermal.js';
