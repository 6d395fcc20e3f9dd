import { missing, seen, tick, wedge } from '@barwright/drawing';
import { Picture } from '../drawing/Marks.js';
import type { TrialLine, TrialPart } from '../engine/trial-protocol.js';
import type { Files } from './useFiles.js';
import { useTrials } from './useTrial.js';
import { dayWords, partWords } from './words.js';

const marks = { act: [wedge(8, 13, 12)], seen: [seen(8, 8)], tick: [tick(8, 8)], none: [missing(8, 8, 13)] };

/** Every question with its sentence; a press opens it. */
export function TrialList({
  files,
  ready,
  open,
}: {
  readonly files: Files;
  readonly ready: boolean;
  readonly open: (part: TrialPart) => void;
}) {
  const found = useTrials(files.count, ready);
  if (found.state === 'waiting') return <p className="waiting">The trials are being made.</p>;
  if (found.state === 'refused') return <p className="cannot said-act">{found.message}</p>;
  const acts = found.answer.filter(({ mark }) => mark === 'act').length;
  const answered = found.answer.filter(({ refused }) => !refused).length;
  const logs = files.taken.filter(({ day, part }) => day !== undefined && part !== undefined).length;
  return (
    <>
      <div className="opening">
        <h1 className="title">
          {acts === 0
            ? 'Nothing here asks for a person.'
            : acts === 1
              ? 'One of these asks for a person.'
              : `${capital(numberWord(acts))} of these ask for a person.`}
        </h1>
        <p className="sub">
          {capital(numberWord(answered))} answers from the definition of the plant
          {files.day ? ` and ${logs} logs of ${dayWords(files.day)}` : ', and no log of a day beside it'}. Each opens; each can be asked
          otherwise.
        </p>
      </div>
      <ul className="trial-list">
        {found.answer.map((line) => (
          <Line key={line.part} line={line} open={open} />
        ))}
      </ul>
    </>
  );
}

function Line({ line: { part, mark, title, refused }, open }: { readonly line: TrialLine; readonly open: (part: TrialPart) => void }) {
  const sign = refused ? 'none' : (mark ?? 'tick');
  return (
    <li>
      <button type="button" className={refused ? 'trial-line trial-line-none' : 'trial-line'} onClick={() => open(part)}>
        <span className="trial-line-mark">
          <Picture
            marks={marks[sign]}
            width={18}
            height={18}
            name={sign === 'act' ? 'act:' : sign === 'tick' ? 'well:' : sign === 'seen' ? 'seen:' : 'missing:'}
          />
        </span>
        <span className="trial-line-name">{partWords[part]}</span>
        <span className="trial-line-said">{title}</span>
      </button>
    </li>
  );
}

const small = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'];
const numberWord = (count: number): string => small[count] ?? String(count);
const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
