import { useCallback } from 'react';
import { trialParts, type AskedFor, type TrialPart } from '../engine/trial-protocol.js';
import { useAddress } from '../lib/useAddress.js';
import type { Opened } from '../lib/useOpenVersion.js';
import '../styles/trials.css';
import { Drop } from './Drop.js';
import { TrialList } from './TrialList.js';
import { TrialPage } from './TrialPage.js';
import { useFiles } from './useFiles.js';
import { partOf, partWords } from './words.js';

const nothing: AskedFor = {};

/** Questions to the cocoa, peanut and chocolate half: from the definition of the plant, the logs of its day, and logs brought by hand. */
export function Trials({ opened }: { readonly opened: Extract<Opened, { state: 'open' }> }) {
  const [address, go] = useAddress();
  const files = useFiles(opened.plant.id);
  const part = partOf(address.part);
  const asked = address.asked ?? nothing;
  const open = useCallback((next: TrialPart | undefined) => go({ part: next, asked: undefined, open: undefined }), [go]);
  const ask = useCallback((next: AskedFor) => go({ asked: Object.keys(next).length > 0 ? next : undefined }, true), [go]);
  const { bring } = files;
  const take = useCallback(
    (list: readonly File[]) => {
      void bring(list).then((taken) => {
        const next = taken.at(-1)?.part;
        if (next) go({ part: next, asked: undefined, open: undefined });
      });
    },
    [bring, go],
  );
  const ready = !files.loading;
  return (
    <section className="trials" aria-label="Trials">
      <nav className="trial-parts choices" aria-label="Trials">
        <button type="button" className="choice" aria-pressed={part === undefined} onClick={() => open(undefined)}>
          All
        </button>
        {trialParts.map((name) => (
          <button key={name} type="button" className="choice" aria-pressed={name === part} onClick={() => open(name)}>
            {partWords[name]}
          </button>
        ))}
      </nav>
      {part ? (
        <TrialPage key={part} part={part} asked={asked} ask={ask} files={files.count} ready={ready} />
      ) : (
        <TrialList files={files} ready={ready} open={open} />
      )}
      <Drop files={files} bring={take} />
    </section>
  );
}
