export { airFraction, dispersedConductivity, foamConductivity, foamDensity, overrun } from './foam.js';
export { foodConductivity, foodDensity, foodSpecificHeat, proximateKeys, type Proximate } from './choi-okos.js';
export { lumpedTemperature, lumpedTimeConstant } from './conduction/lumped.js';
export { semiInfiniteConvection, semiInfiniteFlux, semiInfiniteStep } from './conduction/semi-infinite.js';
export { eigenvalue, fourierAtRatio, meanTemperatureRatio, seriesCoefficient, temperatureRatio, type Shape } from './conduction/solid.js';
export { sucroseApparentVolume, sucroseSolutionDensity, waterDensity } from './sugar-solution.js';
export { density, specificHeat, thermalConductivity, thermalDiffusivity, thermalRange, type PhaseState } from './thermal.js';
