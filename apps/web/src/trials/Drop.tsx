import { useEffect, useRef, useState } from 'react';
import { kindWords } from './words.js';
import type { Files } from './useFiles.js';

/** Where a log is dropped, or chosen by a button; what was read stands beside it, and why something was not. */
export function Drop({ files, bring }: { readonly files: Files; readonly bring: (files: readonly File[]) => void }) {
  const input = useRef<HTMLInputElement>(null);
  const over = useDropAnywhere(bring);
  const brought = files.taken.filter(({ day }) => day === undefined);
  return (
    <div className={over ? 'drop drop-over' : 'drop'}>
      <p className="drop-words">
        <span>{over ? 'Let go: it is read on this machine.' : 'Drop a log here: CSV or XLSX.'}</span>{' '}
        <button type="button" className="button" onClick={() => input.current?.click()}>
          Choose a file
        </button>
        <input
          ref={input}
          className="drop-input"
          type="file"
          multiple
          accept=".csv,.tsv,.txt,.xlsx"
          aria-label="Logs: CSV or XLSX"
          tabIndex={-1}
          onChange={(event) => {
            bring([...(event.currentTarget.files ?? [])]);
            event.currentTarget.value = '';
          }}
        />
      </p>
      <p className="caption">
        The table of a viscometer, a log of cooks, a roast log, temper tests or a cooling curve, a tunnel log, weights by lane, counts,
        pallets and stops: told apart by their headings. Nothing is stored; it lasts as long as this page.
      </p>
      <div role="status" className="drop-said">
        {brought.map(({ name, kind, rows }) => (
          <p key={name}>
            {name}: {kindWords[kind]}, {rows} lines.
          </p>
        ))}
        {files.refused.map(({ name, message }) => (
          <p key={name} className="said-act">
            {message}
          </p>
        ))}
      </div>
    </div>
  );
}

/** Files may be dropped anywhere on the page while a trial is open. */
function useDropAnywhere(bring: (files: readonly File[]) => void): boolean {
  const [over, setOver] = useState(false);
  useEffect(() => {
    const holdsFiles = (event: DragEvent) => event.dataTransfer?.types.includes('Files') === true;
    const onOver = (event: DragEvent) => {
      if (!holdsFiles(event)) return;
      event.preventDefault();
      setOver(true);
    };
    const onLeave = (event: DragEvent) => {
      if (event.relatedTarget === null) setOver(false);
    };
    const onDrop = (event: DragEvent) => {
      if (!holdsFiles(event)) return;
      event.preventDefault();
      setOver(false);
      bring([...(event.dataTransfer?.files ?? [])]);
    };
    window.addEventListener('dragover', onOver);
    window.addEventListener('dragleave', onLeave);
    window.addEventListener('drop', onDrop);
    return () => {
      window.removeEventListener('dragover', onOver);
      window.removeEventListener('dragleave', onLeave);
      window.removeEventListener('drop', onDrop);
    };
  }, [bring]);
  return over;
}
