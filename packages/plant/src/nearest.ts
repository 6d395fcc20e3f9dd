/** Fewest insertions, deletions, replacements and swaps of neighbours that turn one word into the other. */
export function distance(one: string, other: string): number {
  const width = other.length + 1;
  let before = new Uint16Array(width);
  let last = new Uint16Array(width);
  let row = new Uint16Array(width);
  for (let j = 0; j < width; j++) last[j] = j;
  for (let i = 1; i <= one.length; i++) {
    row[0] = i;
    for (let j = 1; j < width; j++) {
      const same = one[i - 1] === other[j - 1];
      let least = Math.min(last[j]! + 1, row[j - 1]! + 1, last[j - 1]! + (same ? 0 : 1));
      if (i > 1 && j > 1 && one[i - 1] === other[j - 2] && one[i - 2] === other[j - 1]) least = Math.min(least, before[j - 2]! + 1);
      row[j] = least;
    }
    [before, last, row] = [last, row, before];
  }
  return last[other.length]!;
}

/** The candidate that a person most likely meant, or undefined where none is near. Case, spaces and signs between count nothing. */
export function nearest(word: string, candidates: Iterable<string>): string | undefined {
  if (word.length > 80) return undefined;
  const plain = fold(word);
  const limit = plain.length < 2 ? 0 : Math.max(1, Math.floor(plain.length / 3));
  let best: string | undefined;
  let bestDistance = limit + 0.5;
  for (const candidate of candidates) {
    const other = fold(candidate);
    if (Math.abs(other.length - plain.length) > limit && !other.startsWith(plain)) continue;
    const far = other.startsWith(plain) && plain.length > 2 ? Math.min(limit, distance(plain, other)) : distance(plain, other);
    if (far < bestDistance) [best, bestDistance] = [candidate, far];
  }
  return best;
}

function fold(word: string): string {
  return word.toLowerCase().replace(/[\s_/·.-]+/g, '');
}
