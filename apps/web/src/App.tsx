import { lazy, Suspense, useCallback, useEffect, useLayoutEffect, useMemo, useRef, useState } from 'react';
import { Sheet, SheetContext } from './engine/sheet.js';
import { Foot } from './frame/Foot.js';
import { OpeningSentence } from './frame/OpeningSentence.js';
import { Top } from './frame/Top.js';
import { useUndoKeys } from './frame/useUndoKeys.js';
import { Inspector } from './inspector/Inspector.js';
import { OpeningContext, trailAfter } from './inspector/opening.js';
import { readAddress, type Screen } from './lib/address.js';
import { currentPrefs, usePrefs } from './lib/prefs.js';
import { useAddress, type Go } from './lib/useAddress.js';
import { useOpenVersion, type Opened } from './lib/useOpenVersion.js';
import { Section } from './section/Section.js';

const Band = lazy(() => import('./band/Band.js').then(({ Band }) => ({ default: Band })));
const Bench = lazy(() => import('./bench/Bench.js').then(({ Bench }) => ({ default: Bench })));
const Trials = lazy(() => import('./trials/Trials.js').then(({ Trials }) => ({ default: Trials })));
const Papers = lazy(() => import('./papers/Papers.js').then(({ Papers }) => ({ default: Papers })));
const Evidence = lazy(() => import('./evidence/Evidence.js').then(({ Evidence }) => ({ default: Evidence })));

export function App() {
  const [sheet] = useState(() => new Sheet());
  const [address, go] = useAddress();
  const [opened, openAgain, waiting] = useOpenVersion(sheet, address, go);
  const cameFrom = useRef<HTMLElement | null>(null);
  const [trail, setTrail] = useState<readonly string[]>([]);
  useFirstFrameGone(opened.state !== 'opening');
  useUnits(sheet, opened.state === 'open');
  useUndoKeys(sheet);
  useChangesInAddress(sheet, opened.state === 'open', go);

  const open = useCallback(
    (id: string, from?: HTMLElement) => {
      const inside = from?.closest('.inspector') !== null && from !== undefined;
      if (from && !inside) cameFrom.current = from;
      const standing = readAddress(window.location.pathname, window.location.search).open;
      setTrail((before) => trailAfter(standing !== undefined && !before.includes(standing) ? [standing] : before, id, inside));
      go({ open: id }, inside);
    },
    [go],
  );
  const close = useCallback(() => {
    go({ open: undefined });
    focusAgain(cameFrom.current);
  }, [go]);
  const id = opened.state === 'open' ? address.open : undefined;
  const opening = useMemo(
    () => ({ id, trail: id === undefined || trail.includes(id) ? trail : [id], open, close }),
    [id, trail, open, close],
  );

  if (opened.state === 'opening') return null;
  return (
    <SheetContext.Provider value={sheet}>
      <OpeningContext.Provider value={opening}>
        <div className={['house', id ? 'with-inspector' : '', waiting ? 'house-waiting' : ''].filter(Boolean).join(' ')}>
          <a className="skip" href="#page">
            To the numbers
          </a>
          <Top opened={opened} />
          <main id="page" className="page" tabIndex={-1}>
            {opened.state === 'refused' ? <Refusal message={opened.message} again={openAgain} /> : null}
            {opened.state === 'open' ? <Page screen={address.screen} opened={opened} openAgain={openAgain} /> : null}
          </main>
          {id ? <Inspector id={id} /> : null}
          <Foot screen={address.screen} go={go} />
        </div>
      </OpeningContext.Provider>
    </SheetContext.Provider>
  );
}

/** Back to where the sheet was opened from; the number may be drawn anew while the page takes its width back. */
function focusAgain(from: HTMLElement | null): void {
  if (!from) return;
  let frames = 8;
  const focus = () => {
    const { quantity } = from.dataset;
    const there = from.isConnected
      ? from
      : quantity
        ? document.querySelector<HTMLElement>(`main [data-quantity="${CSS.escape(quantity)}"]`)
        : null;
    if (there && document.activeElement !== there) there.focus();
    if (--frames > 0) requestAnimationFrame(focus);
  };
  requestAnimationFrame(focus);
}

function Page({
  screen,
  opened,
  openAgain,
}: {
  readonly screen: Screen;
  readonly opened: Extract<Opened, { state: 'open' }>;
  readonly openAgain: () => void;
}) {
  return (
    <>
      {screen === 'evidence' || screen === 'papers' || screen === 'trials' ? null : <OpeningSentence />}
      <Suspense fallback={<p className="waiting">One moment.</p>}>
        {screen === 'section' ? <Section /> : null}
        {screen === 'band' ? <Band /> : null}
        {screen === 'bench' ? <Bench opened={opened} openAgain={openAgain} /> : null}
        {screen === 'trials' ? <Trials opened={opened} /> : null}
        {screen === 'papers' ? <Papers opened={opened} /> : null}
        {screen === 'evidence' ? <Evidence /> : null}
      </Suspense>
    </>
  );
}

function Refusal({ message, again }: { readonly message: string; readonly again: () => void }) {
  return (
    <section className="refusal">
      <h1 className="title">{message}</h1>
      <p className="sub">Nothing was lost: what was saved is kept on this machine.</p>
      <p>
        <button type="button" className="button" onClick={again}>
          Try again
        </button>{' '}
        <a className="button" href="/">
          To the first plant
        </a>
      </p>
    </section>
  );
}

/** The first frame stays until there is something better to show. */
function useFirstFrameGone(there: boolean): void {
  useLayoutEffect(() => {
    if (there) document.getElementById('first')?.remove();
  }, [there]);
}

function useUnits(sheet: Sheet, isOpen: boolean): void {
  const { units } = usePrefs();
  const read = useRef(units);
  useEffect(() => {
    if (!isOpen || read.current === units) return;
    read.current = units;
    void sheet.read(currentPrefs().units);
  }, [sheet, units, isOpen]);
}

/** What is pulled goes into the address when the hand has rested, so that a copied address shows the same. */
function useChangesInAddress(sheet: Sheet, isOpen: boolean, go: Go): void {
  useEffect(() => {
    if (!isOpen) return undefined;
    let timer: ReturnType<typeof setTimeout> | undefined;
    const stop = sheet.subscribeView(() => {
      clearTimeout(timer);
      timer = setTimeout(
        () => go({ changes: Object.fromEntries((sheet.view?.bent ?? []).map(({ id, metric }) => [id, metric])) }, true),
        300,
      );
    });
    return () => {
      stop();
      clearTimeout(timer);
    };
  }, [sheet, isOpen, go]);
}
