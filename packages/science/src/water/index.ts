export { waterActivity, waterForActivity } from './activity.js';
export { boilingPoint, boilingPointElevation, boilingSensitivity, waterForBoiling } from './boiling.js';
export { groverActivity, moneyBornActivity, norrishActivity, rossActivity } from './firstEstimates.js';
export { freezingPoint } from './freezing.js';
export { conversions, dextroseEquivalentOf, glucoseSyrup, numberAverageMolarMass, type Conversion } from './glucoseSyrup.js';
export { dissolvedSolids, solutionOf, withWater, type Solution } from './solution.js';
