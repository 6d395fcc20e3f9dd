import { remedies, type Remedy } from '@barwright/chain';
import { inWords, presentation, tidy } from '@barwright/line';
import type { Engine } from './engine.js';
import { rangeOf } from './knobs.js';
import type { RemedyLine } from './protocol.js';
import { capital, quantityOf } from './words.js';

/**
 * What would bring a number to a value: each knob by itself, least disturbing first, doing nothing among them.
 * @param value - in the unit shown
 */
export function remedyLines(engine: Engine, id: string, value: number, knobs: readonly string[]): readonly RemedyLine[] {
  const { from, session, shownUnits: units } = engine;
  const { chain } = from;
  const quantity = quantityOf(chain, id)!;
  const wanted = presentation(quantity, units).toInside(value);
  const tried = knobs.map((knob) => {
    const [low, high] = rangeOf(chain, knob, session.number(knob));
    return { id: knob, low, high };
  });
  return remedies(chain, session.snapshot(), id, wanted, tried).map((remedy) => lineOf(engine, id, remedy));
}

function lineOf(engine: Engine, id: string, remedy: Remedy): RemedyLine {
  const { from, session, shownUnits: units } = engine;
  const { chain } = from;
  const { kind, solution } = remedy;
  const target = quantityOf(chain, id)!;
  if (kind === 'nothing') {
    const broken = remedy.broken.length;
    const stays = session.status(id).ok ? `${target.meaning} stays at ${inWords(target, session.value(id), units)}` : 'it has no value';
    return {
      kind,
      title: 'Do nothing',
      detail: `${stays}; ${broken === 0 ? 'every window holds' : `${broken} ${broken === 1 ? 'window is' : 'windows are'} broken`}`,
    };
  }
  const knob = quantityOf(chain, remedy.knob!)!;
  if (kind === 'set' && solution?.found) {
    const { title, detail } = setting(engine, knob.id, solution.knobNow, solution.knobValue, solution.state);
    const breaks = solution.broken.map(({ id: broken }) => quantityOf(chain, broken)!.meaning);
    const { toShown } = presentation(knob, units);
    return {
      kind,
      title,
      detail: `${detail}${breaks.length ? `; breaks the window of ${breaks.slice(0, 2).join(' and ')}` : '; every other window holds'}`,
      set: { [knob.id]: tidy(toShown(solution.knobValue)) },
    };
  }
  const nearest = solution && !solution.found ? solution.nearest : undefined;
  const reach = nearest
    ? `comes no nearer than ${inWords(target, nearest.reached, units)}, with it at ${inWords(knob, nearest.knobValue, units)}`
    : 'cannot tell what it would do';
  return { kind, title: capital(knob.meaning), detail: reach };
}

/** A cook is turned by its temperature, as the probe shows it; anything else by itself. */
function setting(engine: Engine, knob: string, now: number, then: number, state: Engine['truth']): { title: string; detail: string } {
  const { from, session, shownUnits: units } = engine;
  const { chain } = from;
  const quantity = quantityOf(chain, knob)!;
  const shown = quantityOf(chain, `${knob.split('.')[0]}.cook_indicated`);
  const from_ = inWords(quantity, now, units);
  const to = inWords(quantity, then, units);
  if (shown && /\.moisture$/.test(knob) && state.status(shown.id).ok && session.status(shown.id).ok) {
    const [was, is] = [session.number(shown.id), state.number(shown.id)];
    const difference = presentation({ ...shown, unit: 'K' }, 'metric')
      .toShown(Math.abs(is - was))
      .toFixed(1);
    return {
      title: `Cook ${difference} K ${is > was ? 'higher' : 'lower'}: ${inWords(shown, is, units)} as the probe shows`,
      detail: `${quantity.meaning} ${from_} → ${to}`,
    };
  }
  return { title: `${capital(quantity.meaning)}: ${to}`, detail: `now ${from_}` };
}
