import { euContaminants } from './contaminants-eu.js';
import type { ContaminantLimit } from './contaminants-limit.js';
import { otherContaminants } from './contaminants-other.js';

/** Great Britain kept the texts that stood at the end of 2020; peanuts and fat-based limits as in the EU then. */
const retained: readonly ContaminantLimit[] = euContaminants
  .filter((l) => l.from < '2021-01-01' && (l.until === undefined || l.until > '2020-12-31'))
  .map((l) => ({
    ...l,
    market: 'UK' as const,
    from: '2021-01-01',
    standing: 'memory' as const,
    note: 'Retained Regulation (EC) No 1881/2006 as it stood; changes since then are not tracked.',
  }));

/** Every contaminant limit known here. */
export const contaminantLimits: readonly ContaminantLimit[] = [...euContaminants, ...retained, ...otherContaminants];
