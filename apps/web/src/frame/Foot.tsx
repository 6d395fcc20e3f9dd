import { screens, type Screen } from '../lib/address.js';
import { setPref, usePrefs } from '../lib/prefs.js';
import type { Go } from '../lib/useAddress.js';
import { useScaleWords } from './scale-words.js';

const words: Readonly<Record<Screen, string>> = {
  section: 'Section',
  band: 'Band',
  bench: 'Bench',
  trials: 'Trials',
  papers: 'Papers',
  evidence: 'Evidence',
};

/** The screens as words on one line; on its right the scale of what is shown and how a person reads it. */
export function Foot({ screen, go }: { readonly screen: Screen; readonly go: Go }) {
  const { units, theme } = usePrefs();
  const scale = useScaleWords();
  return (
    <footer className="foot">
      <nav aria-label="Screens">
        {screens.map((name) => (
          <button
            key={name}
            type="button"
            className="foot-word"
            aria-current={name === screen ? 'page' : undefined}
            onClick={() => go({ screen: name, open: undefined, part: undefined, asked: undefined })}
          >
            {words[name]}
          </button>
        ))}
      </nav>
      <div className="foot-right">
        <span className="foot-scale">{scale}</span>
        <button
          type="button"
          className="foot-choice"
          onClick={() => setPref('units', units === 'metric' ? 'us' : 'metric')}
          aria-label={`Units: ${units === 'metric' ? 'metric; change to US' : 'US; change to metric'}`}
        >
          {units === 'metric' ? 'metric' : 'US units'}
        </button>
        <button
          type="button"
          className="foot-choice"
          onClick={() => setPref('theme', theme === 'day' ? 'night' : 'day')}
          aria-label={`Sheet: ${theme === 'day' ? 'day; change to night' : 'night; change to day'}`}
        >
          {theme === 'day' ? 'day' : 'night'}
        </button>
      </div>
    </footer>
  );
}
