/** Where a command writes; colours only on a terminal. */
export interface Out {
  readonly line: (text?: string) => void;
  readonly json: (value: unknown) => void;
  readonly warn: (text: string) => void;
  /** Replaces the last progress line; silent when the output is not a terminal. */
  readonly progress: (text: string) => void;
  readonly style: Style;
  readonly width: number;
}

export interface Style {
  readonly strong: (text: string) => string;
  readonly act: (text: string) => string;
  readonly faint: (text: string) => string;
}

export function terminal(): Out {
  // A reader that has seen enough (head, less) is no failure.
  process.stdout.on('error', (error: NodeJS.ErrnoException) => process.exit(error.code === 'EPIPE' ? 0 : 1));
  const colours = process.stdout.isTTY && process.env['NO_COLOR'] === undefined;
  const wrap = (code: string) => (text: string) => (colours ? `\u001b[${code}m${text}\u001b[0m` : text);
  const live = process.stderr.isTTY;
  return {
    line: (text = '') => void process.stdout.write(`${text}\n`),
    json: (value) => void process.stdout.write(`${JSON.stringify(value, null, 2)}\n`),
    warn: (text) => void process.stderr.write(`${text}\n`),
    progress: (text) => {
      if (live) process.stderr.write(`\r\u001b[2K${text}`);
    },
    style: { strong: wrap('1'), act: wrap('38;5;166'), faint: wrap('2') },
    width: process.stdout.columns || 100,
  };
}

/** Something a person must change before the command can do its work: exit 1. */
export class Refused extends Error {}

/** The command was called wrongly: exit 2. */
export class Misused extends Error {}
