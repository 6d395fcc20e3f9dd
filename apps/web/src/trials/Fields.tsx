import { useState } from 'react';
import type { AskedFor, Field } from '../engine/trial-protocol.js';

/** What may be asked otherwise: numbers and choices. A number counts when it is left or confirmed. */
export function Fields({
  fields,
  asked,
  ask,
}: {
  readonly fields: readonly Field[];
  readonly asked: AskedFor;
  readonly ask: (asked: AskedFor) => void;
}) {
  if (fields.length === 0) return null;
  const set = (key: string, value: string) => {
    const { [key]: _, ...rest } = asked;
    ask(value === '' ? rest : { ...rest, [key]: value });
  };
  return (
    <div className="trial-fields">
      {fields.map((field) =>
        field.kind === 'number' ? (
          <NumberOf key={field.key} field={field} set={set} />
        ) : (
          <label key={field.key} className="trial-field">
            <span className="caption">{field.label}</span>
            <select className="trial-choose" value={field.value} onChange={(event) => set(field.key, event.target.value)}>
              {field.choices.map(({ value, text }) => (
                <option key={value} value={value}>
                  {text}
                </option>
              ))}
            </select>
          </label>
        ),
      )}
      {Object.keys(asked).length > 0 ? (
        <button type="button" className="button trial-back" onClick={() => ask({})}>
          As it is now
        </button>
      ) : null}
    </div>
  );
}

function NumberOf({
  field,
  set,
}: {
  readonly field: Extract<Field, { kind: 'number' }>;
  readonly set: (key: string, value: string) => void;
}) {
  const [text, setText] = useState(field.value);
  const [seen, setSeen] = useState(field.value);
  const [busy, setBusy] = useState(false);
  // An answer that comes while somebody types leaves what they typed.
  if (seen !== field.value) {
    setSeen(field.value);
    if (!busy || text === seen) setText(field.value);
  }
  const value = Number(text.replace(',', '.'));
  const bad = text.trim() !== '' && !Number.isFinite(value);
  // What stands there already counts as told once it is confirmed: a probe may well have shown its set point.
  const done = (confirmed: boolean) => {
    if (bad || (text.trim() === field.value && (field.given || !confirmed))) return;
    if (text.trim() !== '') setText(String(value));
    set(field.key, text.trim() === '' ? '' : String(value));
  };
  return (
    <label className="trial-field">
      <span className="caption">{field.label}</span>
      <span className="trial-number">
        <input
          type="text"
          inputMode="decimal"
          value={text}
          aria-invalid={bad}
          className={field.given ? 'trial-given' : ''}
          onChange={(event) => setText(event.target.value)}
          onFocus={() => setBusy(true)}
          onBlur={() => {
            setBusy(false);
            done(false);
          }}
          onKeyDown={(event) => {
            if (event.key === 'Enter') done(true);
            if (event.key === 'Escape') setText(field.value);
          }}
        />
        <span className="caption">{field.unit}</span>
      </span>
      {bad ? <span className="said-act caption">‘{text}’ is no number.</span> : null}
    </label>
  );
}
