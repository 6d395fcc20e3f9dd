import { useEffect, useState } from 'react';
import type { Edits } from '../engine/protocol.js';
import { useSheet, useView } from '../engine/sheet.js';
import { Refused, saveVersion } from '../lib/api.js';
import { useAddress } from '../lib/useAddress.js';
import type { BenchProps } from './Bench.js';

const name = 'barwright.author';

/** Keeps what was pulled as a new version of the definition: the numbers change, everything else stays to the letter. */
export function Keep({ opened, openAgain }: BenchProps) {
  const sheet = useSheet();
  const edits = useEdits();
  const [, go] = useAddress();
  const [author, setAuthor] = useState(() => localStorage.getItem(name) ?? '');
  const [reason, setReason] = useState('');
  const [said, setSaid] = useState<{ readonly text: string; readonly act: boolean }>();
  const [saving, setSaving] = useState(false);
  const pulled = edits.edits.length > 0;
  const notYet = !pulled
    ? 'Not yet: nothing is pulled'
    : author.trim() === ''
      ? 'Not yet: who are you?'
      : reason.trim() === ''
        ? 'Not yet: write why'
        : undefined;
  const save = async () => {
    setSaving(true);
    setSaid(undefined);
    try {
      localStorage.setItem(name, author.trim());
      const { version } = await saveVersion(opened.plant.id, {
        basedOn: opened.version,
        edits: edits.edits.map(({ file, path, value }) => ({ file, path, value })),
        author: author.trim(),
        reason: reason.trim(),
      });
      setSaid({ text: `Kept as version ${version.number}.`, act: false });
      setReason('');
      sheet.engine.step('truth');
      go({ version: undefined, changes: {}, open: undefined }, true);
      openAgain();
    } catch (error) {
      setSaid({ text: error instanceof Refused ? error.message : `Not kept: ${(error as Error).message}`, act: true });
    } finally {
      setSaving(false);
    }
  };
  return (
    <section className="keep" aria-label="Keep it as a version">
      <h2 className="does-title">Keep it as a version</h2>
      {pulled ? (
        <ul className="edits">
          {edits.edits.map(({ file, path, was, value, meaning }) => (
            <li key={`${file}/${path.join('/')}`}>
              <span className="edit-meaning">{meaning}</span> <span className="edit-was">{was}</span> →{' '}
              <span className="edit-value">{value}</span> <span className="caption">{file}</span>
            </li>
          ))}
          {edits.left.map((sentence) => (
            <li key={sentence} className="said-act">
              {sentence}
            </li>
          ))}
        </ul>
      ) : (
        <p className="does-hint">
          Pull a knob and the change stands here as it would be written into the files. Old versions stay; runs keep the version they used.
        </p>
      )}
      <form
        className="keep-form"
        onSubmit={(event) => {
          event.preventDefault();
          if (notYet === undefined && !saving) void save();
        }}
      >
        <label>
          <span className="caption">by</span>
          <input value={author} onChange={(event) => setAuthor(event.target.value)} autoComplete="name" maxLength={200} />
        </label>
        <label className="keep-why">
          <span className="caption">why</span>
          <input value={reason} onChange={(event) => setReason(event.target.value)} maxLength={2000} />
        </label>
        <button type="submit" className={notYet ? 'button' : 'button button-main'} disabled={notYet !== undefined || saving}>
          {notYet ?? (saving ? 'Keeping it' : `Keep as version ${opened.plant.latest + 1}`)}
        </button>
      </form>
      <p role="status" className={said?.act ? 'keep-said said-act' : 'keep-said'}>
        {said?.text}
      </p>
    </section>
  );
}

const nothing: Edits = { edits: [], left: [] };

/** The changes as they would be written, asked for when a hand has rested. */
function useEdits(): Edits {
  const sheet = useSheet();
  const view = useView();
  const [edits, setEdits] = useState<Edits>(nothing);
  useEffect(() => {
    let dropped = false;
    const timer = setTimeout(() => void sheet.engine.ask('edits', {}).then((next) => !dropped && setEdits(next)), 150);
    return () => {
      dropped = true;
      clearTimeout(timer);
    };
  }, [sheet, view]);
  return edits;
}
