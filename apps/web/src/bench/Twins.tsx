import { memo } from 'react';
import type { ComponentInfo } from '../engine/protocol.js';
import { useSheet, useShown, useShownAll, type Shown } from '../engine/sheet.js';
import { useInspector } from '../inspector/opening.js';
import { Figure } from '../number/Figure.js';
import { Sill } from '../number/Sill.js';
import { digits } from '../number/words.js';

/** What it is now, and what it would be: the same numbers twice, each on its window. */
export function Twins({ component }: { readonly component: ComponentInfo }) {
  const { catalog } = useSheet();
  const c = component.slug;
  const parts = catalog!.parts.filter((part) => part.component === c);
  const slugs = new Set(parts.map(({ slug }) => slug));
  const steps = catalog!.steps.filter(({ above, below }) => slugs.has(above) || slugs.has(below));
  const law = useTightest(component.law);
  const ids = [
    `${c}.moisture`,
    `${c}.water_activity`,
    ...steps.map(({ id }) => id),
    ...(component.cook ? [component.cook.shown, `${c}.refractometer`, `${c}.viscosity`] : []),
    `${c}.fat`,
    ...(law ? [law] : []),
    `${c}.cost`,
    'bar.mass',
    'bar.cost',
    'line.rate',
  ].filter((id) => catalog!.metas.some((meta) => meta.id === id));
  return (
    <div className="twins">
      <div className="twin twin-heads">
        <span />
        <span className="caption">now</span>
        <span className="caption">if you do this</span>
      </div>
      {[...new Set(ids)].slice(0, 11).map((id) => (
        <Twin key={id} id={id} />
      ))}
    </div>
  );
}

const Twin = memo(function Twin({ id }: { readonly id: string }) {
  const shown = useShown(id);
  if (!shown) return null;
  return (
    <div className="twin">
      <span className="twin-name">
        {capital(short(shown.meta.meaning))}
        {shown.meta.unit === '' ? null : <span className="caption">{shown.meta.unit}</span>}
      </span>
      <Truth shown={shown} />
      <Figure id={id} size="row" />
    </div>
  );
});

function Truth({ shown }: { readonly shown: Shown }) {
  const { open } = useInspector();
  const { meta, truth } = shown;
  const { low, high } = meta.window ?? {};
  const outside = (low !== undefined && truth < low) || (high !== undefined && truth > high);
  const { reason: _gone, ...rest } = shown;
  const still: Shown = { ...rest, value: truth, outside: outside ? 1 : 0 };
  return (
    <button
      type="button"
      className={outside ? 'figure figure-row figure-act' : 'figure figure-row'}
      aria-label={`${meta.meaning} now: ${digits(truth, meta)} ${meta.unit}`}
      onClick={(event) => open(meta.id, event.currentTarget)}
    >
      <span className="figure-digits">{digits(truth, meta)}</span>
      <Sill shown={still} width={84} />
    </button>
  );
}

/** The first words say enough where a number stands beside its like. */
function short(meaning: string): string {
  return meaning
    .split(',')[0]!
    .replace(/^cook temperature of (.*) as its probe shows it$/, 'cook $1, as its probe shows')
    .replace(/^step in water activity from (.*) to (.*)$/, 'step in water activity, $1 to $2')
    .replace(' while the slab runs', '');
}

/** The requirement with the least room. */
function useTightest(ids: readonly string[]): string | undefined {
  const shown = useShownAll(ids).filter((each) => each !== undefined && !Number.isNaN(each.truth));
  const room = ({ meta, truth }: Shown) =>
    Math.min(
      ...[
        meta.window?.low === undefined ? Infinity : truth / meta.window.low,
        meta.window?.high === undefined || truth === 0 ? Infinity : meta.window.high / truth,
      ],
    );
  return shown.sort((a, b) => room(a!) - room(b!))[0]?.meta.id;
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
