import { withoutWater } from '@barwright/bar';
import { boilingPoint, latentHeatOfVaporisation, NoSolution, solutionOf, specificHeat, type Composition } from '@barwright/science';

/** Four points of Gauss and Legendre on 0 to 1: exact to the seventh power. */
const nodes = [0.069431844202974, 0.330009478207572, 0.669990521792428, 0.930568155797026];
const weights = [0.173927422568727, 0.326072577431273, 0.326072577431273, 0.173927422568727];

/** Gives the difference from steam to mass. @throws NoSolution where the steam is too cold to carry it there */
export type Carries = (t: number) => number;

export function steamCarries(steam: number, name: string): Carries {
  return (t) => {
    if (steam > t) return steam - t;
    throw new NoSolution(
      `Steam of ${steam.toFixed(1)} °C does not carry ${name} past ${t.toFixed(1)} °C: more steam pressure, a lower pressure above the cook, or a wetter end`,
    );
  };
}

/**
 * Heat over the difference to the steam, from the feed to its boil and from there to the end: what a wall must carry, J/K for what was
 * given. The wall's own heat losses are left out.
 *
 * @param mass, water - in the vessel, and boiled away, kg
 * @throws NoSolution where the steam is too cold
 */
export function boilingHeat(
  inside: Composition,
  mass: number,
  water: number,
  feed: number,
  pressure: number,
  offset: number,
  carries: Carries,
): { readonly warm: number; readonly boil: number } {
  const boils = (gone: number) => boilingPoint(solutionOf(withoutWater(inside, gone / mass)), pressure) + offset;
  const start = boils(0);
  const end = boils(water);
  carries(end);
  // Capacity times the logarithm of the differences; a feed above its boil flashes and needs no warming.
  const warm = feed < start ? mass * specificHeat(inside, (feed + start) / 2) * Math.log(carries(feed) / carries(start)) : 0;
  let boil = 0;
  let before = start;
  let gone = 0;
  for (let i = 0; i < nodes.length; i++) {
    const here = water * nodes[i]!;
    const t = boils(here);
    boil += (weights[i]! * water * latentHeatOfVaporisation(t)) / carries(t);
    const left = withoutWater(inside, here / mass);
    // The rise of the boiling point between the points, its heat over the difference at this one.
    boil += ((mass - here) * specificHeat(left, t) * (t - before)) / carries((t + before) / 2);
    before = t;
    gone = here;
  }
  boil += ((mass - gone) * specificHeat(inside, end) * (end - before)) / carries((end + before) / 2);
  return { warm, boil };
}
