import { BadTable, cellText, fileKind, rowsOfText, tableKind, textOfFile, type TableKind } from '@barwright/line';
import type { TakenFile, TrialAsks, TrialPart } from '../trial-protocol.js';

export interface HeldFile extends TakenFile {
  readonly cells: readonly (readonly string[])[];
}

/** Files of this page, newest last: those of a day and those brought by hand. They live as long as the page. */
const held: HeldFile[] = [];

const partOf: Partial<Record<TableKind, TrialPart>> = {
  viscometer: 'flow',
  roast: 'roasts',
  temper: 'temper',
  tunnel: 'tunnel',
  lanes: 'coat',
  cooks: 'cooks',
};

/** Reads a file and tells what it is by its headings. @throws BadTable with one sentence */
export async function takeFile({ name, bytes, day }: TrialAsks['file']): Promise<TakenFile> {
  const cells = await cellsOf(name, new Uint8Array(bytes));
  const kind = tableKind(cells, name);
  const part = partOf[kind];
  if (kind === 'stops' && day === undefined && !namesMachines(cells))
    throw new BadTable(`${name} has starts and ends but no machine, which no trial asks for by itself`);
  const component = kind === 'cooks' ? /^([a-z]+)[_ -]?(batch|cook|kettle)/i.exec(name)?.[1]?.toLowerCase() : undefined;
  const file: HeldFile = {
    name,
    kind,
    rows: cells.length,
    cells,
    ...(part ? { part } : {}),
    ...(component === undefined ? {} : { component }),
    ...(day === undefined ? {} : { day }),
  };
  const at = held.findIndex((other) => other.name === name && other.day === day);
  if (at >= 0) held.splice(at, 1);
  held.push(file);
  const { cells: _, ...told } = file;
  return told;
}

/** Several tables have a start and an end; stops of the line name a machine. */
export function namesMachines(cells: HeldFile['cells']): boolean {
  return cells.slice(0, 5).some((row) => row.some((cell) => /machine|station/i.test(cell)));
}

/** Files of a kind: those brought by hand first, newest first. */
export function filesOf(kind: TableKind): readonly HeldFile[] {
  const found = held.filter((file) => file.kind === kind).reverse();
  return [...found.filter(({ day }) => day === undefined), ...found.filter(({ day }) => day !== undefined)];
}

/** The one that was asked for by name, else the first. */
export function fileOf(kind: TableKind, name: string | undefined): HeldFile | undefined {
  const all = filesOf(kind);
  return name === undefined ? all[0] : all.find((file) => keyOf(file) === name);
}

/** What an address keeps of a file. */
export const keyOf = ({ name, day }: Pick<TakenFile, 'name' | 'day'>): string => (day === undefined ? name : `${day}/${name}`);

async function cellsOf(name: string, bytes: Uint8Array): Promise<readonly (readonly string[])[]> {
  const kind = fileKind(bytes);
  if (kind === 'old spreadsheet') throw new BadTable(`${name} is a spreadsheet of the old binary kind; save it as XLSX or CSV`);
  if (kind === 'text') return rowsOfText(textOfFile(bytes), name);
  const { default: readSheets } = await import('read-excel-file/web-worker');
  try {
    const sheets = await readSheets(new Blob([bytes as Uint8Array<ArrayBuffer>]));
    const filled = sheets.find(({ data }) => data.length > 1) ?? sheets[0];
    return (filled?.data ?? []).map((row) => row.map(cellText));
  } catch (error) {
    throw new BadTable(`${name} is no spreadsheet that can be read: ${(error as Error).message}`);
  }
}

const months = ['January', 'February', 'March', 'April', 'May', 'June', 'July', 'August', 'September', 'October', 'November', 'December'];

/** 'tunnel.csv of 17 March 2026' */
export function fileWords({ name, day }: Pick<TakenFile, 'name' | 'day'>): string {
  const [year, month, date] = (day ?? '').split('-').map(Number);
  return day === undefined ? name : `${name} of ${date} ${months[month! - 1] ?? ''} ${year}`;
}
