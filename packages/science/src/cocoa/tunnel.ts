import { butterLatentHeat, solidFatUnchecked } from './fat.js';
import { growthOf } from './growth.js';
import { coatMean, heatContent, meanTemperature, meshOf, surface } from './tunnel-mesh.js';
import { apply, emptySweep, factor } from './tunnel-sweep.js';
import { checkTask, type TunnelHistory, type TunnelTask, type TunnelZone } from './tunnel-task.js';

/** Steps per zone: the scheme is implicit, so a stay of hours may take longer ones. */
const mostSteps = 1000;

/**
 * Cooling of a coated bar through a tunnel: the cross-section (half the width, all the height) by implicit finite volumes, width and
 * height in turn, with heat of crystallisation in the coat. Ends of the bar are left out (the section stands for the finished length).
 * About 170 cells and 220 steps: a millisecond or so.
 *
 * @throws BadInput for no layer, no zone, or a belt that stands; OutOfRange for sizes and properties outside physics
 * @see franke-1998 (form: conduction with a heat source that depends on temperature and on what has crystallised)
 */
export function coolBar(task: TunnelTask): TunnelHistory {
  checkTask(task);
  const mesh = meshOf(task);
  const { nx, ny, count } = mesh;
  const t = new Float64Array(count);
  const s = new Float64Array(count);
  const isCoat = mesh.isCoat;
  const coatPlaces = Int32Array.from({ length: count }, (_, i) => i).filter((i) => isCoat[i] === 1);
  for (let i = 0; i < count; i++) {
    t[i] = isCoat[i] ? task.coatStart : task.centreStart;
    s[i] = isCoat[i] ? task.coat.crystals : 0;
  }
  const latent = task.coat.latentHeat ?? butterLatentHeat;
  const warming = (task.coat.fat * latent) / task.coat.specificHeat;
  const width = emptySweep(count);
  const height = emptySweep(count);
  const grow = growthOf(task.coat.blend, task.mode, task.coat.crystals, task.coat.growthRate);
  const finishedLength = task.length + 2 * task.coat.side;

  const history = { time: [0], topSurface: [] as number[], centre: [] as number[], mean: [] as number[], solids: [] as number[] };
  const heatByZone: number[] = [];
  const dwell = task.zones.reduce((sum, z) => sum + z.length, 0) / task.beltSpeed;
  const record = (zone: TunnelZone) => {
    history.topSurface.push(surface(mesh, t, zone, 'top'));
    history.centre.push(t[mesh.middle]!);
    history.mean.push(meanTemperature(mesh, t));
    history.solids.push(coatMean(mesh, s));
  };
  record(task.zones[0]!);
  let now = 0;
  let sinceRecord = 0;
  for (const zone of task.zones) {
    const stay = zone.length / task.beltSpeed;
    const steps = Math.min(mostSteps, Math.max(1, Math.ceil(stay / (task.step ?? 2.5))));
    const dt = stay / steps;
    factor(width, mesh, dt, 'width', { h: 0, t: 0 }, { h: zone.sideCoefficient, t: zone.air });
    factor(height, mesh, dt, 'height', { h: zone.bottomCoefficient, t: zone.belt }, { h: zone.topCoefficient, t: zone.air });
    const before = heatContent(mesh, t, s, task.coat.fat * latent * task.coat.density);
    for (let n = 0; n < steps; n++) {
      for (let c = 0; c < coatPlaces.length; c++) {
        const i = coatPlaces[c]!;
        const grown = grow(t[i]!, s[i]!, dt);
        s[i]! += grown;
        t[i]! += warming * grown;
      }
      apply(width, t, ny, nx, 1, nx);
      apply(height, t, nx, ny, nx, 1);
      now += dt;
      if (++sinceRecord === 4 || n === steps - 1) {
        sinceRecord = 0;
        history.time.push(now);
        record(zone);
      }
    }
    const after = heatContent(mesh, t, s, task.coat.fat * latent * task.coat.density);
    heatByZone.push(2 * (before - after) * finishedLength); // the section is half the bar
  }
  const last = task.zones.at(-1)!;
  const surfaces = { top: surface(mesh, t, last, 'top'), side: surface(mesh, t, last, 'side'), bottom: surface(mesh, t, last, 'bottom') };
  const solids = coatMean(mesh, s);
  let leastSolids = 1;
  for (let i = 0; i < count; i++) if (isCoat[i]) leastSolids = Math.min(leastSolids, s[i]!);
  return {
    ...history,
    exit: {
      topSurface: surfaces.top,
      sideSurface: surfaces.side,
      bottomSurface: surfaces.bottom,
      coldestSurface: Math.min(surfaces.top, surfaces.side, surfaces.bottom),
      centre: t[mesh.middle]!,
      mean: meanTemperature(mesh, t),
      coatMean: coatMean(mesh, t),
      solids,
      leastSolids,
      latentLeft: Math.max(0, solidFatUnchecked(20, task.coat.blend) - solids) * task.coat.fat * latent,
    },
    dwell,
    heat: heatByZone.reduce((a, b) => a + b, 0),
    heatByZone,
    mass: 2 * mesh.massPerLength * finishedLength,
  };
}
