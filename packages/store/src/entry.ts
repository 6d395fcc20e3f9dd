import { StoreError } from './errors.js';

const slug = /^[a-z0-9]+(-[a-z0-9]+)*$/;
/** Characters that no file name needs and some systems refuse. */
const badInPath = /[\u0000-\u001f\u007f\\:*?"<>|]/;

/** The key of a plant: lower-case letters, digits and hyphens, at most 64. */
export function requireId(id: string): string {
  if (id.length > 64 || !slug.test(id)) {
    throw new StoreError(
      'BAD_ENTRY',
      `The key of the plant is '${id}', but lower-case letters, digits and hyphens are expected (up to 64)`,
    );
  }
  return id;
}

/** 'Pellamoor Works' → 'pellamoor-works'; accents are dropped. Undefined where nothing usable is left. */
export function idFromName(name: string): string | undefined {
  const plain = name.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase();
  const words = plain
    .replace(/[^a-z0-9]+/g, '-')
    .slice(0, 64)
    .replace(/^-|-$/g, '');
  return words === '' ? undefined : words;
}

/** One line that a person wrote: who, why, a name. */
export function requireWords(what: string, words: string, longest: number): string {
  const trimmed = words.trim();
  const odd = /[\u0000-\u0008\u000b\u000c\u000e-\u001f]|\p{Surrogate}/u.test(trimmed);
  if (trimmed === '' || trimmed.length > longest || odd) {
    const came = trimmed === '' ? 'is empty' : odd ? 'holds control characters' : `has ${trimmed.length} characters`;
    throw new StoreError('BAD_ENTRY', `${what} ${came}, but 1 to ${longest} readable characters are expected`);
  }
  return trimmed;
}

/**
 * Files as they can be stored and written back to any disk unchanged.
 * @throws StoreError BAD_FILE naming the file
 */
export function requireFiles(files: ReadonlyMap<string, string>): ReadonlyMap<string, string> {
  if (files.size === 0) throw new StoreError('BAD_FILE', 'There is no file, but at least one is expected');
  const seen = new Map<string, string>();
  for (const [path, text] of files) {
    const parts = path.split('/');
    if (
      path.length > 200 ||
      badInPath.test(path) ||
      /\p{Surrogate}/u.test(path) ||
      parts.some((part) => part.trim() === '' || /^\.+$/.test(part))
    ) {
      const message = `The file is called ${JSON.stringify(path)}, but a path inside the plant's folder is expected, such as bars/name.yaml`;
      throw new StoreError('BAD_FILE', message, { file: path });
    }
    const twin = seen.get(path.toLowerCase());
    if (twin !== undefined)
      throw new StoreError('BAD_FILE', `${twin} and ${path} differ only in capitals; some disks cannot hold both`, { file: path });
    seen.set(path.toLowerCase(), path);
    if (text.includes('\u0000') || /\p{Surrogate}/u.test(text)) {
      throw new StoreError('BAD_FILE', `${path} holds bytes that are not text; UTF-8 text is expected`, { file: path });
    }
  }
  return files;
}
