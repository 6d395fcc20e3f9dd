import { seen, wedge } from '@barwright/drawing';
import { useMemo } from 'react';
import { Picture } from '../drawing/Marks.js';
import { useCalmView } from '../engine/sheet.js';
import { useInspector } from '../inspector/opening.js';

const actMark = [wedge(8, 12, 12)];
const seenMark = [seen(8, 7)];

/** One sentence that can be signed or disputed, with its mark in the margin; the others, if any, behind it. */
export function OpeningSentence() {
  const view = useCalmView();
  const { open } = useInspector();
  const rest = useMemo(() => view?.sentence.all.slice(1) ?? [], [view]);
  if (!view) return null;
  const { mark, title, sub } = view.sentence;
  return (
    <div className="opening">
      {mark ? (
        <span className="margin-mark">
          <Picture marks={mark === 'act' ? actMark : seenMark} width={16} height={16} name={mark === 'act' ? 'act:' : 'seen:'} />
        </span>
      ) : null}
      <h1 className="title">{title}</h1>
      <p className="sub">{sub}</p>
      {rest.length > 2 ? (
        <details className="all-said">
          <summary>All {rest.length + 1} that should be seen</summary>
          <ol>
            {view.sentence.all.map(({ text, level, about }, at) => (
              <li key={at} className={level === 'act' ? 'said-act' : ''}>
                <span className="said-level">{level}:</span> {text}{' '}
                {about ? (
                  <button type="button" className="word" onClick={(event) => open(about, event.currentTarget)}>
                    Open
                  </button>
                ) : null}
              </li>
            ))}
          </ol>
        </details>
      ) : null}
    </div>
  );
}
