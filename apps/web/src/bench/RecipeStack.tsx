import { stack, type StackPart } from '@barwright/drawing';
import { formatNumber } from '@barwright/plant';
import { useMemo, type MouseEvent } from 'react';
import { Picture } from '../drawing/Marks.js';
import type { ComponentInfo } from '../engine/protocol.js';
import { useShown, useShownAll } from '../engine/sheet.js';
import { useSize, useWindowHeight } from '../lib/useSize.js';

interface RecipeStackProps {
  readonly component: ComponentInfo;
  readonly chosen: string;
  readonly choose: (id: string) => void;
}

/** 100 kg charged as true mass, and what is left of them. A press on an ingredient takes it to the knobs. */
export function RecipeStack({ component, chosen, choose }: RecipeStackProps) {
  const [ref, { width }] = useSize<HTMLDivElement>();
  const tall = Math.max(340, Math.min(640, useWindowHeight() - 350));
  const charges = useShownAll(component.ingredients.map(({ id }) => id));
  const gone = useShownAll(component.evaporated);
  const made = useShown(`${component.slug}.yield`);
  const moisture = useShown(`${component.slug}.moisture`);
  const drawn = useMemo(() => {
    if (width < 120 || !made || Number.isNaN(made.value)) return undefined;
    const total = charges.reduce((sum, shown) => sum + (shown?.value ?? 0), 0);
    const per = 100 / total;
    const parts = component.ingredients
      .map(({ id, name, material }, i): StackPart => {
        const amount = (charges[i]?.value ?? 0) * per;
        return { id, label: name, material, amount, text: formatNumber(amount, amount < 1 ? 2 : 1) };
      })
      .filter(({ amount }) => amount > 0)
      .sort((a, b) => b.amount - a.amount);
    const water = gone.reduce((sum, shown) => sum + (shown?.value ?? 0), 0);
    const lost = Math.max(0, 100 - made.value - water);
    const wet = moisture && !Number.isNaN(moisture.value) ? [`${formatNumber(moisture.value, 2)} % water`] : [];
    return stack({
      width: Math.max(width - 64, 340),
      height: tall,
      charged: parts,
      left: [
        {
          id: 'left',
          label: component.name,
          material: component.material,
          amount: made.value,
          text: `${formatNumber(made.value, 2)} kg`,
          note: wet,
        },
      ],
      gone: [
        ...(water > 0
          ? [{ id: 'water', label: 'driven off', material: 'water' as const, amount: water, text: `${formatNumber(water, 2)} kg` }]
          : []),
        ...(lost > 1e-6
          ? [{ id: 'lost', label: 'lost on the way', material: 'plain' as const, amount: lost, text: `${formatNumber(lost, 2)} kg` }]
          : []),
      ],
      heads: { charged: '100 kg charged', left: 'what is left' },
      balance: { text: `Balances to ${formatNumber(100 - made.value - water - lost, 2)} kg`, note: `${component.name}, as charged` },
    });
  }, [width, tall, component, charges, gone, made, moisture]);
  const chosenHit = drawn?.hits.find(({ id }) => id === chosen);
  const press = (event: MouseEvent<HTMLElement>) => {
    if (!drawn) return;
    const y = event.clientY - event.currentTarget.getBoundingClientRect().top;
    const hit = drawn.hits.filter(({ id }) => id.includes('.charge.')).find(({ box }) => y >= box.y && y <= box.y + box.h);
    if (hit) choose(hit.id);
  };
  const words = charges.map((shown, i) => `${component.ingredients[i]!.name} ${formatNumber(shown?.value ?? 0, 2)} %`).join(', ');
  return (
    <div
      className="stack"
      ref={ref}
      onClick={press}
      {...(width > 0 && width < 404 ? { tabIndex: 0, role: 'region', 'aria-label': 'Recipe' } : {})}
    >
      {drawn ? (
        <Picture marks={drawn.marks} width={drawn.width} height={drawn.height} name={`100 kg charged of ${component.name}: ${words}`} />
      ) : null}
      {chosenHit ? (
        <span
          className="stack-chosen"
          style={{ left: chosenHit.box.x, top: chosenHit.box.y, width: chosenHit.box.w, height: chosenHit.box.h }}
        />
      ) : null}
    </div>
  );
}
