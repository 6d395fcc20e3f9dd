import { decodePlant, type WirePlant } from '@barwright/plant/wire';
import { bandPicture } from './band-picture.js';
import { compareVersions } from './compare-versions.js';
import { editsOf } from './edits.js';
import { Engine } from './engine.js';
import { curveOf } from './influence.js';
import { inspect } from './inspect.js';
import type { Answers, Asks, Reply, Request, Units, Verb } from './protocol.js';
import { postsOf } from './posts.js';
import { rehearsal } from './rehearsal.js';
import { remedyLines } from './remedy-lines.js';

/** The engine at work behind the page: one request, one reply, in order. */
let open: Engine | undefined;

function engine(): Engine {
  if (!open) throw new Error('No version is open yet');
  return open;
}

const opened = () => ({ catalog: engine().catalog(), frame: engine().frame() });
const framed = (act: (of: Engine) => void) => {
  act(engine());
  return engine().frame();
};

/** Trials come when they are asked for: nobody waits for them before the first picture. */
const trials = () => import('./trials/answer.js');

let rehearsed = false;

/** Once, in turns, when the page has had time to draw itself; every request is answered between two of them. */
function rehearse({ from, version }: Engine, units: Units): void {
  if (rehearsed) return;
  rehearsed = true;
  setTimeout(() => {
    const turns = rehearsal(new Engine(from.plant, from.bar.name, version, units));
    const turn = () => {
      if (!turns.next().done) setTimeout(turn);
    };
    turn();
  }, 150);
}

const verbs: { readonly [V in Verb]: (ask: Asks[V]) => Answers[V] | Promise<Answers[V]> } = {
  open: ({ wire, bar, version, units, changes }) => {
    open = new Engine(decodePlant(wire as WirePlant), bar, version, units);
    open.restore(changes);
    rehearse(open, units);
    return opened();
  },
  units: ({ units }) => {
    engine().read(units);
    return opened();
  },
  set: ({ values, end }) => framed((of) => of.set(values, end)),
  undo: () => framed((of) => of.undo()),
  redo: () => framed((of) => of.redo()),
  truth: () => framed((of) => of.toTruth()),
  inspect: ({ id }) => inspect(engine(), id),
  curve: ({ id, knob }) => curveOf(engine(), id, knob),
  remedies: ({ id, value, knobs }) => remedyLines(engine(), id, value, knobs),
  posts: ({ knob, low, high }) => postsOf(engine(), knob, low, high),
  edits: () => editsOf(engine()),
  compare: ({ wire }) => compareVersions(engine(), decodePlant(wire as WirePlant)),
  band: ({ measure, width, height }) => bandPicture(engine(), measure, width, height),
  along: async () => (await import('./along/answer.js')).alongAnswer(engine()),
  file: async (ask) => (await trials()).takeFile(ask),
  trial: async ({ part, asked, width }) =>
    part === 'blend'
      ? (await import('./trials/blend.js')).blendSheet(engine(), asked)
      : (await trials()).trial(engine(), part, asked, width),
  trials: async () => (await trials()).trialLines(engine()),
};

function refused(seq: number, error: unknown): Reply {
  const { code, message } = error as { code?: string; message: string };
  return { seq, refused: { code: code ?? 'REFUSED', message } };
}

/** At once where the answer is there at once, so that pulls keep their order. */
function answer({ seq, verb, ask }: Request): void {
  const send = (reply: Reply) => self.postMessage(reply);
  try {
    const found = (verbs[verb] as (ask: unknown) => Answers[Verb] | Promise<Answers[Verb]>)(ask);
    if (found instanceof Promise)
      found.then(
        (later) => send({ seq, answer: later }),
        (error: unknown) => send(refused(seq, error)),
      );
    else send({ seq, answer: found });
  } catch (error) {
    send(refused(seq, error));
  }
}

self.onmessage = ({ data }: MessageEvent<Request>) => answer(data);
