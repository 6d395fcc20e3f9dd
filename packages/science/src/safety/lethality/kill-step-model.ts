import { BadInput } from '../../errors.js';
import { defineModel } from '../../model.js';
import { judgeKillStep } from './kill-step.js';
import type { KillStepValidation, Limit, RoastLog } from './roast-record.js';

const limitInput = <const K extends string>(key: K, unit: string, meaning: string) =>
  ({ key, unit, meaning: `${meaning}; leave out where the document states none`, default: NaN }) as const;
const series = <const K extends string>(key: K, unit: string, meaning: string, possible: readonly [number, number]) =>
  ({
    key,
    unit,
    meaning: `${meaning}; one value per time, or a single one`,
    kind: 'series',
    possible,
    default: [] as readonly number[],
  }) as const;

export const killStep = defineModel({
  id: 'roasting.kill_step',
  title: 'Whether a roast log proves the kill step under a validation of this roaster',
  about:
    'proven only inside every limit of the plant’s own validation of this roaster together; outside one, or without the document: not proven; a gap, a stuck sensor or a broken clock: cannot tell.',
  inputs: [
    { key: 'validation_id', unit: '', meaning: 'Name of the document; empty where there is none', kind: 'choice', default: '' },
    { key: 'validation_kind', unit: '', meaning: 'Whose document', kind: 'choice', choices: ['plant', 'published'], default: 'plant' },
    { key: 'validation_roaster', unit: '', meaning: 'Roaster it was made on', kind: 'choice', default: 'roaster' },
    { key: 'roaster', unit: '', meaning: 'Roaster of the log', kind: 'choice', default: 'roaster' },
    limitInput('min_air_temperature_c', '°C', 'Least air temperature'),
    limitInput('min_air_velocity_m_s', 'm/s', 'Least air velocity'),
    limitInput('max_bed_depth_mm', 'mm', 'Greatest bed depth'),
    limitInput('min_residence_min', 'min', 'Least residence, or hold at the product temperature'),
    limitInput('min_raw_moisture', '1', 'Least raw moisture, wet basis'),
    limitInput('max_raw_moisture', '1', 'Greatest raw moisture, wet basis'),
    limitInput('min_product_temperature_c', '°C', 'Least temperature of the coldest product'),
    {
      key: 'time_min',
      unit: 'min',
      meaning: 'Times of the readings',
      kind: 'series',
      possible: [-1e9, 1e9],
      default: [] as readonly number[],
    },
    series('air_temperature_c', '°C', 'Air temperature', [-273.15, 1000]),
    series('air_velocity_m_s', 'm/s', 'Air velocity', [-1000, 1e5]),
    series('bed_depth_mm', 'mm', 'Bed depth', [0, 1e6]),
    series('residence_min', 'min', 'Residence', [0, 1e6]),
    series('raw_moisture', '1', 'Raw moisture, wet basis', [0, 100]),
    series('product_temperature_c', '°C', 'Coldest product', [-273.15, 1000]),
    {
      key: 'longest_interval_min',
      unit: 'min',
      meaning: 'Longest interval allowed between readings; left out: 1.5 × the median',
      default: NaN,
    },
  ],
  outputs: [
    { key: 'verdict', unit: '', meaning: 'proven, not proven or cannot tell' },
    { key: 'reason', unit: '', meaning: 'One sentence' },
    { key: 'reasons', unit: '', meaning: 'All reasons' },
    { key: 'readings_proven', unit: '1', meaning: 'Readings inside every limit' },
    { key: 'readings_not_proven', unit: '1', meaning: 'Readings outside a limit' },
    { key: 'readings_cannot_tell', unit: '1', meaning: 'Readings from which nothing follows' },
    { key: 'beside', unit: '', meaning: 'Published studies with their own conditions; not part of the verdict' },
  ],
  sources: ['codex-cxc-1', 'codex-cxc-75', 'poirier-2014', 'sanders-calhoun-2014', 'yan-2021'],
  standing: 'memory',
  run: (x) => {
    const limits = limitsOf(x);
    const validation: KillStepValidation | undefined =
      x.validation_id === ''
        ? undefined
        : { id: x.validation_id, kind: x.validation_kind as 'plant' | 'published', roaster: x.validation_roaster, claim: '', limits };
    const column = (values: readonly number[], factor: number) => (values.length === 0 ? undefined : values.map((v) => v * factor));
    const columns = {
      airTemperature: column(x.air_temperature_c, 1),
      airVelocity: column(x.air_velocity_m_s, 1),
      bedDepth: column(x.bed_depth_mm, 0.001),
      residence: column(x.residence_min, 60),
      rawMoisture: column(x.raw_moisture, 1),
      productTemperature: column(x.product_temperature_c, 1),
    };
    const known = Object.fromEntries(Object.entries(columns).filter(([, values]) => values !== undefined));
    const log: RoastLog = { roaster: x.roaster, time: x.time_min.map((t) => t * 60), ...known };
    const r = judgeKillStep(validation, log, Number.isNaN(x.longest_interval_min) ? {} : { longestInterval: x.longest_interval_min * 60 });
    return {
      verdict: { value: r.verdict },
      reason: { value: r.reason },
      reasons: { value: r.reasons.join(' ') },
      readings_proven: r.rows.proven,
      readings_not_proven: r.rows.notProven,
      readings_cannot_tell: r.rows.cannotTell,
      beside: { value: r.beside.map((s) => `${s.source}: ${s.found} (${s.conditions}). ${s.here}`).join(' ') },
    };
  },
  remarks: () => [
    {
      code: 'ADVICE_ONLY',
      message:
        'Release is decided by HACCP-qualified people under the plant’s own plan and the local law; colour and published studies prove nothing here.',
    },
  ],
});

interface LimitKeys {
  readonly min_air_temperature_c: number;
  readonly min_air_velocity_m_s: number;
  readonly max_bed_depth_mm: number;
  readonly min_residence_min: number;
  readonly min_raw_moisture: number;
  readonly max_raw_moisture: number;
  readonly min_product_temperature_c: number;
}

function limitsOf(x: LimitKeys): KillStepValidation['limits'] {
  const limits: Record<string, Limit> = {};
  const set = (quantity: string, side: 'min' | 'max', value: number): void => {
    if (!Number.isNaN(value)) limits[quantity] = { ...limits[quantity], [side]: value };
  };
  set('airTemperature', 'min', x.min_air_temperature_c);
  set('airVelocity', 'min', x.min_air_velocity_m_s);
  set('bedDepth', 'max', x.max_bed_depth_mm / 1000);
  set('residence', 'min', x.min_residence_min * 60);
  set('rawMoisture', 'min', x.min_raw_moisture);
  set('rawMoisture', 'max', x.max_raw_moisture);
  set('productTemperature', 'min', x.min_product_temperature_c);
  for (const [quantity, { min, max }] of Object.entries(limits)) {
    if (min !== undefined && max !== undefined && min > max)
      throw new BadInput(`The validation's ${quantity} has a least value ${min} above its greatest ${max}`);
  }
  return limits;
}
