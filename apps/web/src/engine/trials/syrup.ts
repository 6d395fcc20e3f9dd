import { deliveryAnswer, NoSyrup, type DeliveryAnswer } from '@barwright/line';
import type { Engine } from '../engine.js';
import type { AskedFor, FigureTable, TrialSheet } from '../trial-protocol.js';
import { askedNumber, capital, cautions, choiceField, n, numberField, saying, sentences, Words } from './words.js';

/** A tanker of syrup that is not quite as ordered. */
export function syrupSheet(engine: Engine, asked: AskedFor, _width: number): TrialSheet {
  const { from, session } = engine;
  const words = new Words(engine);
  const syrups = [...from.plant.materials.values()].filter(({ syrup, slug }) => syrup && from.chain.index.has(`material.${slug}.solids`));
  const material = syrups.find(({ slug }) => slug === asked.syrup) ?? syrups[0];
  if (!material) throw new NoSyrup(`${from.bar.name} uses no syrup that is written by solids and DE`);
  const m = `material.${material.slug}`;
  const [solids, equivalent] = [askedNumber(asked, 'solids'), askedNumber(asked, 'de')];
  const lot = from.plant.plans
    .flatMap(({ lots }) => lots)
    .filter((one) => one.material === material.name)
    .at(-1);
  const ofLot = (name: RegExp) => lot?.results?.find((one) => name.test(one.name))?.value.value;
  const delivered = {
    solids: solids === undefined ? (ofLot(/solids/i) ?? session.number(`${m}.solids`)) : solids / 100,
    dextroseEquivalent: equivalent ?? ofLot(/^DE$|dextrose/i) ?? session.number(`${m}.dextrose_equivalent`),
  };
  const load = askedNumber(asked, 'load');
  const answer = deliveryAnswer(from, session, material.name, { ...delivered, ...(load === undefined ? {} : { mass: 1000 * load }) });
  const own = lot && solids === undefined && equivalent === undefined ? `, lot ${lot.lot}` : '';
  return {
    part: 'syrup',
    ...(answer.verdict === 'do nothing' ? {} : { mark: answer.verdict === 'cannot tell' ? ('seen' as const) : ('act' as const) }),
    title: `${capital(material.name)}${own} at ${n(100 * delivered.solids, 1)} % and DE ${n(delivered.dextroseEquivalent, 1)}: ${answer.verdict}.`,
    sub: sentences(answer.sentences[0]),
    fields: [
      ...choiceField('syrup', 'Syrup', material.slug, syrups.map((one) => ({ value: one.slug, text: one.name }))), // prettier-ignore
      numberField(asked, 'solids', 'Dry solids as delivered', '%', 100 * delivered.solids, 2),
      numberField(asked, 'de', 'Dextrose equivalent as delivered', 'DE', delivered.dextroseEquivalent, 1),
      numberField(asked, 'load', 'Load (0: not told)', 't', load ?? 0, 1),
    ],
    knobs: [],
    plates: [],
    tables: answer.components.map((one) => effectsTable(words, one)),
    said: [...saying('The proof', answer.sentences.slice(1, -1)), ...cautions(answer.sentences.slice(-1))],
  };
}

function effectsTable(words: Words, { component, share, effects }: DeliveryAnswer['components'][number]): FigureTable {
  const { chain } = words.engine.from;
  return {
    caption: `${component}, ${n(100 * share, 1)} % of the charge, the cook held at its end temperature`,
    head: ['as ordered', 'as delivered', 'of the room to its limit'],
    rows: effects.map(({ id, meaning, before, after, ofRoom }) => {
      const quantity = chain.quantities[chain.index.get(id)!]!;
      const finer = { ...quantity, decimals: (quantity.decimals ?? 2) + 1 };
      return {
        name: meaning,
        id,
        cells: [
          { text: words.amount(before, finer) },
          { text: words.amount(after, finer) },
          { text: ofRoom === undefined ? 'no limit' : `${n(100 * ofRoom, 0)} %`, act: ofRoom !== undefined && ofRoom > 0.25 },
        ],
      };
    }),
  };
}
