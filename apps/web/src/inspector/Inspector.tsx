import { useEffect, useRef } from 'react';
import { useSheet, useShown } from '../engine/sheet.js';
import type { InputLine, Inspection } from '../engine/protocol.js';
import { KnobRule } from '../drawing/KnobRule.js';
import { Sill } from '../number/Sill.js';
import { digits, windowWords, withUnit } from '../number/words.js';
import { useInspector } from './opening.js';
import { Part } from './Part.js';
import { Tie } from './Tie.js';
import { useInspection } from './useInspection.js';
import { WhatIf } from './WhatIf.js';
import { WhatWouldMakeIt } from './WhatWouldMakeIt.js';

/** Where a number comes from: value, standing, equation, inputs, what if, what would make it, sources. */
export function Inspector({ id }: { readonly id: string }) {
  const { close, trail, open } = useInspector();
  const { catalog } = useSheet();
  const shown = useShown(id);
  const { about, refused } = useInspection(id);
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus({ preventScroll: true }), [id]);
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (event.key !== 'Escape') return;
      event.preventDefault();
      close();
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, [close]);
  const meaning = (other: string) => catalog?.metas.find((meta) => meta.id === other)?.meaning ?? other;
  return (
    <>
      <Tie id={id} act={shown?.outside !== 0 && shown !== undefined} />
      <aside className="inspector" aria-label="Where this number comes from">
        <div className="inspector-top">
          <nav className="trail" aria-label="Opened one from another">
            {trail.slice(0, -1).map((other) => (
              <button key={other} type="button" className="word" onClick={(event) => open(other, event.currentTarget)}>
                {meaning(other)}
              </button>
            ))}
          </nav>
          <button type="button" className="close" onClick={close}>
            Close
          </button>
        </div>
        <h2 className="inspector-title" tabIndex={-1} ref={heading}>
          {capital(shown?.meta.meaning ?? id)}
        </h2>
        {shown ? null : <p className="cannot">This version has no number called “{id}”.</p>}
        {shown && !shown.meta.vector ? <Value id={id} about={about} /> : null}
        {refused ? <p className="cannot">Cannot tell: {refused}</p> : null}
        {about && shown ? <About about={about} id={id} /> : null}
      </aside>
    </>
  );
}

function Value({ id, about }: { readonly id: string; readonly about: Inspection | undefined }) {
  const shown = useShown(id)!;
  const { meta, value, truth, reason, outside } = shown;
  const missing = Number.isNaN(value);
  const bent = !missing && digits(value, meta) !== digits(truth, meta);
  const window = windowWords(meta.window, meta.decimals);
  return (
    <>
      <div className={outside === 0 ? 'inspector-value' : 'inspector-value figure-act'}>
        <span className="inspector-digits">
          {missing ? 'cannot tell' : digits(value, meta)}
          {missing || meta.unit === '' ? null : <span className="figure-unit">{meta.unit}</span>}
        </span>
        <span className="inspector-sill">
          <Sill shown={shown} width={250} />
          {window ? (
            <span className="caption">
              {window}
              {meta.window?.aim === undefined ? '' : `, aim ${digits(meta.window.aim, meta)}`}
              {meta.window?.reason ? ` · ${meta.window.reason}` : ''}
            </span>
          ) : null}
        </span>
      </div>
      <p className="standing">
        {missing ? (reason ?? 'It has no value.') : (about?.standing ?? ' ')}
        {bent ? `; if you do this. The truth is ${withUnit(truth, meta)}.` : ''}
        {about?.note ? ` ${capital(about.note)}.` : ''}
      </p>
    </>
  );
}

function About({ about, id }: { readonly about: Inspection; readonly id: string }) {
  const shown = useShown(id)!;
  return (
    <div className="about">
      {about.said.map(({ text, act }) => (
        <p key={text} className={act ? 'standing said-act' : 'standing'}>
          {act ? '▼ ' : '○ '}
          {text}
        </p>
      ))}
      {about.equation ? (
        <Part name="equation">
          <p className="equation">{about.equation}</p>
          {about.numbers ? <p className="equation equation-numbers">{about.numbers}</p> : null}
        </Part>
      ) : null}
      {about.elements ? (
        <Part name="made of">
          <ul className="elements">
            {[...about.elements]
              .sort((a, b) => b.value - a.value)
              .map(({ label, value }) => (
                <li key={label}>
                  <span className="element-value">{(100 * value).toFixed(2)} %</span> {label}
                </li>
              ))}
          </ul>
        </Part>
      ) : null}
      {about.inputs.length > 0 ? (
        <Part name="inputs">
          <Lines lines={about.inputs} />
        </Part>
      ) : null}
      {shown.meta.root && shown.meta.bend ? (
        <Part name="what if">
          <KnobRule id={id} />
        </Part>
      ) : about.knobs.length > 0 ? (
        <Part name="what if">
          <WhatIf id={id} knobs={about.knobs} />
        </Part>
      ) : null}
      {!shown.meta.root && about.knobs.length > 0 ? <WhatWouldMakeIt id={id} knobs={about.knobs} uncertainty={about.uncertainty} /> : null}
      {about.uses.length > 0 ? (
        <Part name="bears on">
          <Lines lines={about.uses} most={8} />
        </Part>
      ) : null}
      <Part name="sources">
        <Sources about={about} root={shown.meta.root} />
      </Part>
    </div>
  );
}

function Lines({ lines, most = 40 }: { readonly lines: readonly InputLine[]; readonly most?: number }) {
  const { open } = useInspector();
  const unique = lines.filter((line, at) => lines.findIndex(({ id }) => id === line.id) === at);
  return (
    <ul className="lines">
      {unique.slice(0, most).map(({ id, meaning, text, origin }) => (
        <li key={id}>
          <button type="button" className="line" onClick={(event) => open(id, event.currentTarget)}>
            <span className="line-value">{text}</span>
            <span className={`line-sill line-${origin}`} aria-hidden="true" />
            <span className="line-name">{meaning}</span>
            <span className="line-origin">{origin}</span>
          </button>
        </li>
      ))}
      {unique.length > most ? <li className="caption">and {unique.length - most} more</li> : null}
    </ul>
  );
}

function Sources({ about, root }: { readonly about: Inspection; readonly root: boolean }) {
  return (
    <ul className="sources">
      {about.sources.map(({ key, title }) => (
        <li key={key}>
          {title} <span className="caption">{key}</span>
        </li>
      ))}
      {about.standingOfSource ? <li>Standing of the source: {about.standingOfSource}.</li> : null}
      {about.place ? (
        <li>
          Written in <span className="place">{about.place}</span>
        </li>
      ) : null}
      {about.sources.length === 0 && !about.place ? (
        <li>{root ? 'Nobody wrote it down: it is taken by default.' : 'Arithmetic of the inputs above; no work is needed for it.'}</li>
      ) : null}
    </ul>
  );
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
