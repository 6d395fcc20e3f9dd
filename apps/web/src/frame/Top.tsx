import { useEffect, useState } from 'react';
import { useSheet, useView } from '../engine/sheet.js';
import { useAddress, type Go } from '../lib/useAddress.js';
import { listPlants, type PlantLine } from '../lib/api.js';
import type { Opened } from '../lib/useOpenVersion.js';
import { DayLine } from './DayLine.js';

/** Name, bar and line on the left, the day line beside them. */
export function Top({ opened }: { readonly opened: Opened }) {
  const { catalog } = useSheet();
  const view = useView();
  const [address, go] = useAddress();
  const open = opened.state === 'open' && catalog;
  return (
    <header className="top">
      <div className="name">
        <span className="name-house">Barwright</span>
        {open ? (
          <details className="name-bar">
            <summary>
              {catalog.bar.name} {/^(\d+ × )?[\d.]+ \S+/.exec(catalog.bar.format)?.[0] ?? ''}
              {catalog.line ? `, ${catalog.line}` : ''}
              {address.version && address.version !== opened.plant.latest ? `, version ${catalog.version}` : ''}
            </summary>
            <Others opened={opened} now={catalog.bar.slug} go={go} />
          </details>
        ) : null}
      </div>
      {open && view?.plan ? (
        <DayLine plan={view.plan} />
      ) : (
        <div className="day-line-none">{open ? 'No order is planned for this bar.' : ''}</div>
      )}
    </header>
  );
}

function Others({ opened, now, go }: { readonly opened: Extract<Opened, { state: 'open' }>; readonly now: string; readonly go: Go }) {
  const close = (element: HTMLElement) => element.closest('details')?.removeAttribute('open');
  return (
    <div className="others">
      <p className="others-of">Bars of {opened.plant.name}</p>
      <ul>
        {opened.plant.bars.map(({ name, slug, format }) => (
          <li key={slug}>
            <button
              type="button"
              className="word"
              aria-current={slug === now}
              onClick={(event) => {
                close(event.currentTarget);
                go({ bar: slug, changes: {}, open: undefined, version: undefined });
              }}
            >
              {name}, {format}
            </button>
          </li>
        ))}
      </ul>
      <OtherPlants now={opened.plant.id} />
    </div>
  );
}

function OtherPlants({ now }: { readonly now: string }) {
  const [plants, setPlants] = useState<readonly PlantLine[]>([]);
  useEffect(() => {
    listPlants().then(setPlants, () => undefined);
  }, []);
  const others = plants.filter(({ id }) => id !== now);
  if (others.length === 0) return null;
  return (
    <>
      <p className="others-of">Other plants on this machine</p>
      <ul>
        {others.map(({ id, name }) => (
          <li key={id}>
            <a className="word" href={`/${encodeURIComponent(id)}`}>
              {name}
            </a>
          </li>
        ))}
      </ul>
    </>
  );
}
