export {
  Builder,
  celsius,
  density,
  fraction,
  gram,
  kelvin,
  kilogram,
  kilogramPerHour,
  lookOfWritten,
  millimetre,
  percent,
  vector,
  windowOf,
  type Look,
} from './builder.js';
export { barSteps } from './bar.js';
export { additionsOf, withoutWater, type Drive } from './parts.js';
export { allergensOf, ingredientNames, nutrients } from './label.js';
export { barParts, sum, type BarPart } from './layers.js';
export { chocolateMarket } from './law.js';
export { componentsOf } from './bar.js';
export { flowRecipeOf, isChocolate, isE476, ladderOf } from './chocolate.js';
export { ladder, usualFlow } from './chocolate-ladder.js';
export { activityAt, crystalId } from './activity.js';
export { flowsAsCaramel } from './flow.js';
