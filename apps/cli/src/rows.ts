import { readFile } from 'node:fs/promises';
import { basename } from 'node:path';
import { Refused } from './out.js';

/** Rows of a CSV, TSV or XLSX file as text; of a spreadsheet the first sheet that holds a table. @throws Refused with one sentence */
export async function readRows(file: string): Promise<{ readonly name: string; readonly rows: readonly (readonly string[])[] }> {
  const name = basename(file);
  let bytes: Buffer;
  try {
    bytes = await readFile(file);
  } catch (error) {
    throw new Refused(`${file} cannot be read: ${(error as Error).message}`);
  }
  // Every XLSX file is a ZIP archive, whatever it is called.
  if (bytes[0] === 0x50 && bytes[1] === 0x4b) return { name, rows: await spreadsheet(bytes, file) };
  if (bytes[0] === 0xd0 && bytes[1] === 0xcf) throw new Refused(`${file} is a spreadsheet of the old binary kind; save it as XLSX or CSV`);
  return { name, rows: await separated(decoded(bytes), file) };
}

/** UTF-8, or what older loggers write: UTF-16 with its mark, else Latin-1. */
function decoded(bytes: Buffer): string {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return new TextDecoder('utf-16le').decode(bytes);
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return new TextDecoder('utf-16be').decode(bytes);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder('windows-1252').decode(bytes);
  }
}

async function separated(text: string, file: string): Promise<string[][]> {
  const { parse } = await import('csv-parse/sync');
  const start = text.split(/\r?\n/, 20).join('\n');
  // A semicolon or a tab parts columns before a comma does: the comma may be the decimal sign.
  const delimiter = start.includes(';') ? ';' : start.includes('\t') ? '\t' : ',';
  try {
    const rows = parse(text, {
      bom: true,
      trim: true,
      relax_column_count: true,
      relax_quotes: true,
      skip_empty_lines: false,
      delimiter,
    }) as string[][];
    return delimiter === ';' ? withPoints(rows) : rows;
  } catch (error) {
    throw new Refused(`${file} is no table: ${(error as Error).message}`);
  }
}

/** Where semicolons part the columns and no number has a point, a comma in a number is its decimal sign. */
function withPoints(rows: string[][]): string[][] {
  if (rows.some((row) => row.some((cell) => /^[+-]?\d+\.\d+$/.test(cell)))) return rows;
  return rows.map((row) => row.map((cell) => (/^[+-]?\d+,\d+$/.test(cell) ? cell.replace(',', '.') : cell)));
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

/** A date of a spreadsheet is wall-clock time; a time of day alone lies on the first day of its calendar. */
function cellText(cell: unknown): string {
  if (cell === null || cell === undefined) return '';
  if (cell instanceof Date) {
    const text = cell.toISOString().slice(0, 19);
    return cell.getUTCFullYear() < 1901 ? text.slice(11) : text;
  }
  return String(cell);
}
