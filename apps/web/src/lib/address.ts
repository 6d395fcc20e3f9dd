/** The screens that there are. */
export const screens = ['section', 'band', 'bench', 'papers', 'evidence'] as const;
export type Screen = (typeof screens)[number];

/** What an address keeps: where one is, which number is open, and what has been pulled. */
export interface Address {
  readonly plant?: string;
  readonly bar?: string;
  readonly screen: Screen;
  readonly version?: number;
  /** The number whose sheet is open. */
  readonly open?: string;
  /** Roots in metric units. */
  readonly changes: Readonly<Record<string, number>>;
}

/** '/pellamoor/kestrowan/section', with '?version=2&open=bar.mass&set=caramel.moisture:9.9'. */
export function readAddress(path: string, search: string): Address {
  const [plant, bar, word] = path
    .split('/')
    .filter((part) => part !== '')
    .map(decodeURIComponent);
  const query = new URLSearchParams(search);
  const version = Number(query.get('version'));
  const open = query.get('open');
  const screen = screens.find((name) => name === word) ?? 'section';
  return {
    screen,
    ...(plant ? { plant } : {}),
    ...(bar ? { bar } : {}),
    ...(Number.isInteger(version) && version > 0 ? { version } : {}),
    ...(open ? { open } : {}),
    changes: readChanges(query.getAll('set')),
  };
}

function readChanges(pairs: readonly string[]): Record<string, number> {
  const changes: Record<string, number> = {};
  for (const pair of pairs) {
    const colon = pair.lastIndexOf(':');
    const value = Number(pair.slice(colon + 1));
    if (colon > 0 && pair.slice(colon + 1) !== '' && Number.isFinite(value)) changes[pair.slice(0, colon)] = value;
  }
  return changes;
}

export function writeAddress({ plant, bar, screen, version, open, changes }: Address): string {
  const path = plant && bar ? `/${encodeURIComponent(plant)}/${encodeURIComponent(bar)}/${screen}` : '/';
  const query = [
    ...(version ? [`version=${version}`] : []),
    ...(open ? [`open=${encodeURIComponent(open)}`] : []),
    ...Object.entries(changes).map(([id, value]) => `set=${encodeURIComponent(id)}:${Number(value.toPrecision(7))}`),
  ];
  return query.length > 0 ? `${path}?${query.join('&')}` : path;
}
