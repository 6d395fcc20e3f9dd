import { decodePlant, type WirePlant } from '@barwright/plant/wire';
import { bandPicture } from './band-picture.js';
import { compareVersions } from './compare-versions.js';
import { editsOf } from './edits.js';
import { Engine } from './engine.js';
import { curveOf } from './influence.js';
import { inspect } from './inspect.js';
import type { Answers, Asks, Reply, Request, Verb } from './protocol.js';
import { postsOf } from './posts.js';
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

const verbs: { readonly [V in Verb]: (ask: Asks[V]) => Answers[V] } = {
  open: ({ wire, bar, version, units, changes }) => {
    open = new Engine(decodePlant(wire as WirePlant), bar, version, units);
    open.restore(changes);
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
};

function reply({ seq, verb, ask }: Request): Reply {
  try {
    return { seq, answer: (verbs[verb] as (ask: unknown) => Answers[Verb])(ask) };
  } catch (error) {
    const { code, message } = error as { code?: string; message: string };
    return { seq, refused: { code: code ?? 'REFUSED', message } };
  }
}

self.onmessage = ({ data }: MessageEvent<Request>) => self.postMessage(reply(data));
