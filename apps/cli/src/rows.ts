import { readFile } from 'node:fs/promises';
import { basename } from 'node:path';
import { cellText, fileKind, rowsOfText, textOfFile } from '@barwright/line';
import { Refused } from './out.js';

/** Rows of a CSV, TSV or XLSX file as text; of a spreadsheet the first sheet that holds a table. @throws Refused with one sentence */
export async function readRows(file: string): Promise<{ readonly name: string; readonly rows: readonly (readonly string[])[] }> {
  const name = basename(file);
  let bytes: Buffer;
  try {
    bytes = await readFile(file);
  } catch (error) {
    throw new Refused(whyUnread(file, error, 'file', 'give the path of a CSV or XLSX file'));
  }
  const kind = fileKind(bytes);
  if (kind === 'xlsx') return { name, rows: await spreadsheet(bytes, file) };
  if (kind === 'old spreadsheet') throw new Refused(`${file} is a spreadsheet of the old binary kind; save it as XLSX or CSV`);
  return { name, rows: rowsOfText(textOfFile(bytes), name) };
}

/** Why a file or folder could not be read, in a person's words. */
export function whyUnread(path: string, error: unknown, what: 'file' | 'folder', todo: string): string {
  const { code, message } = error as { code?: string; message: string };
  if (code === 'ENOENT') return `There is no ${what} ${path}; ${todo}`;
  if (code === 'EISDIR') return `${path} is a folder; ${todo}`;
  if (code === 'ENOTDIR') return `${path} is no folder; ${todo}`;
  if (code === 'EACCES' || code === 'EPERM') return `${path} may not be read by this user; ask for leave to read it, or copy it`;
  return `${path} cannot be read: ${message}`;
}

async function spreadsheet(bytes: Buffer, file: string): Promise<string[][]> {
  const { default: readSheets } = await import('read-excel-file/node');
  try {
    const sheets = await readSheets(bytes);
    const filled = sheets.find(({ data }) => data.length > 1) ?? sheets[0];
    return (filled?.data ?? []).map((row) => row.map(cellText));
  } catch (error) {
    throw new Refused(`${file} is no spreadsheet that can be read: ${(error as Error).message}`);
  }
}
