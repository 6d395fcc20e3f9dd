import type { Session } from '@barwright/chain';
import { NoTunnel, tunnelHistory, tunnelOffset, tunnelTable, type TunnelFit } from '@barwright/line';
import type { Engine } from '../engine.js';
import type { AskedFor, Said } from '../trial-protocol.js';
import { fileOf, fileWords, type HeldFile } from './files.js';
import { looks, n, saying, type Words } from './words.js';

type Fit = (TunnelFit & { readonly ok: true }) | { readonly ok: false; readonly reason: string };

export interface Calibration {
  readonly file?: HeldFile;
  readonly fit?: Fit;
  /** K to move the model by: as the log asks, where the plant entered no offset of its own and nobody asked otherwise. */
  readonly offset?: number;
  readonly id?: string;
}

/** What a log of the tunnel asks of its model. */
export function calibration(engine: Engine, asked: AskedFor): Calibration {
  const file = fileOf('tunnel', asked.file);
  const id = engine.from.chain.quantities.find((quantity) => /^station\..*\.exit_offset$/.test(quantity.id))?.id;
  if (!file || id === undefined) return file ? { file } : {};
  const fit = offsetOf(engine, file);
  const entered = engine.session.origin(id) !== 'default';
  const wanted = asked.offset === 'log' || (asked.offset === undefined && !entered);
  return { file, fit, id, ...(fit.ok && wanted ? { offset: fit.offset } : {}) };
}

/** The same on a session of one's own. @returns K that the model was moved by, 0 where it was not */
export function calibrated(engine: Engine, session: Session): number {
  try {
    tunnelHistory(engine.from, session);
  } catch (error) {
    if (error instanceof NoTunnel) return 0;
    throw error;
  }
  const { offset, id } = calibration(engine, {});
  if (offset === undefined || id === undefined) return 0;
  session.set(id, offset);
  return offset;
}

let kept: { readonly key: string; readonly file: HeldFile; readonly fit: Fit } | undefined;

/** The offset takes one run of the tunnel for each reading: kept while bar, line and log stay. Zones of the log stand in for those set. */
function offsetOf(engine: Engine, file: HeldFile): Fit {
  const overrides = Object.entries(engine.session.overrides()).filter(([id]) => !/\.zone_\d+$/.test(id));
  const key = `${engine.version}/${engine.from.bar.name}/${JSON.stringify(overrides)}`;
  if (kept?.key === key && kept.file === file) return kept.fit;
  let fit: Fit;
  try {
    fit = { ok: true, ...tunnelOffset(engine.from, engine.session, tunnelTable(file.cells, file.name), file.name) };
  } catch (error) {
    fit = { ok: false, reason: (error as Error).message };
  }
  kept = { key, file, fit };
  return fit;
}

export function logSaid(words: Words, file: HeldFile, fit: Fit): readonly Said[] {
  if (!fit.ok) return saying(`Against ${file.name}`, [fit.reason]);
  const { celsius } = looks;
  return saying(`Against ${fileWords(file)}`, [
    `${fit.readings} readings: measured ${words.amount(fit.measured, celsius)}, computed ${words.amount(fit.computed, celsius)} without offset.${fit.leftOut > 0 ? ` ${fit.leftOut} with marks of the belt were left out: temper or setting was off.` : ''}`,
    `Offset ${n(fit.offset, 2)} K, 95 % limits ${n(fit.low, 2)} to ${n(fit.high, 2)} K; one reading scatters by ${n(fit.sd, 2)} K. To keep it, write it as the set point “exit offset” of the tunnel.`,
    ...fit.said,
  ]);
}
