import { gasLosses } from '@barwright/science';
import type { FoamAnswer } from './foam.js';

const grams = (rho: number) => `${(rho / 1000).toFixed(3)} g/cm³`;
const bars = (pascal: number) => `${(pascal / 1e5).toFixed(2)} bar`;
const percent = (x: number, digits = 0) => `${(100 * x).toFixed(digits)} %`;

const range = ([low, high]: readonly [number, number]) => `${(100 * low).toFixed(0)} to ${percent(high)}`;

/** Highest pressure that is proposed for a whip, as a multiple of the plan; beyond it the whip itself decides. */
const most = 1.5;

/** What to do; first whether anything is to be done at all. */
export function foamSentences(answer: Omit<FoamAnswer, 'advice' | 'notes'>): readonly string[] {
  const { state, aim, density, restore, whip, power, component, constantWeight, constantThickness, stiffness } = answer;
  if (state === 'as planned' || state === 'inside')
    return [`Do nothing: ${grams(density)} lies ${state === 'inside' ? 'inside the window' : 'where it is meant to'}.`];
  const sentences: string[] = [];
  if (state === 'no window')
    sentences.push(`Cannot tell whether ${grams(density)} will do: the density of ${component} is written without a tolerance.`);
  else
    sentences.push(
      `${grams(density)} is outside the window: hold the batch until the sheet is corrected, and weigh a second cup before anything is turned.`,
    );
  const thickness = constantWeight.find(({ id }) => id.endsWith('.thickness'));
  const mass = constantThickness.find(({ id }) => id === 'bar.mass');
  if (thickness)
    sentences.push(
      `To keep the weight, sheet ${(1000 * thickness.after).toFixed(2)} mm in place of ${(1000 * thickness.before).toFixed(2)} mm${mass ? `; with the sheet left as it is a bar weighs ${(1000 * mass.after).toFixed(2)} g in place of ${(1000 * mass.before).toFixed(2)} g` : ''}.`,
    );
  const cause =
    Math.abs(power - 1) < 0.02
      ? 'The whip explains it: pressure or temperature, not the albumen.'
      : `The mass holds ${percent(power)} of the gas that the plan asks: look at the whip test of the albumen lot, at speed and time, and at when the fat went in.`;
  sentences.push(cause);
  if (restore.pressure > most * whip.pressure)
    sentences.push(
      `No pressure of this whip brings ${grams(aim)} back (${bars(restore.pressure)} would be needed): change the lot or the dose of albumen.`,
    );
  else if (restore.pressure > 0)
    sentences.push(
      `${bars(restore.pressure)} in the whip, absolute, would bring ${grams(aim)} back with the gas as it is held now; go there in steps and weigh a cup after each.`,
    );
  if (stiffness !== undefined && Math.abs(stiffness - 1) > 0.05)
    sentences.push(
      `Pressed flat it resists ${stiffness > 1 ? `${stiffness.toFixed(1)} times as much` : `${percent(stiffness)} as much`}: ${stiffness > 1 ? 'a firmer bite' : 'it may sag under the caramel'}.`,
    );
  return sentences;
}

/** What the answer rests on. */
export function foamNotes(temperatureByDefault: boolean, kept: number): readonly string[] {
  return [
    'Gas by the laws of Boyle and Gay-Lussac, less the vapour in the bubbles; how much of it the whip takes in is the plant’s own and is learned from its good batches. Pressures are absolute: a gauge shows about a bar less.',
    ...(temperatureByDefault
      ? ['Nobody entered the temperature in the whip; 75 °C is taken, 60 to 90 °C are common practice, no source.']
      : []),
    ...(kept === 1
      ? [
          `No loss of gas by fat and shear is counted until the plant writes "air loss" from a cup before and after; no published share is known. Plants report ${range(gasLosses.values.fat_addition)} at the fat and ${range(gasLosses.values.pumping_and_sheeting)} in pumping and sheeting (common practice, no source).`,
        ]
      : []),
    'No published model says how much less gas a weak albumen holds: the plant’s whip test does.',
  ];
}
