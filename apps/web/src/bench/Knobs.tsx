import type { KnobPost } from '@barwright/drawing';
import { useEffect, useState, type ReactNode } from 'react';
import { KnobRule } from '../drawing/KnobRule.js';
import type { ComponentInfo, Ingredient } from '../engine/protocol.js';
import { useSheet, useShown, useView } from '../engine/sheet.js';
import { useInspector } from '../inspector/opening.js';
import { digits, withUnit } from '../number/words.js';
import { TrialButtons } from '../section/WhatItDoes.js';

interface KnobsProps {
  readonly component: ComponentInfo;
  readonly ingredient: Ingredient;
  readonly choose: (id: string) => void;
}

/** The settings that move a component, each on its rule with the posts it may not pass. */
export function Knobs({ component, ingredient, choose }: KnobsProps) {
  const { catalog } = useSheet();
  const part = catalog!.parts.find((each) => each.component === component.slug);
  const knobs: readonly (readonly [id: string, name: string])[] = [
    ...(component.cook ? [[component.cook.shown, 'Cook to, as the probe shows'] as const] : []),
    ...(component.moisture && !component.cook ? [[component.moisture, `Water in ${component.name}`] as const] : []),
    [ingredient.id, 'charged'],
    ...(ingredient.price ? [[ingredient.price, `Price of ${ingredient.name}`] as const] : []),
    ...(part ? [[`${part.id}.mass`, `${capital(part.name)} on a bar`] as const] : []),
    ['line.slab_speed', 'Speed of the slab'],
  ];
  return (
    <div className="knobs">
      {knobs.map(([id, name]) =>
        id === ingredient.id ? (
          <OneKnob key="ingredient" id={id} name={name}>
            <select className="knob-choose" aria-label="Ingredient" value={id} onChange={(event) => choose(event.target.value)}>
              {component.ingredients.map((each) => (
                <option key={each.id} value={each.id}>
                  {capital(each.name)}
                </option>
              ))}
            </select>
          </OneKnob>
        ) : (
          <OneKnob key={id} id={id} name={name} />
        ),
      )}
      <p className="knobs-words">
        Where one share of a charge is pulled, the others give way in proportion, so that it stays 100&nbsp;%. Solid posts are limits the
        knob will not pass. Nothing is sent to a machine.
      </p>
      <TrialButtons />
    </div>
  );
}

function OneKnob({ id, name, children }: { readonly id: string; readonly name: string; readonly children?: ReactNode }) {
  const shown = useShown(id);
  const { open } = useInspector();
  const posts = usePosts(id);
  if (!shown || Number.isNaN(shown.value) || shown.meta.bend === undefined) return null;
  const { meta, value, truth } = shown;
  const bent = digits(value, meta) !== digits(truth, meta);
  return (
    <div className="knob">
      <p className="knob-head">
        <span>
          {children}{' '}
          <button type="button" className="knob-name" data-quantity={id} onClick={(event) => open(id, event.currentTarget)}>
            {name}
          </button>
        </span>
        <span className="caption">{bent ? `was ${withUnit(truth, meta)}` : 'unchanged'}</span>
      </p>
      <KnobRule id={id} posts={posts} />
    </div>
  );
}

/** The limits on the way of a knob, found anew when a hand has rested. */
function usePosts(id: string): readonly KnobPost[] {
  const sheet = useSheet();
  const view = useView();
  const shown = useShown(id);
  const truth = shown?.truth;
  const [posts, setPosts] = useState<readonly KnobPost[]>(none);
  useEffect(() => {
    if (truth === undefined || Number.isNaN(truth)) return undefined;
    let dropped = false;
    const reach = Math.max(Math.abs(truth) * 0.5, 0.01);
    const timer = setTimeout(() => {
      sheet.engine.ask('posts', { knob: id, low: Math.max(0, truth - reach), high: truth + reach }).then(
        (next) => !dropped && setPosts((before) => (JSON.stringify(before) === JSON.stringify(next) ? before : next)),
        () => undefined,
      );
    }, 350);
    return () => {
      dropped = true;
      clearTimeout(timer);
    };
  }, [sheet, id, truth, view]);
  return posts;
}

const none: readonly KnobPost[] = [];
const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
