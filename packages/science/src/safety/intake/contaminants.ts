import { BadInput } from '../../errors.js';
import { contaminantLimits } from '../../law/contaminants-index.js';
import { contaminantMarkets, limitOn, type ContaminantMarket } from '../../law/contaminants-limit.js';
import { defineModel, type Model } from '../../model.js';

const names = [...new Set(contaminantLimits.map((l) => l.contaminant))];
const products = [...new Set(contaminantLimits.map((l) => l.product))];

export const contaminantLimit = defineModel({
  id: 'contaminant.limit',
  title: 'Legal limit of a contaminant in a market on a day',
  about: 'Dated tables; an empty answer means that none is recorded here, not that the law has none.',
  inputs: [
    { key: 'market', unit: '', meaning: 'Market', kind: 'choice', choices: contaminantMarkets, default: 'EU' },
    { key: 'contaminant', unit: '', meaning: 'Contaminant', kind: 'choice', choices: names },
    { key: 'product', unit: '', meaning: 'Product class', kind: 'choice', choices: products },
    { key: 'day', unit: '', meaning: 'ISO date the limit must be in force', kind: 'choice', default: '2026-01-01' },
    { key: 'measured', unit: 'as limit', meaning: 'Result to judge, in the unit and on the basis of the limit', default: NaN },
  ],
  outputs: [
    { key: 'limit', unit: 'see unit', meaning: 'Limit' },
    { key: 'unit', unit: '', meaning: 'Unit of the limit' },
    { key: 'basis', unit: '', meaning: 'product or fat' },
    { key: 'verdict', unit: '', meaning: "'within', 'above' or 'no limit recorded'; empty without a result" },
    { key: 'from', unit: '', meaning: 'First day in force, as far as known' },
    { key: 'source', unit: '', meaning: 'Text' },
    { key: 'standing', unit: '', meaning: 'How far it may be trusted' },
    { key: 'note', unit: '', meaning: 'Note' },
  ],
  sources: [
    'eu-2023-915',
    'eu-2022-1370',
    'eu-2015-1933',
    'codex-cxs-193',
    'fda-defect-levels',
    'aflatoxin-tolerances-2016',
    'eu-2024-1987',
    'gb-2761',
    'anvisa-rdc-7-2011',
    'fsanz-schedule-19',
    'fda-lead-candy-2006',
  ],
  standing: 'secondhand',
  run: (x) => {
    if (!isDay(x.day)) throw new BadInput(`contaminant.limit, day is '${x.day}', but a date like 2026-03-17 is expected`);
    const found = limitOn(contaminantLimits, x.market as ContaminantMarket, x.contaminant, x.product, x.day);
    const judged = Number.isNaN(x.measured) ? null : !found ? 'no limit recorded' : x.measured <= found.limit ? 'within' : 'above';
    return {
      limit: { value: found?.limit ?? null },
      unit: { value: found?.unit ?? null },
      basis: { value: found?.basis ?? null },
      verdict: { value: judged },
      from: { value: found?.from ?? null },
      source: { value: found?.source ?? null },
      standing: { value: found?.standing ?? null },
      note: { value: found?.note ?? null },
    };
  },
  remarks: (x) => [
    ...(limitOn(contaminantLimits, x.market as ContaminantMarket, x.contaminant, x.product, x.day)
      ? []
      : [{ code: 'NO_LIMIT_RECORDED', message: recordedInstead(x.market, x.contaminant, x.product, x.day) }]),
    {
      code: 'CHECK_THE_LAW',
      message: 'Limits change: check the text in force in your market; measurement uncertainty and the sampling law go with it.',
    },
  ],
});

/** A date that the calendar has. */
function isDay(text: string): boolean {
  const day = new Date(`${text}T00:00:00Z`);
  return /^\d{4}-\d{2}-\d{2}$/.test(text) && !Number.isNaN(day.valueOf()) && day.toISOString().startsWith(text);
}

/** Where none is recorded: the day from which there is one, or the products of the market that have one. */
function recordedInstead(market: string, contaminant: string, product: string, day: string): string {
  const same = contaminantLimits.filter((l) => l.market === market && l.contaminant === contaminant);
  const later = same.filter((l) => l.product === product && l.from > day).map((l) => l.from);
  if (later.length > 0) return `No limit is recorded here for ${day}; the first one from ${later.sort()[0]}.`;
  const known = [...new Set(same.map((l) => l.product))];
  return known.length > 0
    ? `No limit of ${contaminant} is recorded here for ${product} in ${market}; there is one for ${known.join(', ')}.`
    : `No limit of ${contaminant} is recorded here for ${market}: that is not the same as none in law.`;
}

export const contaminantModels: readonly Model[] = [contaminantLimit];
