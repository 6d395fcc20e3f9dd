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
  const [{ plantChain, sectionSpec }, { Session }, { section }] = await Promise.all([
    import('@barwright/line'),
    import('@barwright/chain'),
    import('@barwright/drawing'),
  ]);
  const from = plantChain(loaded.plant, name);
  const { bar, line } = from;
  const words = [`${bar.name}, ${bar.format}.`, [loaded.plant.name, line?.name].filter(Boolean).join(', ')];
  const drawing = section(plain(sectionSpec(from, new Session(from.chain), scale)));
  const { core, outline, layers, width, height } = drawing;
  const seams = layers.slice(0, -1).map(({ x0, x1, y0 }) => `M${round(x0)} ${round(y0)}H${round(x1)}`);
  const inner = `M${round(core.x)} ${round(core.y)}h${round(core.w)}v${round(core.h)}h${round(-core.w)}z`;
  const svg = `<svg width="${round(width)}" height="${round(height)}" viewBox="0 0 ${round(width)} ${round(height)}" fill="none" stroke="currentColor" stroke-width="1.6" aria-hidden="true"><path d="${outline}"/><path d="${inner}${seams.join('')}"/></svg>`;
  return page(words, svg);
}

/** Outlines need no textures. */
function plain(spec: SectionSpec): SectionSpec {
  return { ...spec, layers: spec.layers.map(({ id, name, thickness }) => ({ id, name, thickness, texture: 'plain' as const })) };
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

const round = (value: number): number => Math.round(value * 10) / 10;

function escape(text: string): string {
  return text.replace(/[&<>"]/g, (letter) => ({ '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' })[letter]!);
}
