import type { SourceKey } from '../../sources.js';
import { dStudies, peanutBedStudy, peanutLabStudy } from '../data/d-values.js';
import { logReduction, tableRate } from './integrate.js';
import { columnOf, type KillStepQuantity, type RoastLog } from './roast-record.js';

/** A published study set beside a run: what it found, under which conditions, and how the run compares. Never a proof. */
export interface StudyBeside {
  readonly source: SourceKey;
  readonly found: string;
  readonly conditions: string;
  /** How this run stands to those conditions, in words. */
  readonly here: string;
}

/** Mean, least and greatest of a column over the rows that hold a number. */
function rangeOf(log: RoastLog, quantity: KillStepQuantity): { low: number; high: number; mean: number } | undefined {
  const column = columnOf(log, quantity);
  if (!column) return undefined;
  let [low, high, sum, n] = [Infinity, -Infinity, 0, 0];
  for (let i = 0; i < log.time.length; i++) {
    const value = column[i]!;
    if (!(value === value)) continue;
    if (value < low) low = value;
    if (value > high) high = value;
    sum += value;
    n++;
  }
  return n === 0 ? undefined : { low, high, mean: sum / n };
}

/**
 * Published studies beside a log, as plausibility: the air-blown peanut bed, laboratory dry roasting, and for a logged product
 * temperature the log reduction by the decimal reduction times of Salmonella on cocoa beans, cut at the 5 log tested.
 */
export function studiesBeside(log: RoastLog): readonly StudyBeside[] {
  const studies: StudyBeside[] = [];
  const air = rangeOf(log, 'airTemperature');
  const velocity = rangeOf(log, 'airVelocity');
  const depth = rangeOf(log, 'bedDepth');
  if (air && velocity && depth) {
    const v = peanutBedStudy.values;
    const differs: string[] = [];
    if (velocity.low < v.velocity - 0.005) differs.push(`air velocity goes down to ${velocity.low.toFixed(2)} m/s`);
    if (depth.high > v.depth + 0.0005) differs.push(`the bed goes up to ${(depth.high * 1000).toFixed(0)} mm`);
    if (air.low < v.airTemperature[0]) differs.push(`air goes down to ${air.low.toFixed(0)} °C`);
    studies.push({
      source: peanutBedStudy.source,
      found: 'More than 5 log of a surrogate after 21, 15 and 11 min at 149, 163 and 177 °C; at 1.0 m/s and 16 min at most 3 log',
      conditions: 'Peanuts, middle of a 75 mm bed, air 1.3 m/s, that roaster',
      here:
        differs.length === 0
          ? 'This run lies within those conditions; the roaster is another one.'
          : `This run differs: ${differs.join(', ')}.`,
    });
    studies.push({
      source: peanutLabStudy.source,
      found: '4.6 to 4.7 log of Salmonella in 10 min at 154 °C, above 5.4 in 15 min',
      conditions: 'Peanuts, laboratory dry roasting',
      here: 'A thin laboratory bed says little about this one.',
    });
  }
  const product = columnOf(log, 'productTemperature');
  if (product && log.time.length > 1) {
    const logs = cocoaReduction(log, product);
    const { source, matrix } = dStudies['salmonella cocoa bean'];
    if (logs !== undefined) {
      studies.push({
        source,
        found: 'D of Salmonella from 33.3 min at 100 °C to 1.9 min at 140 °C, with tailing',
        conditions: `${matrix}, temperature of the roaster`,
        here: `By those D values this curve gives ${logs >= 5 ? '5 log or more; more than 5 was not tested' : `${logs.toFixed(1)} log`}.`,
      });
    }
  }
  return studies;
}

function cocoaReduction(log: RoastLog, product: Float64Array): number | undefined {
  const minutes: number[] = [];
  const temperatures: number[] = [];
  for (let i = 0; i < log.time.length; i++) {
    const t = log.time[i]! / 60;
    const value = product[i]!;
    if (!Number.isFinite(t) || !Number.isFinite(value) || value > 300 || (minutes.length > 0 && t < minutes.at(-1)!)) continue;
    minutes.push(t);
    temperatures.push(value);
  }
  if (minutes.length < 2) return undefined;
  const { temperature, d } = dStudies['salmonella cocoa bean'].values;
  return logReduction(minutes, temperatures, tableRate(temperature, d, 'no credit'));
}
