export { standardAltitude, standardPressure, stationPressure } from './atmosphere.js';
export { activityOfIce } from './ice.js';
export { latentHeatOfVaporisation, saturatedSteamDensity, saturatedWaterDensity, saturationSlope } from './latentHeat.js';
export { saturationPressure, saturationTemperature } from './saturation.js';
