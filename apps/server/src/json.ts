/** A number as JSON can carry it: null where it is infinite or none. */
export const finite = (value: number): number | null => (Number.isFinite(value) ? value : null);

/** A model's value as JSON can carry it. */
export function plain(value: number | readonly number[] | string | boolean): number | (number | null)[] | string | boolean | null {
  if (typeof value === 'number') return finite(value);
  return typeof value === 'object' ? value.map(finite) : value;
}
