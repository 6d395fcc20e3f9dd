import { useState } from 'react';
import type { ComponentInfo, PartInfo } from '../engine/protocol.js';
import { useSheet, useShownAll, useView } from '../engine/sheet.js';
import type { Opened } from '../lib/useOpenVersion.js';
import '../styles/bench.css';
import { Keep } from './Keep.js';
import { Knobs } from './Knobs.js';
import { RecipeStack } from './RecipeStack.js';
import { Twins } from './Twins.js';
import { Versions } from './Versions.js';

export interface BenchProps {
  readonly opened: Extract<Opened, { state: 'open' }>;
  readonly openAgain: () => void;
}

/** What if, and recipe: the stack of a component, the knobs that move it, what it is now and what it would be. */
export function Bench({ opened, openAgain }: BenchProps) {
  const { catalog } = useSheet();
  const { components, parts } = catalog!;
  const view = useView();
  const [slug, setSlug] = useState(() => firstOf(components, parts, view?.bent[0]?.id));
  const component = components.find((each) => each.slug === slug) ?? components[0]!;
  const [ingredient, setIngredient] = useState<string>();
  const pulled = view?.bent.find(({ id }) => id.startsWith(`${component.slug}.charge.`))?.id;
  const [largest] = useShownAll(component.ingredients.map(({ id }) => id)).toSorted((a, b) => (b?.truth ?? 0) - (a?.truth ?? 0));
  const chosen =
    component.ingredients.find(({ id }) => id === (ingredient ?? pulled ?? largest?.meta.id)) ??
    component.ingredients.find(({ id }) => id === largest?.meta.id) ??
    component.ingredients[0]!;
  return (
    <section className="bench" aria-label="The bench">
      <p className="choices bench-choices" role="group" aria-label="Component">
        {components.map(({ slug: each, name }) => (
          <button key={each} type="button" className="choice" aria-pressed={each === component.slug} onClick={() => setSlug(each)}>
            {name}
          </button>
        ))}
      </p>
      <div className="bench-columns">
        <RecipeStack component={component} chosen={chosen.id} choose={setIngredient} />
        <Knobs component={component} ingredient={chosen} choose={setIngredient} />
        <Twins component={component} />
      </div>
      <div className="bench-rest">
        <Keep opened={opened} openAgain={openAgain} />
        <Versions opened={opened} />
      </div>
    </section>
  );
}

/** The component that was pulled last; else the uppermost that is cooked. */
function firstOf(components: readonly ComponentInfo[], parts: readonly PartInfo[], pulled: string | undefined): string {
  const own = components.find(({ slug }) => pulled?.startsWith(`${slug}.`));
  const cooked = parts.map(({ component }) => components.find(({ slug }) => slug === component)).find((component) => component?.cook);
  return (own ?? cooked ?? components[0]!).slug;
}
