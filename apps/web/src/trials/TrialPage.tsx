import { seen, wedge } from '@barwright/drawing';
import { Picture } from '../drawing/Marks.js';
import { KnobRule } from '../drawing/KnobRule.js';
import type { AskedFor, Said, TrialPart, TrialSheet } from '../engine/trial-protocol.js';
import { useShown } from '../engine/sheet.js';
import { useInspector } from '../inspector/opening.js';
import { useSize } from '../lib/useSize.js';
import { digits, withUnit } from '../number/words.js';
import { TrialButtons } from '../section/WhatItDoes.js';
import { Fields } from './Fields.js';
import { Figures } from './Figures.js';
import { useTrial } from './useTrial.js';

const actMark = [wedge(8, 12, 12)];
const seenMark = [seen(8, 7)];

export function TrialPage({
  part,
  asked,
  ask,
  files,
  ready,
}: {
  readonly part: TrialPart;
  readonly asked: AskedFor;
  readonly ask: (asked: AskedFor) => void;
  readonly files: number;
  readonly ready: boolean;
}) {
  const [ref, { width }] = useSize<HTMLDivElement>();
  const found = useTrial(part, asked, width, files, ready);
  const sheet = found.state === 'answered' ? found.answer : undefined;
  return (
    <>
      {found.state === 'waiting' ? <p className="waiting">One moment.</p> : null}
      {found.state === 'refused' ? <Opening title={/[.?!]$/.test(found.message) ? found.message : `${found.message}.`} sub="" /> : null}
      {sheet ? <Opening {...sheet} /> : null}
      {found.state === 'refused' && Object.keys(asked).length > 0 ? (
        <p>
          <button type="button" className="button" onClick={() => ask({})}>
            As it is now
          </button>
        </p>
      ) : null}
      <div className="trial-columns">
        <div className="trial-drawn" ref={ref}>
          {sheet?.plates.map((plate) => (
            <figure key={plate.name} className="plate">
              <div
                className="plate-room"
                {...(plate.width > width ? { tabIndex: 0, role: 'group', 'aria-label': `${plate.name}, scrolls sideways` } : {})}
              >
                <Picture marks={plate.marks} width={plate.width} height={plate.height} name={plate.name} />
              </div>
              {plate.caption ? <figcaption className="caption">{plate.caption}</figcaption> : null}
            </figure>
          ))}
        </div>
        <div className="trial-beside">
          {sheet ? <Fields fields={sheet.fields} asked={asked} ask={ask} /> : null}
          {sheet && sheet.knobs.length > 0 ? <TrialKnobs ids={sheet.knobs} /> : null}
          {sheet?.said.map((said) => (
            <Sentences key={said.title} said={said} />
          ))}
        </div>
        <div className="trial-tables">
          {sheet?.tables.map((table) => (
            <Figures key={table.caption} table={table} />
          ))}
        </div>
      </div>
    </>
  );
}

function Opening({ mark, title, sub }: Pick<TrialSheet, 'title' | 'sub'> & { readonly mark?: TrialSheet['mark'] }) {
  return (
    <div className="opening">
      {mark ? (
        <span className="margin-mark">
          <Picture marks={mark === 'act' ? actMark : seenMark} width={16} height={16} name={mark === 'act' ? 'act:' : 'seen:'} />
        </span>
      ) : null}
      <h1 className="title">{title}</h1>
      {sub === '' ? null : <p className="sub">{sub}</p>}
    </div>
  );
}

function Sentences({ said: { title, lines, caution } }: { readonly said: Said }) {
  return (
    <section className={caution ? 'trial-said trial-mind' : 'trial-said'} aria-label={title}>
      <h2 className="trial-said-title">{title}</h2>
      <ul>
        {lines.map(({ text, act }, at) => (
          <li key={at} className={act ? 'said-act' : ''}>
            {text}
          </li>
        ))}
      </ul>
    </section>
  );
}

/** Roots that may be turned here: pulled, the whole answer follows. */
function TrialKnobs({ ids }: { readonly ids: readonly string[] }) {
  return (
    <div className="trial-knobs">
      {ids.map((id) => (
        <OneKnob key={id} id={id} />
      ))}
      <TrialButtons />
    </div>
  );
}

function OneKnob({ id }: { readonly id: string }) {
  const shown = useShown(id);
  const { open } = useInspector();
  if (!shown || Number.isNaN(shown.value)) return null;
  const { meta, value, truth } = shown;
  return (
    <div className="knob">
      <p className="knob-head">
        <button type="button" className="knob-name word" data-quantity={id} onClick={(event) => open(id, event.currentTarget)}>
          {meta.meaning.charAt(0).toUpperCase() + meta.meaning.slice(1).replace(/ at the .*$/, '')}
        </button>
        <span className="caption">{digits(value, meta) === digits(truth, meta) ? 'unchanged' : `was ${withUnit(truth, meta)}`}</span>
      </p>
      <KnobRule id={id} />
    </div>
  );
}
