import { lookOfWritten, type Builder, type Look } from '@barwright/bar';
import type { Line, Station } from '@barwright/plant';
import type { Table } from '@barwright/science';

/** What is taken where the plant wrote nothing. */
export interface Usual {
  readonly meaning: string;
  readonly value: number;
  readonly look: Look;
  readonly note: string;
  readonly from?: Pick<Table, 'source' | 'standing'>;
}

/**
 * A set point that the plant wrote under any name that fits, else one by default under the id that it would have had.
 * @param slug - last part of the id by default; a plant that writes a set point of that name uses it
 */
export function setPointOr(b: Builder, station: Station, slug: string, name: RegExp, dimension: string, usual: Usual): string {
  const written = station.setPoints.find(
    (point) =>
      (point.slug === slug || name.test(point.name)) && (point.value.dimension === undefined || point.value.dimension === dimension),
  );
  if (!written) return defaulted(b, `set.${station.slug}.${slug}`, usual);
  const id = `set.${station.slug}.${written.slug}`;
  return b.entered(id, `${written.name} at the ${station.name}`, written.value, lookOfWritten(written.value));
}

/** A constant of a station: the plant's own where it wrote a set point of that name, else the default, marked so. */
export function constantOr(b: Builder, station: Station, slug: string, usual: Usual): string {
  const written = station.setPoints.find((point) => point.slug === slug);
  if (written)
    return b.entered(`set.${station.slug}.${slug}`, `${written.name} at the ${station.name}`, written.value, lookOfWritten(written.value));
  return defaulted(b, `station.${station.slug}.${slug}`, usual);
}

export function defaulted(b: Builder, id: string, { meaning, value, look, note, from }: Usual): string {
  return b.root({
    id,
    meaning,
    ...look,
    value,
    origin: 'default',
    note,
    ...(from ? { source: from.source, standing: from.standing } : {}),
  });
}

/** The first station whose name fits. */
export function stationNamed(line: Line, name: RegExp): Station | undefined {
  return line.stations.find((station) => name.test(station.name));
}
