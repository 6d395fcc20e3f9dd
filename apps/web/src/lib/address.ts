/** The screens that there are. */
export const screens = ['section', 'band', 'bench', 'trials', 'papers', 'evidence'] as const;
export type Screen = (typeof screens)[number];

/** What an address keeps: where one is, which number is open, and what has been pulled. */
export interface Address {
  readonly plant?: string;
  readonly bar?: string;
  readonly screen: Screen;
  /** Which of the trials is open, and what it was asked otherwise, in the unit shown. */
  readonly part?: string;
  readonly asked?: Readonly<Record<string, string>>;
  readonly version?: number;
  /** Where the cut stands on the band: minutes since the slab came into its cooler. */
  readonly cut?: number;
  /** The number whose sheet is open. */
  readonly open?: string;
  /** Roots in metric units. */
  readonly changes: Readonly<Record<string, number>>;
}

/** '/pellamoor/kestrowan/section', with '?version=2&open=bar.mass&set=caramel.moisture:9.9'. */
export function readAddress(path: string, search: string): Address {
  const [plant, bar, word, part] = path
    .split('/')
    .filter((part) => part !== '')
    .map(decodeURIComponent);
  const query = new URLSearchParams(search);
  const version = Number(query.get('version'));
  const open = query.get('open');
  const screen = screens.find((name) => name === word) ?? 'section';
  const cut = query.get('cut') ?? '';
  const asked = readAsked(query.getAll('ask'));
  return {
    screen,
    ...(plant ? { plant } : {}),
    ...(bar ? { bar } : {}),
    ...(Number.isInteger(version) && version > 0 ? { version } : {}),
    ...(open ? { open } : {}),
    ...(screen === 'band' && cut !== '' && Number(cut) >= 0 && Number.isFinite(Number(cut)) ? { cut: Number(cut) } : {}),
    ...(screen === 'trials' && part ? { part, ...(Object.keys(asked).length > 0 ? { asked } : {}) } : {}),
    changes: readChanges(query.getAll('set')),
  };
}

/** 'rate:1050'; what stands behind the first colon may hold more of them, as a time of day does. */
function readAsked(pairs: readonly string[]): Record<string, string> {
  return Object.fromEntries(
    pairs.flatMap((pair) => {
      const colon = pair.indexOf(':');
      return colon > 0 ? [[pair.slice(0, colon), pair.slice(colon + 1)] as const] : [];
    }),
  );
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

export function writeAddress({ plant, bar, screen, part, asked, version, cut, open, changes }: Address): string {
  const trial = screen === 'trials' && part ? part : undefined;
  const place = plant && bar ? `/${encodeURIComponent(plant)}/${encodeURIComponent(bar)}/${screen}` : '/';
  const path = trial && place !== '/' ? `${place}/${encodeURIComponent(trial)}` : place;
  const query = [
    ...(version ? [`version=${version}`] : []),
    ...(screen === 'band' && cut !== undefined ? [`cut=${Number(cut.toFixed(2))}`] : []),
    ...(open ? [`open=${encodeURIComponent(open)}`] : []),
    ...(trial ? Object.entries(asked ?? {}).map(([key, value]) => `ask=${encodeURIComponent(key)}:${encodeURIComponent(value)}`) : []),
    ...Object.entries(changes).map(([id, value]) => `set=${encodeURIComponent(id)}:${Number(value.toPrecision(7))}`),
  ];
  return query.length > 0 ? `${path}?${query.join('&')}` : path;
}
