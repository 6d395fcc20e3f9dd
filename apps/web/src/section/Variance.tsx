import { useSheet, useShownAll } from '../engine/sheet.js';
import { useInspector } from '../inspector/opening.js';
import { digits } from '../number/words.js';

/** Which layer makes the mass vary: shares of the variance as lengths. */
export function Variance() {
  const { catalog } = useSheet();
  const { open } = useInspector();
  const ids = catalog!.metas.filter(({ id }) => id.startsWith('variance.')).map(({ id }) => id);
  const shares = useShownAll(ids)
    .filter((shown) => shown !== undefined && shown.value > 0)
    .sort((a, b) => b!.value - a!.value);
  if (shares.length === 0) return null;
  return (
    <div className="variance">
      <h2 className="does-title">What makes the mass vary</h2>
      <div className="variance-strip">
        {shares.map((shown) => (
          <button
            key={shown!.meta.id}
            type="button"
            className="variance-piece"
            style={{ flexGrow: shown!.value }}
            aria-label={`${shown!.meta.meaning}: ${digits(shown!.value, shown!.meta)} %`}
            onClick={(event) => open(shown!.meta.id, event.currentTarget)}
          >
            <span className="variance-bar" />
            <span className="variance-name">{nameOf(shown!.meta.meaning)}</span>
            <span className="variance-share">{digits(shown!.value, shown!.meta)} %</span>
          </button>
        ))}
      </div>
    </div>
  );
}

const nameOf = (meaning: string): string => /^share of (?:the )?(.*) in the variance/.exec(meaning)?.[1] ?? meaning;
