import { useEffect, useMemo, useState } from 'react';
import { getEvidence, listModels, type Evidence as Found, type EvidenceRow, type ModelLine } from '../lib/api.js';
import '../styles/evidence.css';
import { ModelRow } from './ModelRow.js';

interface Group {
  readonly model: ModelLine;
  readonly rows: readonly EvidenceRow[];
  readonly outside: number;
}

/** Every model and every check of it against a value from outside; what does not agree stays, and stands first. */
export function Evidence() {
  const [found, setFound] = useState<Found>();
  const [models, setModels] = useState<readonly ModelLine[]>();
  const [refused, setRefused] = useState<string>();
  const [words, setWords] = useState('');
  useEffect(() => {
    let dropped = false;
    Promise.all([getEvidence(), listModels()]).then(
      ([evidence, list]) => {
        if (dropped) return;
        setFound(evidence);
        setModels(list);
      },
      (error: Error) => !dropped && setRefused(error.message),
    );
    return () => {
      dropped = true;
    };
  }, []);
  const groups = useMemo(() => (found && models ? grouped(found, models) : []), [found, models]);
  const shown = useMemo(() => filtered(groups, words), [groups, words]);
  if (refused) return <p className="cannot said-act">{refused}</p>;
  if (!found) return <p className="waiting">Every model is being run against its sources. It takes a second or two.</p>;
  const outside = found.checks - found.inside;
  const bare = groups.filter(({ rows }) => rows.length === 0).length;
  return (
    <section className="evidence" aria-label="Evidence">
      <div className="opening">
        <h1 className="title">
          {count(found.inside)} of {count(found.checks)} checks agree with the value from outside
          {outside > 0 ? `; ${count(outside)} do not, and stay here` : ''}.
        </h1>
        <p className="sub">
          {count(found.models)} models, run just now. A check is a published or measured value the model was not fitted to; its window is
          what the source states, or the tolerance written beside it.
          {bare > 0 ? ` ${count(bare)} models have no check of their own.` : ''}
        </p>
      </div>
      <p className="evidence-find">
        <label>
          <span className="caption">find</span>
          <input
            type="search"
            value={words}
            onChange={(event) => setWords(event.target.value)}
            placeholder="boiling, Norrish, viscosity …"
          />
        </label>
        <span className="caption">
          {count(shown.length)} models · ring: a check inside its window · <span className="said-act">▼</span> outside · words: no number to
          compare
        </span>
      </p>
      <ol className="models">
        {shown.map(({ model, rows, outside: out }) => (
          <ModelRow key={model.id} model={model} rows={rows} outside={out} />
        ))}
      </ol>
    </section>
  );
}

function grouped({ results }: Found, models: readonly ModelLine[]): readonly Group[] {
  const byModel = new Map<string, EvidenceRow[]>();
  for (const row of results) byModel.set(row.model, [...(byModel.get(row.model) ?? []), row]);
  return models
    .map((model): Group => {
      const rows = byModel.get(model.id) ?? [];
      return { model, rows, outside: rows.filter(({ inside }) => !inside).length };
    })
    .sort((a, b) => Math.sign(b.outside) - Math.sign(a.outside));
}

function filtered(groups: readonly Group[], words: string): readonly Group[] {
  const asked = words
    .toLowerCase()
    .split(/\s+/)
    .filter((word) => word !== '');
  if (asked.length === 0) return groups;
  return groups.filter(({ model, rows }) => {
    const text = [
      model.id,
      model.title,
      model.about,
      ...model.sources.map(({ title, key }) => `${title} ${key}`),
      ...rows.map(({ source }) => source.title),
    ]
      .join(' ')
      .toLowerCase();
    return asked.every((word) => text.includes(word));
  });
}

const count = (value: number): string => value.toLocaleString('en-GB').replaceAll(',', '\u2009');
