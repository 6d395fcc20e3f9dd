import { gram, isChocolate, kilogramPerHour, millimetre, type Builder } from '@barwright/bar';
import type { State } from '@barwright/chain';
import type { Bar, Line, Plant } from '@barwright/plant';
import { coatOfBar, enroberFlows, type Coat, type CoatTask } from '@barwright/science';
import { blowerFitted, curtainMultiple, enroberRoots, type EnroberIds } from './enrober-roots.js';
import { stationNamed } from './given.js';
import type { PlantChain } from './plant-chain.js';

const sources = ['plane-films', 'jet-wiping', 'liu-mei-1989', 'covey-stanmore-1981', 'wichchukit-2005', 'enrober-practice'];
const inputsOf = (c: string, ids: EnroberIds): readonly string[] => [
  'bar.cut_length',
  'bar.cut_width',
  'bar.centre_height',
  'bar.centre_mass',
  `${c}.yield_value`,
  `${c}.plastic_viscosity`,
  `${c}.density`,
  'line.belt_speed',
  ids.firstThickness,
  ids.drainTime,
  ids.blowerSpeed,
  ids.jetWidth,
  ids.shakerAmplitude,
  ids.shakerFrequency,
  ids.shakerTime,
  ids.calibration,
];

/** Numbers in the order of `inputsOf` as a task; the shaker comes in strokes a minute. */
function taskOf(v: readonly number[]): CoatTask {
  return {
    length: v[0]!,
    width: v[1]!,
    height: v[2]!,
    centreMass: v[3]!,
    yieldValue: v[4]!,
    plasticViscosity: v[5]!,
    density: v[6]!,
    beltSpeed: v[7]!,
    firstThickness: v[8]!,
    drainTime: v[9]!,
    blowerSpeed: v[10]!,
    jetWidth: v[11]!,
    shakerAmplitude: v[12]!,
    shakerFrequency: v[13]! / 60,
    shakerTime: v[14]!,
    calibration: v[15]!,
  };
}

/**
 * The coat that film theory expects from the flow of the chocolate and the settings of the enrober, beside the coat that the plant entered:
 * coat.predicted_mass, coat.predicted_thickness(_top, _side, _bottom), station.<enrober>.curtain_flow. It does not stand in for the coat
 * entered: no pair of yield value and thickness was found in print to prove it with. Directions are safe, sizes are not.
 */
export function enroberSteps(b: Builder, plant: Plant, bar: Bar, line: Line): void {
  const station = stationNamed(line, /enrob/i);
  const coat = bar.coat && plant.components.get(bar.coat.component)!;
  if (!station || !coat || !isChocolate(coat)) return;
  const ids = enroberRoots(b, station);
  const open = bar.coat!.covers === 'without underside';
  const faces = open ? (['top', 'side'] as const) : (['top', 'side', 'bottom'] as const);
  const spread = (calibration: number) => (calibration === 1 ? 0.75 : 0.15);
  b.step({
    title: 'Coat by drainage',
    inputs: [...inputsOf(coat.slug, ids)],
    outputs: [
      { id: 'coat.predicted_mass', meaning: `${coat.name} on a bar as film theory expects it`, ...gram },
      ...faces.map((face) => ({
        id: `coat.predicted_thickness_${face}`,
        meaning: `thickness of the coat, ${face}, as film theory expects it`,
        ...millimetre,
      })),
    ],
    equation:
      'sides: Casson film drained under gravity and shaking; top: the thinner of jet wiping, levelling over the edges and the first thickness; bottom: squeezed until τ0 w/(4 p) carries the bar',
    sources,
    standing: 'memory',
    note: 'Not validated against measured coats. Trust the direction: more yield value or viscosity is thicker, more blower, shaking or time is thinner. The bottom is least certain: bottomer and mesh are not in it.',
    run: (...values: number[]) => {
      const { mass, top, side, bottom } = withoutUnderside(coatOfBar(taskOf(values)), taskOf(values), open);
      return open ? [mass, top, side] : [mass, top, side, bottom];
    },
    uncertainty: (inputs, outputs) => outputs.map((value) => spread(inputs.at(-1) as number) * (value as number)),
    findings: (inputs) => {
      const speed = inputs[10] as number;
      if (speed <= blowerFitted[1]) return [];
      return [
        {
          code: 'OUTSIDE_FITTED_RANGE',
          level: 'note',
          quantity: 'coat.predicted_mass',
          message: `The blower is set to ${speed.toFixed(0)} m/s; what it does to a coat is thought through up to ${blowerFitted[1]} m/s.`,
        },
      ];
    },
  });
  const multiple = curtainMultiple(b, station);
  b.step({
    title: 'Chocolate over the belt',
    inputs: ['coat.mass', 'line.rate', multiple],
    outputs: [
      {
        id: `station.${station.slug}.curtain_flow`,
        meaning: `chocolate that falls on the belt of the ${station.name}`,
        ...kilogramPerHour,
      },
      {
        id: `station.${station.slug}.return_flow`,
        meaning: `chocolate that comes back from the ${station.name} and is melted again`,
        ...kilogramPerHour,
      },
    ],
    equation: 'curtain = multiple · coat · rate; return = curtain − coat · rate',
    sources: ['enrober-practice'],
    standing: 'memory',
    run: (mass: number, rate: number, times: number) => {
      const flows = enroberFlows(mass, rate, times);
      return [flows.curtainFlow, flows.returnFlow];
    },
  });
}

/** A coat that leaves the underside free lacks the bottom face and the lower half of the rim. */
function withoutUnderside(coat: Coat, task: CoatTask, open: boolean): Coat {
  if (!open) return coat;
  const { length, width, density } = task;
  const under = length * width * coat.bottom + (2 * (length + width) * coat.side * coat.bottom * Math.PI) / 4;
  return { ...coat, mass: coat.mass - density * under };
}

/** The film task of a state, for what-ifs; undefined where there is no enrober or no chocolate coat. */
export function enroberTask(from: PlantChain, state: State): CoatTask | undefined {
  const step = from.chain.steps.find((other) => other.outputs[0]?.id === 'coat.predicted_mass');
  return step && taskOf(step.inputs.map((id) => state.number(id)));
}

/** The coat of a task on this bar. */
export function coatOf(from: PlantChain, task: CoatTask): Coat {
  return withoutUnderside(coatOfBar(task), task, from.bar.coat?.covers === 'without underside');
}
