import type { Plant } from '@barwright/plant';
import { standardPressure } from '@barwright/science';
import type { Builder } from './builder.js';

/** Altitude and pressure of the plant: the barometer of the day where it was read, else the standard atmosphere. */
export function plantSteps(b: Builder, plant: Plant): void {
  const altitude = b.entered('plant.altitude', 'altitude of the plant', plant.altitude, { unit: 'm', decimals: 0 });
  const pressure = { unit: 'Pa', show: 'mbar', decimals: 1 };
  if (plant.barometer) {
    b.entered('plant.pressure', 'air pressure at the plant, absolute', plant.barometer, pressure);
    return;
  }
  b.step({
    title: 'Standard atmosphere',
    inputs: [altitude],
    outputs: [{ id: 'plant.pressure', meaning: 'air pressure at the plant, absolute', ...pressure }],
    equation: 'p = 101325 · (1 − 2.25577·10⁻⁵ · h)^5.25588 up to 11 km; weather moves it by ± 3 kPa',
    sources: ['iso-2533-1975'],
    run: standardPressure,
    uncertainty: () => [3000],
  });
}
