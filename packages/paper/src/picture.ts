import { section, type SectionDrawing } from '@barwright/drawing';
import type { State } from '@barwright/chain';
import { sectionSpec, type PlantChain } from '@barwright/line';

/** The bar cut open for paper. @param scale - points per mm; 5.67 is twice life size */
export function pictureOf(from: PlantChain, state: State, scale: number): SectionDrawing {
  return section(sectionSpec(from, state, scale));
}
