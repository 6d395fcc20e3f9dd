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
  sources: ['eu-2023-915', 'eu-2022-1370', 'eu-2015-1933', 'codex-cxs-193', 'fda-defect-levels', 'aflatoxin-tolerances-2016'],
  standing: 'secondhand',
  run: (x) => {
    if (!/^\d{4}-\d{2}-\d{2}$/.test(x.day))
      throw new BadInput(`contaminant.limit, day is '${x.day}', but a date like 2026-03-17 is expected`);
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
  remarks: () => [
    {
      code: 'CHECK_THE_LAW',
      message: 'Limits change: check the text in force in your market; measurement uncertainty and the sampling law go with it.',
    },
  ],
});

export const contaminantModels: readonly Model[] = [contaminantLimit];
