import type { SourceKey } from '../../sources.js';

/** Where work can hurt someone: what to say beside it. None replaces the local code or a qualified person. */
export interface Caution {
  readonly topic: 'dust' | 'burn' | 'roaster fire' | 'metal' | 'allergen' | 'kill step' | 'aflatoxin' | 'cleaning';
  readonly text: string;
  /** Whose word counts. */
  readonly defersTo: string;
  readonly source: SourceKey;
}

export const cautions: readonly Caution[] = [
  {
    topic: 'dust',
    text: 'Icing sugar, starch, milk and cocoa powder can explode as a cloud. Published figures belong to one sample: test your own dust before anything is designed or relied on.',
    defersTo: 'the local explosion-protection code and a qualified assessor',
    source: 'nfpa-68',
  },
  {
    topic: 'dust',
    text: 'A layer of 0.8 mm over a twentieth of the floor is enough to be treated as a hazard in common housekeeping rules. Remove it by a suitable vacuum cleaner, never by compressed air.',
    defersTo: 'the local explosion-protection code',
    source: 'nfpa-68',
  },
  {
    topic: 'burn',
    text: 'Caramel, syrup and roasted product at 110 °C and more burn at once and stick. Guard the access; take no open sample above 60 °C without face, arm and hand protection.',
    defersTo: 'the plant’s risk assessment and local work-safety law',
    source: 'moritz-henriques-1947',
  },
  {
    topic: 'roaster fire',
    text: 'Chaff and oil feed a roaster fire. Alarm on an exhaust 15 K above its set point, keep doors shut, stop the fans, quench by the installed water; empty the chaff collector every batch.',
    defersTo: 'the roaster’s manual, the fire service and local fire law',
    source: 'common-practice',
  },
  {
    topic: 'metal',
    text: 'Test with iron, non-iron and stainless pieces at the start, hourly, at changes and at the end; a failed or a missed test holds everything since the last one that passed.',
    defersTo: 'the plant’s HACCP plan and the customer’s requirement',
    source: 'common-practice',
  },
  {
    topic: 'allergen',
    text: 'A chocolate line is not cleaned with water. Flushing leaves allergen: verify by test at the worst place, and declare what cannot be excluded.',
    defersTo: 'the plant’s allergen plan and local labelling law',
    source: 'zhang-2024',
  },
  {
    topic: 'kill step',
    text: 'After the roaster nothing kills: keep raw and clean sides apart in air, people and tools. A kill step is proven by a validation of that roaster only.',
    defersTo: 'HACCP-qualified people and local food law',
    source: 'codex-cxc-75',
  },
  {
    topic: 'aflatoxin',
    text: 'Aflatoxin sits in few kernels: take the sample by the plan of the market, grind all of it, and keep suspect lots apart.',
    defersTo: 'the sampling law of the market and an accredited laboratory',
    source: 'codex-cxs-193',
  },
  {
    topic: 'cleaning',
    text: 'Lock and tag the drive before a hand goes into a winnower, mill, roaster or refiner.',
    defersTo: 'local machine-safety law and trained fitters',
    source: 'common-practice',
  },
];

/** The cautions of one topic. */
export function cautionsOn(topic: Caution['topic']): readonly Caution[] {
  return cautions.filter((caution) => caution.topic === topic);
}
