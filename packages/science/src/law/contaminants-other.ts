import type { ContaminantLimit, ContaminantMarket } from './contaminants-limit.js';

const aflatoxin = (market: ContaminantMarket, product: string, limit: number, rest: Partial<ContaminantLimit> = {}): ContaminantLimit => ({
  market,
  contaminant: 'aflatoxin total',
  product,
  basis: 'product',
  limit,
  unit: 'µg/kg',
  from: '2016-10-01',
  source: 'aflatoxin-tolerances-2016',
  standing: 'secondhand',
  note: 'As listed in October 2016; the day it came into force is not known here.',
  ...rest,
});

const defect = (contaminant: string, product: string, limit: number, unit: '1' | '1/100 g', note: string): ContaminantLimit => ({
  market: 'US',
  contaminant,
  product,
  basis: 'product',
  limit,
  unit,
  from: '1995-05-01',
  source: 'fda-defect-levels',
  standing: 'found',
  note: `${note} Day of the first list from memory.`,
});

/** Limits of other markets. A market that is not listed may well have one. */
export const otherContaminants: readonly ContaminantLimit[] = [
  aflatoxin('Codex', 'peanuts for further processing', 15, {
    from: '1999-07-01',
    source: 'codex-cxs-193',
    standing: 'found',
    note: 'With its own sampling plan, one 20 kg sample.',
  }),
  aflatoxin('US', 'human food', 20, {
    from: '1969-01-01',
    source: 'fda-defect-levels',
    standing: 'secondhand',
    note: 'Action level; the year is from memory.',
  }),
  aflatoxin('US', 'shelled peanuts, certificate of the marketing order', 15, {
    source: 'cfr-7-996-31',
    standing: 'secondhand',
    note: 'A certified "negative" lot; shellers’ plan.',
  }),
  aflatoxin('Canada', 'nut meat', 15),
  aflatoxin('Australia', 'nuts', 15),
  aflatoxin('China', 'peanuts', 20),
  aflatoxin('Japan', 'all food', 10),
  aflatoxin('Brazil', 'peanuts', 10, { note: 'As listed in October 2016; later texts put peanuts at 20. Check.' }),
  defect('mouldy beans', 'cocoa beans', 0.04, '1', 'Share by count above which action is taken.'),
  defect('insect-infested beans', 'cocoa beans', 0.04, '1', 'Share by count above which action is taken.'),
  defect('shell', 'cocoa liquor', 0.02, '1', 'Share of alkali-free nib above which action is taken.'),
  defect('insect fragments', 'cocoa liquor', 60, '1/100 g', 'Mean of six portions of 100 g.'),
  defect('rejects', 'shelled peanuts', 0.05, '1', 'Share of kernels by count.'),
  defect('insects per 100 lb bag', 'shelled peanuts', 20, '1', 'Whole insects in the siftings of a 100 lb bag.'),
];
