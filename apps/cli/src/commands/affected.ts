import { affected, windowIn, type AskedWindow, type DayLogs } from '@barwright/day';
import { openPlant, type PlantOptions } from '../plant.js';
import { followedJson, logsOfDay, printAffected, type BesideOptions } from '../affected.js';
import { Misused, type Out } from '../out.js';

interface AffectedOptions extends PlantOptions, BesideOptions {
  readonly at?: string;
  readonly from?: string;
  readonly to?: string;
  readonly window?: readonly string[];
  readonly good?: readonly string[];
}

/** Which bars and pallets one or several windows of a day touch. */
export async function affectedCommand(folder: string, day: string, options: AffectedOptions, out: Out): Promise<void> {
  const opened = await openPlant(folder, options);
  const logs = await logsOfDay(day, options);
  const windows = windowsOf(logs, options);
  const answer = affected(opened, opened.session, logs, windows);
  if (options.json) out.json(followedJson({ answer, asking: { windows, cannotTell: [], said: [] } }));
  else printAffected(answer, out);
}

function windowsOf(logs: DayLogs, { at, from, to, window = [], good = [] }: AffectedOptions): readonly AskedWindow[] {
  const plain = [at, from, to].filter((text) => text !== undefined);
  if (plain.length > 0 && plain.length < 3)
    throw new Misused('--at, --from and --to belong together: --at enrober --from 13:05 --to 14:34');
  const asked = [...(at === undefined ? [] : [{ at, from: from!, to: to! }]), ...window.map((text) => parted('--window', text))];
  if (asked.length === 0)
    throw new Misused('Say which window: --at enrober --from 13:05 --to 14:34, or --window enrober=13:05/14:34, as often as wanted');
  const windows = asked.map((one): AskedWindow => ({ at: one.at, span: windowIn(logs, one.from, one.to) }));
  for (const text of good) {
    const one = parted('--good', text);
    const safe = windowIn(logs, one.from, one.to);
    const index = windows.findIndex(
      (other) => other.at === one.at && !other.safe && other.span.from! >= safe.from && other.span.to! <= safe.to,
    );
    if (index < 0)
      throw new Misused(`--good "${text}" encloses no window at the ${one.at}; it says the last good reading before and the first good one after a window there`); // prettier-ignore
    windows[index] = { ...windows[index]!, safe };
  }
  return windows;
}

/** 'enrober=13:05/14:34' */
function parted(option: string, text: string): { readonly at: string; readonly from: string; readonly to: string } {
  const found = /^([^=]+)=([^/]+)\/(.+)$/.exec(text);
  if (!found) throw new Misused(`${option} is "${text}"; write the place and its two times, such as ${option} enrober=13:05/14:34`);
  return { at: found[1]!.trim(), from: found[2]!.trim(), to: found[3]!.trim() };
}
