import { marginOf, type State } from '@barwright/chain';
import { inWords, stationsByUse, type PlantChain } from '@barwright/line';
import type { Sentence, Units } from './protocol.js';
import { capital, limitWords, narrowestWords, quantityOf, wordsOf } from './words.js';

type Said = Sentence['all'][number];

/** Everything a person should see of a state, worst first: findings, then windows that no finding speaks of. */
export function sayings(from: PlantChain, state: State, units: Units): readonly Said[] {
  const findings = state.findings();
  const spoken = new Set(findings.map((finding) => finding.quantity));
  const broken: Said[] = [];
  for (const quantity of from.chain.quantities) {
    const { id, window } = quantity;
    if (!window || spoken.has(id)) continue;
    const value = state.value(id);
    if (typeof value !== 'number' || !(marginOf(value, window).margin < -1e-9)) continue;
    broken.push({
      level: 'act',
      about: id,
      text: `${capital(quantity.meaning)} is ${inWords(quantity, value, units)}, ${limitWords(quantity, units)}.`,
    });
  }
  const told = findings.map(({ level, message, quantity }): Said => ({
    level: level === 'incident' ? 'act' : level === 'query' ? 'seen' : 'note',
    text: message,
    ...(quantity ? { about: quantity } : {}),
  }));
  const rank = { act: 0, seen: 1, note: 2 };
  return [...broken, ...told].sort((a, b) => rank[a.level] - rank[b.level]);
}

/** The sentence a screen opens with: it can be signed or disputed. */
export function openingSentence(
  from: PlantChain,
  saidOfTruth: readonly Said[],
  now: State,
  bent: readonly string[],
  units: Units,
): Sentence {
  const all = sayings(from, now, units);
  const worst = all[0];
  const mark = worst?.level === 'act' ? ('act' as const) : worst?.level === 'seen' ? ('seen' as const) : undefined;
  const base = { all, ...(mark ? { mark } : {}) };
  if (bent.length > 0) return { ...base, ...ifYouDoThis(from, saidOfTruth, now, bent, all, units) };
  const narrow = narrowestWords(from, now, stationsByUse(from, now)[0], units);
  const others = all.slice(1, 3).map(({ text }) => text);
  const more = all.length > 3 ? [`And ${all.length - 3} more.`] : [];
  const [sayWorst] = all;
  if (sayWorst && sayWorst.level !== 'note') {
    return {
      ...base,
      title: sayWorst.text,
      sub: [...others, ...more].join(' ') || barWords(from, now, units),
      ...(sayWorst.about ? { about: sayWorst.about } : {}),
    };
  }
  return {
    ...base,
    title: `Everything is inside its window.${narrow === '' ? '' : ` ${narrow}`}`,
    sub: barWords(from, now, units),
    about: 'bar.mass',
  };
}

function ifYouDoThis(
  from: PlantChain,
  saidOfTruth: readonly Said[],
  now: State,
  bent: readonly string[],
  all: readonly Said[],
  units: Units,
): Pick<Sentence, 'title' | 'sub' | 'about'> {
  const before = new Set(saidOfTruth.filter(({ level }) => level === 'act').map(({ about }) => about));
  const broken = all.find(({ level, about }) => level === 'act' && !before.has(about));
  const after = new Set(all.filter(({ level }) => level === 'act').map(({ about }) => about));
  const mended = [...before].find((about) => about !== undefined && !after.has(about));
  const sub = `${bent.join('; ')}. Nothing is sent to a machine.`;
  if (broken) {
    const quantity = broken.about === undefined ? undefined : quantityOf(from.chain, broken.about);
    const value = quantity && wordsOf(from.chain, now, quantity.id, units);
    const title =
      quantity && value
        ? `If you do this, ${theOf(quantity.meaning)} comes to ${value}, ${limitWords(quantity, units)}.`
        : `If you do this: ${broken.text}`;
    return { title, sub, ...(broken.about ? { about: broken.about } : {}) };
  }
  if (mended) {
    const quantity = quantityOf(from.chain, mended);
    const value = wordsOf(from.chain, now, mended, units);
    if (quantity && value) return { title: `If you do this, ${theOf(quantity.meaning)} comes right: ${value}.`, sub, about: mended };
  }
  const [mass, cost] = ['bar.mass', 'bar.cost'].map((id) => wordsOf(from.chain, now, id, units));
  const still = all.some(({ level }) => level === 'act') ? 'What is outside stays outside.' : 'Everything stays inside its window.';
  return { title: `If you do this, a bar weighs ${mass ?? '–'} and costs ${cost ?? '–'}.`, sub: `${still} ${sub}` };
}

function barWords({ chain, bar }: PlantChain, state: State, units: Units): string {
  const [mass, sd, cost, given] = ['bar.mass', 'bar.mass_sd', 'bar.cost', 'bar.giveaway'].map((id) => wordsOf(chain, state, id, units));
  const parts = [
    mass ? `A ${bar.name} weighs ${mass}${sd ? `, σ ${sd},` : ''}${cost ? ` and costs ${cost}` : ''}` : '',
    given ? `${given} of it is given away` : '',
  ].filter((part) => part !== '');
  return `${parts.join('; ')}. Nothing has been measured yet: every number is computed or entered.`;
}

/** 'the step in water activity', but 'water in caramel'. */
function theOf(meaning: string): string {
  return /^(water|air|edge trim|mass above|fat|sugars|protein) /.test(meaning) ? meaning : `the ${meaning}`;
}
