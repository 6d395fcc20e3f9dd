import type { SectionSpec } from '@barwright/drawing';
import { findPlant, listPlants, type Store } from '@barwright/store';
import type { Definitions } from './definitions.js';
import type { FirstFrame } from './web.js';

/** How many pages stay drawn. */
const kept = 32;
/** px per mm: near the scale at which the screen draws the bar on a desk. */
const scale = 22;

/**
 * What a page shows before its scripts have run: whose bar it is, and its outline true to scale. A frame is drawn once for each
 * bar of a version; until it is there the page gets the name alone, so that nobody waits for it.
 */
export function firstFrames(store: Store, definitions: Definitions): FirstFrame {
  const drawn = new Map<string, string>();
  const drawing = new Set<string>();
  return async (path) => {
    const [plant, bar] = path
      .split('/')
      .filter((part) => part !== '')
      .map(decode);
    const info = plant ? await findPlant(store, plant) : newest(await listPlants(store));
    if (!info) return page([]);
    const key = `${info.id}/${info.latest}/${bar ?? ''}`;
    const known = drawn.get(key);
    if (known !== undefined) return known;
    if (!drawing.has(key)) {
      drawing.add(key);
      void draw(definitions, info.id, info.latest, bar)
        .then((html) => {
          drawn.set(key, html);
          if (drawn.size > kept) drawn.delete(drawn.keys().next().value!);
        })
        // A version that does not load says so on its page; its first frame is the name alone.
        .catch(() => undefined)
        .finally(() => drawing.delete(key));
    }
    return page([]);
  };
}

async function draw(definitions: Definitions, plant: string, version: number, name: string | undefined): Promise<string> {
  const { loaded } = await definitions.get(plant, version);
  if (!loaded.ok) return page([]);
  const [{ plantChain, sectionSpec }, { Session }] = await Promise.all([import('@barwright/line'), import('@barwright/chain')]);
  const from = plantChain(loaded.plant, name);
  const { bar, line } = from;
  const words = [`${bar.name}, ${bar.format}.`, [loaded.plant.name, line?.name].filter(Boolean).join(', ')];
  return page(words, outline(sectionSpec(from, new Session(from.chain), 1)));
}

/** The bar as boxes with borders: the browser paints them sooner than a drawing. Its styles are admitted by their hash. */
function outline({ width, layers, coat, underside }: SectionSpec): string {
  const open = underside === 'open';
  const { top, left } = coat ?? { top: 0, left: 0 };
  const bottom = open ? 0 : (coat?.bottom ?? 0);
  const px = (mm: number) => `${Math.round(mm * scale)}px`;
  // Corners as the section rounds them: the thicker the coat, the rounder.
  const [above, below] = coat ? [px(0.55 + 0.55 * (top + left)), open ? '0' : px(0.4 + 0.28 * (bottom + left))] : ['0', '0'];
  const rules = [
    `.first-cut{width:${px(width)};border-radius:${above} ${above} ${below} ${below};padding:${px(top)} ${px(left)} ${px(bottom)}}`,
    ...layers.map(({ thickness }, at) => `.first-layer-${at}{height:${px(thickness)}}`),
  ];
  const boxes = layers.map((_, at) => `<div class="first-layer first-layer-${at}"></div>`).reverse();
  return `<style>${rules.join('')}</style><div class="first-cut" aria-hidden="true">${boxes.join('')}</div>`;
}

function page([title, place]: readonly (string | undefined)[], picture = ''): string {
  const about = title === undefined ? '' : `<h1 class="first-title">${escape(title)}</h1>`;
  const where = place === undefined ? '' : `<p class="first-bar">${escape(place)}</p>`;
  return `<div class="first"><p class="first-name">Barwright</p>${where}${about}<p class="first-sub">The numbers are being computed.</p>${picture}</div>`;
}

function newest<T extends { readonly savedAt: string }>(plants: readonly T[]): T | undefined {
  return [...plants].sort((a, b) => (a.savedAt < b.savedAt ? 1 : -1))[0];
}

function decode(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch {
    return part;
  }
}

function escape(text: string): string {
  return text.replace(/[&<>"]/g, (letter) => ({ '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' })[letter]!);
}
