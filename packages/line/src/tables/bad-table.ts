/** A table cannot be read; the sentence names it, what came and what was expected. */
export class BadTable extends TypeError {
  readonly code = 'BAD_TABLE';
}
