import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/** Rows of one file of the demo day. Its files have no quoted cells. */
export function demoDay(file: string): string[][] {
  const path = fileURLToPath(new URL(`../../../examples/pellamoor/days/2026-03-17/${file}`, import.meta.url));
  return rowsOf(readFileSync(path, 'utf8'));
}

export function rowsOf(text: string): string[][] {
  return text
    .trim()
    .split(/\r?\n/)
    .map((line) => line.split(','));
}
