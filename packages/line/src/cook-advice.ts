import type { BatchAnswer } from './cook-batch.js';
import type { PlantChain } from './plant-chain.js';

const percent = (x: number, digits = 1) => `${(100 * x).toFixed(digits)} %`;
const words = {
  laboratory: 'the laboratory',
  temperature: 'the end temperature',
  refractometer: 'the refractometer',
  viscosity: 'the viscosity',
};

const growthWords = {
  nothing:
    'Nothing grows at this water activity (below 0.60, the band of the model included); the batch is a matter of quality. Release stays with the people whose name stands for it.',
  'cannot tell':
    'Cannot tell whether anything can grow: the computed water activity lies below 0.60, but its band reaches it. Hold the batch and measure the activity; the qualified HACCP team decides.',
  may: 'The water activity is at or above 0.60: moulds and yeasts that stand dryness may grow. Hold the batch; the qualified HACCP team decides.',
} as const;

type Open = Omit<BatchAnswer, 'advice' | 'notes'>;

/** Whether the moisture lies in its window; true where it has none. */
export function insideWindow({ moisture, window }: Pick<BatchAnswer, 'moisture' | 'window'>): boolean {
  return !(moisture < (window.low ?? -Infinity) || moisture > (window.high ?? Infinity));
}

/** What to do now, most urgent first. */
export function adviceOnBatch(answer: Open): readonly string[] {
  const { component, probe, deposit, neighbours, says, moisture, aim } = answer;
  const advice: string[] = [];
  const inside = insideWindow(answer);
  const wet = moisture > aim;
  const alone = says.length > 1 && says[0]!.reading === 'laboratory' && says.slice(1).every((one) => Math.abs(one.moisture - says[0]!.moisture) > 0.005) && spread(says.slice(1).map((one) => one.moisture)) < 0.005; // prettier-ignore
  if (alone)
    advice.push(
      `Repeat the laboratory result first: ${says.slice(1).map((one) => words[one.reading]).join(' and ')} say about ${percent(says[1]!.moisture)}, it alone says ${percent(says[0]!.moisture)}. A single result that nothing confirms holds no bars.`, // prettier-ignore
    );
  else if (probe?.contradicts) {
    const { shown, boilsAt, error, indicated, pressure } = probe;
    advice.push(
      `Temperature and solids contradict: a mass that holds ${percent(moisture)} boils at ${boilsAt.toFixed(1)} °C on this probe's scale, and it showed ${shown.toFixed(1)} °C. The probe shows ${Math.abs(error).toFixed(1)} K too ${error > 0 ? 'much' : 'little'}, or the pressure above the mass was ${Math.abs(pressure / 100).toFixed(0)} mbar ${pressure < 0 ? 'lower' : 'higher'} than it is taken to be. It is not the cook.`, // prettier-ignore
      `Check the probe against a reference in boiling water and read the pressure. Until then cook to ${indicated.toFixed(1)} °C as the probe shows it, and confirm the first batch by refractometer and laboratory.`,
    );
  }
  if (inside && !probe?.contradicts && !alone) advice.push(`Do nothing: ${component} at ${percent(moisture, 2)} lies inside its window.`);
  if (!inside && !alone) {
    if (deposit && Math.abs(deposit.wanted - deposit.now) > 0.3)
      advice.push(
        deposit.inWindow
          ? `Lay this batch at ${deposit.wanted.toFixed(1)} °C instead of ${deposit.now.toFixed(1)} °C: it then flows as it should.`
          : `To flow as it should this batch would have to be laid at ${deposit.wanted.toFixed(1)} °C, outside its window: ${wet ? 'lay it as cold as the window allows, or blend it with a drier batch' : 'lay it as warm as the window allows, or blend it with a wetter batch'}.`, // prettier-ignore
      );
    const over = neighbours.filter(({ step }) => step.limit !== undefined && step.after > step.limit);
    for (const { other, step } of over)
      advice.push(
        `Hold the bars made of it for a slump check of two weeks and a look at the ${other}: the step in water activity is ${step.after.toFixed(3)}, at most ${step.limit!.toFixed(3)} is permitted.`,
      );
    if (over.length === 0) advice.push('Keep samples of the bars made of it: no other window is broken by the moisture alone.');
  }
  advice.push(growthWords[answer.grows]);
  return advice;
}

function spread(values: readonly number[]): number {
  return Math.max(...values) - Math.min(...values);
}

/** What the numbers rest on. */
export function notesOnBatch(from: PlantChain, answer: Open): readonly string[] {
  const notes: string[] = [];
  if (answer.slump)
    notes.push(
      'The shape is that of a free-standing strip that nothing but its viscosity holds: no coat, no grain, no network. It runs out faster than a bar does; compare the two.',
    );
  const anchored = from.plant.components.get(answer.component)?.measuredViscosity !== undefined;
  if (answer.slump && !anchored) notes.push('The plant has measured no viscosity of it: levels are the model’s, ratios hold better.');
  notes.push(
    'Readings are judged against the set points of the line, so that a constant error of the model cancels; only its slope is used.',
    'Hot mass above 110 °C sticks and burns deep; samples and probe checks by trained people only. Barwright advises only.',
  );
  return notes;
}
