import type { State } from '@barwright/chain';
import type { Chocolate, LayerTexture, PieceKind, SectionSpec } from '@barwright/drawing';
import type { Component } from '@barwright/plant';
import type { PlantChain } from './plant-chain.js';

/** The bar as the section draws it, from what the chain computes. `target` is the bar as defined, where another state is shown. */
export function sectionSpec(from: PlantChain, state: State, scale: number, target?: State): SectionSpec {
  const { bar, plant } = from;
  const hosts = bar.layers.filter((layer) => layer.sunkInto === undefined);
  const mm = (id: string, of: State = state) => 1000 * of.number(id);
  const layers = hosts.map((layer) => {
    const component = plant.components.get(layer.component)!;
    const guests = bar.layers.filter((other) => other.sunkInto === layer.name);
    const volume = (id: string, of: Component) => state.number(`layer.${id}.mass`) / state.number(`${of.slug}.density`);
    const own = volume(layer.slug, component);
    const sunk = guests.map((guest) => ({
      kind: pieceKind(plant.components.get(guest.component)!.texture),
      volume: volume(guest.slug, plant.components.get(guest.component)!),
    }));
    const voids = state.number(`layer.${layer.slug}.voids`);
    const whole = (own + sunk.reduce((sum, guest) => sum + guest.volume, 0)) / (1 - voids);
    const air = from.chain.index.has(`${component.slug}.air`) ? Math.max(0, Math.min(0.95, state.number(`${component.slug}.air`))) : 0;
    return {
      id: layer.slug,
      name: layer.name,
      thickness: mm(`layer.${layer.slug}.thickness`),
      texture: layerTexture(component.texture),
      air,
      voids: sunk.length > 0 ? Math.min(0.3, voids) : 0,
      pieces: sunk.map(({ kind, volume: of }) => ({ kind, share: Math.min(0.7, of / whole) })),
    };
  });
  const open = bar.coat?.covers === 'without underside';
  const coat = bar.coat && {
    top: mm('coat.thickness_top'),
    left: mm('coat.thickness_side'),
    right: mm('coat.thickness_side'),
    bottom: open ? 0 : mm('coat.thickness_bottom'),
    chocolate: chocolateOf(plant.components.get(bar.coat.component)!.texture),
  };
  return {
    width: mm('bar.width'),
    layers,
    scale,
    underside: open ? 'open' : 'closed',
    ...(coat ? { coat } : {}),
    ...(target
      ? {
          target: targetOf(
            target,
            hosts.map((layer) => layer.slug),
            open ?? false,
            bar.coat !== undefined,
          ),
        }
      : {}),
  };
}

function targetOf(state: State, layers: readonly string[], open: boolean, coated: boolean): NonNullable<SectionSpec['target']> {
  const mm = (id: string) => 1000 * state.number(id);
  return {
    width: mm('bar.width'),
    height: mm('bar.height'),
    thickness: layers.map((layer) => mm(`layer.${layer}.thickness`)),
    ...(coated
      ? {
          coat: {
            top: mm('coat.thickness_top'),
            left: mm('coat.thickness_side'),
            right: mm('coat.thickness_side'),
            bottom: open ? 0 : mm('coat.thickness_bottom'),
          },
        }
      : {}),
  };
}

function layerTexture(texture: string): LayerTexture {
  if (/nougat|foam|mallow/i.test(texture)) return 'nougat';
  if (/caramel|toffee|fudge/i.test(texture)) return 'caramel';
  if (/wafer/i.test(texture)) return 'wafer';
  if (/biscuit|crumb|cookie/i.test(texture)) return 'biscuit';
  if (/jelly|fruit/i.test(texture)) return 'jelly';
  if (/chocolate/i.test(texture)) return `${chocolateOf(texture)}-chocolate`;
  return /paste|praline|marzipan/i.test(texture) ? 'paste' : 'plain';
}

function chocolateOf(texture: string): Chocolate {
  return /dark|plain/i.test(texture) ? 'dark' : /white/i.test(texture) ? 'white' : 'milk';
}

function pieceKind(texture: string): PieceKind {
  if (/almond/i.test(texture)) return 'almond';
  if (/hazel/i.test(texture)) return 'hazelnut';
  if (/raisin|fruit/i.test(texture)) return 'raisin';
  return /crisp|rice/i.test(texture) ? 'crisp' : 'peanut';
}
