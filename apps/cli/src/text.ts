/** Columns padded to their widest cell; numbers to the right. */
export function table(rows: readonly (readonly string[])[], right: readonly boolean[] = []): string[] {
  const widths: number[] = [];
  for (const row of rows) row.forEach((cell, i) => (widths[i] = Math.max(widths[i] ?? 0, length(cell))));
  return rows.map((row) =>
    row
      .map((cell, i) => {
        const gap = ' '.repeat(widths[i]! - length(cell));
        return right[i] ? gap + cell : i === row.length - 1 ? cell : cell + gap;
      })
      .join('  ')
      .trimEnd(),
  );
}

/** Width on screen: colour codes take none. */
export function length(text: string): number {
  return [...text.replace(/\u001b\[[0-9;]*m/g, '')].length;
}

/** Breaks a sentence at words. */
export function wrap(text: string, width: number, indent = ''): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    if (line !== '' && length(line) + 1 + length(word) > width - length(indent)) {
      lines.push(indent + line);
      line = word;
    } else line = line === '' ? word : `${line} ${word}`;
  }
  if (line !== '') lines.push(indent + line);
  return lines;
}
