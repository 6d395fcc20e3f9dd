import { createHash } from 'node:crypto';

/** SHA-256 of the UTF-8 bytes, 64 hexadecimal digits. */
export function sha256(text: string): string {
  return createHash('sha256').update(text, 'utf8').digest('hex');
}

/** Hash of a set of files: of their paths in order of code units, each with the hash of its text. */
export function contentHash(files: Iterable<readonly [path: string, textHash: string]>): string {
  return sha256(JSON.stringify([...files].sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0))));
}

/** What a version's own hash covers. A change of any of it, or of any predecessor, changes the hash. */
export interface HashedVersion {
  readonly plant: string;
  readonly number: number;
  readonly name: string;
  readonly createdAt: string;
  readonly author: string;
  readonly reason: string;
  readonly contentHash: string;
  readonly predecessor: string | null;
}

/** Hash of a version; the leading 1 is the number of this way of hashing. */
export function versionHash(v: HashedVersion): string {
  return sha256(JSON.stringify([1, v.plant, v.number, v.name, v.createdAt, v.author, v.reason, v.contentHash, v.predecessor]));
}
