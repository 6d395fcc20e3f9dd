import { percent, type Builder } from '@barwright/bar';
import type { Station } from '@barwright/plant';
import type { Table } from '@barwright/science';
import { constantOr, setPointOr } from './given.js';

/** An enrober that nobody described: orders of magnitude, so that directions can be told. */
const usualEnrober = {
  source: 'enrober-practice',
  standing: 'memory',
  note: 'Common practice, no source. What curtain and pan leave, time to a closed belt, blower and its slot, shaker.',
  valid: { blowerSpeed: [0, 40] },
  values: {
    firstThickness: 0.004,
    drainTime: 12,
    blowerSpeed: 20,
    jetWidth: 0.006,
    shakerAmplitude: 0.001,
    shakerFrequency: 600,
    shakerTime: 5,
    curtainMultiple: 4,
  },
} as const satisfies Table;

export const blowerFitted: readonly [number, number] = usualEnrober.valid.blowerSpeed;
const metre = { unit: 'm', show: 'mm', decimals: 1 } as const;
const seconds = { unit: 's', decimals: 0 } as const;
const note = 'common practice, no source; write it as a set point of the enrober';
const from = usualEnrober;

/** Ids of what the enrober does to a coat, in the order in which the film model takes them. */
export interface EnroberIds {
  readonly firstThickness: string;
  readonly drainTime: string;
  readonly blowerSpeed: string;
  readonly jetWidth: string;
  readonly shakerAmplitude: string;
  readonly shakerFrequency: string;
  readonly shakerTime: string;
  readonly calibration: string;
}

/** Roots of the enrober: set points as written, the rest by default. */
export function enroberRoots(b: Builder, station: Station): EnroberIds {
  const { values } = usualEnrober;
  const at = `at the ${station.name}`;
  return {
    blowerSpeed: setPointOr(b, station, 'blower_speed', /blower/i, 'speed', {
      meaning: `air of the blower at the bar, ${at}; 0 where there is none`,
      value: values.blowerSpeed,
      look: { unit: 'm/s', decimals: 1 },
      note,
      from,
    }),
    shakerAmplitude: setPointOr(b, station, 'shaker_amplitude', /(shaker|vibrat\w*) amplitude/i, 'length', {
      meaning: `amplitude of the shaken mesh ${at}`,
      value: values.shakerAmplitude,
      look: metre,
      note,
      from,
    }),
    shakerFrequency: setPointOr(b, station, 'shaker_frequency', /(shaker|vibrat\w*) (frequency|speed)/i, 'count rate', {
      meaning: `strokes of the shaken mesh ${at}`,
      value: values.shakerFrequency,
      look: { unit: '1/min', decimals: 0 },
      note,
      from,
    }),
    firstThickness: constantOr(b, station, 'first_thickness', {
      meaning: `coat that curtain and pan leave at first ${at}`,
      value: values.firstThickness,
      look: metre,
      note,
      from,
    }),
    drainTime: constantOr(b, station, 'drain_time', {
      meaning: `time from the curtain to a closed belt ${at}`,
      value: values.drainTime,
      look: seconds,
      note,
      from,
    }),
    jetWidth: constantOr(b, station, 'jet_width', {
      meaning: `length over which the pressure of the blower falls ${at}`,
      value: values.jetWidth,
      look: metre,
      note,
      from,
    }),
    shakerTime: constantOr(b, station, 'shaker_time', {
      meaning: `time on the shaken mesh ${at}`,
      value: values.shakerTime,
      look: seconds,
      note,
      from,
    }),
    calibration: constantOr(b, station, 'coat_calibration', {
      meaning: `measured over computed coat ${at}`,
      value: 1,
      look: { ...percent, decimals: 0 },
      note: "no coat of this plant was held against the film model yet; 'barwright enrober' says the factor that meets a measured coat",
    }),
  };
}

/** How much more falls on the belt than bars carry away. */
export function curtainMultiple(b: Builder, station: Station): string {
  return constantOr(b, station, 'curtain_multiple', {
    meaning: `chocolate that falls on the belt over what bars carry away, at the ${station.name}`,
    value: usualEnrober.values.curtainMultiple,
    look: { unit: '1', decimals: 1 },
    note: 'common practice, 3 to 5, no source',
    from,
  });
}
