/** One published work. `address` only where the text was read there. */
export interface Source {
  /** Author or body, title, edition, year, part. */
  readonly title: string;
  readonly address?: string;
}
