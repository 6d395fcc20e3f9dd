import { Session } from '@barwright/chain';
import { standardPressure } from '@barwright/science';
import { setPointOf } from './cook-batch.js';
import { cookCurve, knobFor } from './cook-curve.js';
import { cookedComponents } from './drive.js';
import type { PlantChain } from './plant-chain.js';

/** Another place, another day or another vessel; exactly one. */
export type Elsewhere =
  | { readonly altitude: number }
  /** Absolute, Pa: a barometer or a vacuum; `component` where only one cook moves. */
  | { readonly pressure: number; readonly component?: string };

/** One cook here and there, the same moisture. */
export interface CookThere {
  readonly component: string;
  readonly moisture: number;
  readonly pressure: { readonly before: number; readonly after: number };
  /** End temperature as the probe shows it, °C, and its half-width; NaN where it would boil below the feed. */
  readonly indicated: { readonly before: number; readonly after: number };
  readonly uncertainty: number;
  /** The line's own set point, moved by the same difference, °C. */
  readonly setPoint?: { readonly before: number; readonly after: number };
  readonly refractometer: { readonly before: number; readonly after: number };
  /** J per kg charged. */
  readonly heat: { readonly before: number; readonly after: number };
  /** K/kPa there: what the weather does. */
  readonly perKilopascal: number;
}

export interface ElsewhereAnswer {
  readonly pressure: number;
  readonly altitude?: number;
  readonly cooks: readonly CookThere[];
  readonly notes: readonly string[];
}

/** Set points of every cook under another pressure, at the same moisture. The session is left as it was. @throws OutOfRange for a height or pressure no kettle meets */
export function cookElsewhere(from: PlantChain, session: Session, there: Elsewhere): ElsewhereAnswer {
  const pressure = 'altitude' in there ? standardPressure(there.altitude) : there.pressure;
  const chosen = 'pressure' in there ? there.component : undefined;
  const cooks = cookedComponents(from)
    .filter(({ name, slug }) => chosen === undefined || name === chosen || slug === chosen)
    .filter((one) => 'pressure' in there || one.stages.some((stage) => stage.cook?.pressure.by === 'atmosphere'))
    .map((component): CookThere => {
      const c = component.slug;
      const before = session.snapshot();
      const after = new Session(from.chain, session.overrides());
      after.observe(`${c}.cook_pressure`, { value: pressure, origin: 'entered' });
      const moisture = before.number(`${c}.moisture`);
      // A cook that ends by its temperature must be told another one to make the same.
      const curve = cookCurve(from, after, component);
      if (curve.knob.endsWith('cook_temperature')) sameMoisture(from, after, c, moisture);
      const both = (id: string) => ({ before: before.number(`${c}.${id}`), after: after.number(`${c}.${id}`) });
      const point = setPointOf(from, component, 'temperature');
      const shown = both('cook_indicated');
      const set = point === undefined ? undefined : before.number(point);
      return {
        ...(set === undefined ? {} : { setPoint: { before: set, after: set + shown.after - shown.before } }),
        component: component.name,
        moisture,
        pressure: { before: before.number(`${c}.cook_pressure`), after: pressure },
        indicated: shown,
        uncertainty: before.uncertainty(`${c}.cook_temperature`) ?? 3,
        refractometer: both('refractometer'),
        heat: both('cook_heat'),
        perKilopascal: after.number(`${c}.cook_per_kpa`),
      };
    });
  return { pressure, ...('altitude' in there ? { altitude: there.altitude } : {}), cooks, notes: notesOn(cooks) };
}

/** Turns the end temperature until the moisture is that of before; the window of the curve moves along. */
function sameMoisture(from: PlantChain, session: Session, c: string, moisture: number): void {
  for (let turn = 0; turn < 12; turn++) {
    const now = session.number(`${c}.moisture`);
    if (Math.abs(now - moisture) < 1e-6) return;
    const component = [...from.plant.components.values()].find((one) => one.slug === c)!;
    const curve = cookCurve(from, session, component);
    const reachable = Math.min(Math.max(moisture, curve.moisture[0]!), curve.moisture.at(-1)!);
    session.set(`${c}.cook_temperature`, knobFor(curve, reachable));
  }
}

function notesOn(cooks: readonly CookThere[]): readonly string[] {
  if (cooks.length === 0) return ['Every cook of this bar is under a pressure of its own: the height and the weather move none of them.'];
  const notes = [
    'The difference between the two pressures is better known than either temperature: move today’s set point by the difference, then confirm by refractometer and laboratory.',
  ];
  if (cooks.some(({ indicated }) => indicated.after < 105))
    notes.push('Colder cooks brown less and invert less: colour and taste must then come from a hold or a kettle after it.');
  if (cooks.some(({ pressure }) => pressure.after < 0.7 * pressure.before))
    notes.push(
      'Under vacuum the mass foams and cools as it lets go; vessel, relief and pump are matters for licensed people and the maker’s manual.',
    );
  return notes;
}
