import type { Engine } from '../engine.js';
import { trialParts, type AskedFor, type TrialLine, type TrialPart, type TrialSheet } from '../trial-protocol.js';
import { batchSheet } from './batch.js';
import { coatSheet } from './coat.js';
import { cookerSheet } from './cooker.js';
import { cooksSheet } from './cooks.js';
import { foamSheet } from './foam.js';
import { flowSheet } from './flow.js';
import { lotsSheet } from './lots.js';
import { namesSheet } from './names.js';
import { pressureSheet } from './pressure.js';
import { roastsSheet } from './roasts.js';
import { slabSheet } from './slab.js';
import { speedSheet } from './speed.js';
import { syrupSheet } from './syrup.js';
import { temperSheet } from './temper.js';
import { tunnelSheet } from './tunnel.js';
import { windowSheet } from './window.js';
import { tight } from './words.js';

export { takeFile } from './files.js';

/** px: below it a drawing is not squeezed any more, it scrolls. */
const least = 560;

type Answering = (engine: Engine, asked: AskedFor, width: number) => TrialSheet;

/** The blend fetches an optimiser and stands apart (`blend.ts`). */
export type PromptPart = Exclude<TrialPart, 'blend'>;

const answering: Readonly<Record<PromptPart, Answering>> = {
  speed: speedSheet,
  cooks: cooksSheet,
  batch: batchSheet,
  window: windowSheet,
  syrup: syrupSheet,
  pressure: pressureSheet,
  cooker: cookerSheet,
  foam: foamSheet,
  slab: slabSheet,
  lots: lotsSheet,
  roasts: roastsSheet,
  flow: flowSheet,
  names: namesSheet,
  temper: temperSheet,
  coat: coatSheet,
  tunnel: tunnelSheet,
};

/** One question answered. @throws with one sentence where the plant, the line or a file lacks what it needs */
export function trial(engine: Engine, part: PromptPart, asked: AskedFor, width: number): TrialSheet {
  const sheet = answering[part](engine, asked, Math.max(least, width));
  return { ...sheet, title: tight(sheet.title) };
}

/** The sentence of every question, as nobody asked for anything else; where one has no answer, why. */
export function trialLines(engine: Engine): readonly TrialLine[] {
  return trialParts.map((part): TrialLine => {
    if (part === 'blend') return { part, mark: 'seen', title: 'The cheapest blend is computed when it is opened.', sub: '' };
    try {
      const { mark, title, sub } = trial(engine, part, {}, 900);
      return { part, title, sub, ...(mark ? { mark } : {}) };
    } catch (error) {
      const { code, message } = error as { code?: string; message: string };
      if (code === undefined) throw error;
      return { part, title: `${message}${/[.?]$/.test(message) ? '' : '.'}`, sub: '', refused: true };
    }
  });
}
