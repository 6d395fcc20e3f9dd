import { isChocolate } from '@barwright/bar';
import { whiskers } from '@barwright/drawing';
import { chocolateNames, chocolateOf, type ChocolateNames, type MarketNames } from '@barwright/line';
import type { Engine } from '../engine.js';
import type { AskedFor, FigureTable, Plate, TrialSheet } from '../trial-protocol.js';
import { capital, cautions, choiceField, n, saying, sentences } from './words.js';

const titles = { eu: 'European Union', codex: 'Codex', us: 'United States' } as const;

/** The names in law that a chocolate may carry, market by market, with the room each has. */
export function namesSheet(engine: Engine, asked: AskedFor, width: number): TrialSheet {
  const { from, session } = engine;
  const component = chocolateOf(from, asked.component);
  const names = chocolateNames(from, session, component);
  const { wanted } = names;
  const chocolates = [...from.plant.components.values()].filter(
    (other) => isChocolate(other) && from.chain.index.has(`${other.slug}.yield_value`),
  );
  const refused = wanted?.result?.allowed === false;
  return {
    part: 'names',
    ...(refused ? { mark: 'act' as const } : {}),
    title: titleOf(names),
    sub: sentences(...names.markets.map(({ market, allowed }) => `${titles[market]}: ${allowed.length === 0 ? 'no name that we hold a rule for' : `${allowed.length} ${allowed.length === 1 ? 'name' : 'names'}, the tightest “${allowed[0]!.name}” with ${n(100 * allowed[0]!.tightest.margin, 2)} points of room`}`)), // prettier-ignore
    fields: [...choiceField('component', 'Chocolate', component.slug, chocolates.map(({ slug, name }) => ({ value: slug, text: name })))], // prettier-ignore
    knobs: [],
    plates: names.markets.map((market) => marketPlate(market, width)),
    tables: names.markets.map((market) => marketTable(market, `${component.slug}.composition`)),
    said: [
      ...names.markets.flatMap(
        ({ market, refused: list }) =>
        saying(`What other names lack, ${titles[market]}`, list.slice(0, 6).flatMap(({ change }) => change.map((sentence) => `Not ${sentence}.`))), // prettier-ignore
      ),
      ...cautions(names.cautions),
    ],
  };
}

function titleOf({ component, wanted, markets }: ChocolateNames): string {
  if (!wanted) {
    const count = markets.reduce((sum, { allowed }) => sum + allowed.length, 0);
    return `${capital(component)} may carry ${count} names in ${markets.length} markets; the label names none of them.`;
  }
  if (!wanted.result) return `We hold no rule for “${wanted.name}” (${titles[wanted.market]}).`;
  const { allowed, tightest } = wanted.result;
  const room = `${tightest.quantity.replaceAll('_', ' ')} is ${n(100 * tightest.actual, 2)} %, ${tightest.bound} ${+(100 * tightest.limit).toFixed(2)} % is asked`;
  return `${capital(component)} ${allowed ? 'may' : 'may not'} be called “${wanted.name}” (${titles[wanted.market]}): ${room}.`;
}

function marketPlate({ market, allowed, refused }: MarketNames, width: number): Plate {
  const rows = [...allowed, ...refused.slice(0, 4)];
  const drawn = whiskers({
    width,
    zero: 'its limit',
    unit: `${titles[market]}: points of room to the tightest limit`,
    rows: rows.map(({ name, allowed: may, tightest }) => ({
      id: name,
      name,
      value: 100 * tightest.margin,
      pale: !may,
      note: `${tightest.quantity.replaceAll('_', ' ')} ${n(100 * tightest.actual, 1)} %, ${tightest.bound} ${+(100 * tightest.limit).toFixed(2)} %`,
    })),
  });
  return {
    name: `Names in ${titles[market]} and their room`,
    marks: drawn.marks,
    width: drawn.width,
    height: drawn.height,
    ...(market === 'eu' ? { caption: 'Dots: names that composition allows. Rings left of the limit: names it does not.' } : {}),
  };
}

function marketTable({ market, source, edition, basis, allowed, inForceFrom }: MarketNames, id: string): FigureTable {
  return {
    caption: `${titles[market]}: ${source}, ${edition}, in force from ${inForceFrom}. Shares of ${basis.replace(/\.$/, '')}`,
    head: ['what decides', 'has', 'asked', 'room', 'where it stands'],
    words: [0, 4],
    rows: allowed.flatMap(({ name, reference, requirements, condition }) =>
      requirements.map((r, i) => ({
        name: i === 0 ? name : `${name}, also`,
        cells: [
          { text: r.quantity.replaceAll('_', ' '), id },
          { text: `${n(100 * r.actual, 2)} %` },
          { text: `${r.bound} ${+(100 * r.limit).toFixed(2)} %` },
          { text: `${n(100 * r.margin, 2)} points`, act: !r.met },
          { text: `${reference}${condition ? `; ${condition}` : ''} (${r.standing})` },
        ],
      })),
    ),
  };
}
