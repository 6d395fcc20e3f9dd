/** A refusal of the server, or its silence, as one sentence. */
export class Refused extends Error {
  constructor(
    readonly code: string,
    message: string,
    readonly problems: readonly { readonly file?: string; readonly line?: number; readonly message: string }[] = [],
  ) {
    super(message);
  }
}

export interface PlantLine {
  readonly id: string;
  readonly name: string;
  readonly latest: number;
  /** ISO 8601. */
  readonly savedAt: string;
}
export interface PlantDetail extends PlantLine {
  readonly ok: boolean;
  readonly bars: readonly { readonly name: string; readonly slug: string; readonly format: string; readonly line: string | null }[];
}
export interface VersionLine {
  readonly number: number;
  readonly createdAt: string;
  readonly author: string;
  readonly reason: string;
  readonly basedOn: number | null;
  readonly contentHash: string;
}
export interface EvidenceRow {
  readonly id: string;
  readonly model: string;
  readonly inputs: Readonly<Record<string, unknown>>;
  readonly output: string;
  readonly unit: string;
  readonly expected: number | string | readonly (number | null)[];
  readonly computed: number | string | null;
  readonly tolerance: number;
  readonly deviation: number | null;
  readonly inside: boolean;
  readonly kind: string;
  readonly source: { readonly key: string; readonly title: string; readonly address?: string };
  readonly standing: string;
  readonly note?: string;
  readonly error?: string;
}
export interface Evidence {
  readonly models: number;
  readonly checks: number;
  readonly inside: number;
  readonly results: readonly EvidenceRow[];
}
export interface ModelLine {
  readonly id: string;
  readonly title: string;
  readonly about: string;
  readonly standing: string;
  readonly inputs: readonly {
    readonly key: string;
    readonly unit: string;
    readonly meaning: string;
    readonly fitted?: readonly (number | null)[];
  }[];
  readonly sources: readonly { readonly key: string; readonly title: string; readonly address?: string }[];
}
type Definition = { readonly version: { readonly number: number } } & (
  | { readonly ok: true; readonly plant: unknown }
  | { readonly ok: false; readonly problems: readonly { readonly file: string; readonly line: number; readonly message: string }[] }
);

async function reach(path: string, init?: RequestInit): Promise<Response> {
  try {
    return await fetch(path, init);
  } catch {
    throw new Refused(
      'OFFLINE',
      'The server does not answer. What is on this screen stays; nothing new is loaded or saved until it is back.',
    );
  }
}

async function ask<T>(path: string, init?: RequestInit): Promise<T> {
  const answer = await reach(path, init);
  const body = (await answer.json().catch(() => undefined)) as unknown;
  if (answer.ok) return body as T;
  const { code, detail, problems } = (body ?? {}) as { code?: string; detail?: string; problems?: Refused['problems'] };
  throw new Refused(code ?? `HTTP_${answer.status}`, detail ?? `The server answered ${answer.status} and said no more.`, problems);
}

export const listPlants = () => ask<readonly PlantLine[]>('/api/plants');
export const getPlant = (plant: string) => ask<PlantDetail>(`/api/plants/${encodeURIComponent(plant)}`);
export const listVersions = (plant: string) => ask<readonly VersionLine[]>(`/api/plants/${encodeURIComponent(plant)}/versions`);
export const getEvidence = () => ask<Evidence>('/api/evidence');
export const listModels = () => ask<readonly ModelLine[]>('/api/models');

/** A version as the loader reads it. @throws Refused DEFINITION_INVALID where this release does not read it any more */
export async function getDefinition(
  plant: string,
  version: number | 'latest',
): Promise<{ readonly wire: unknown; readonly version: number }> {
  const got = await ask<Definition>(`/api/plants/${encodeURIComponent(plant)}/versions/${version}/definition`);
  if (got.ok) return { wire: got.plant, version: got.version.number };
  const [first] = got.problems;
  throw new Refused(
    'DEFINITION_INVALID',
    `Version ${got.version.number} cannot be read: ${first ? `${first.file}, line ${first.line}: ${first.message}` : 'its files are no plant'}.`,
    got.problems,
  );
}

export interface DayLine {
  readonly date: string;
  readonly files: readonly { readonly name: string; readonly bytes: number }[];
}
export const listDays = (plant: string) => ask<readonly DayLine[]>(`/api/plants/${encodeURIComponent(plant)}/days`);

/** A log of a day, as it lies there. */
export async function getDayFile(plant: string, date: string, name: string): Promise<ArrayBuffer> {
  const answer = await reach(`/api/plants/${encodeURIComponent(plant)}/days/${date}/files/${encodeURIComponent(name)}`);
  if (answer.ok) return answer.arrayBuffer();
  throw new Refused(`HTTP_${answer.status}`, `${name} of ${date} cannot be fetched: the server answered ${answer.status}.`);
}

/** Where the run sheet of a version lies, as a page or as PDF. */
export function runSheetAddress(plant: string, version: number, bar: string, units: string, kind: 'html' | 'pdf'): string {
  return `/api/plants/${encodeURIComponent(plant)}/versions/${version}/run-sheet.${kind}?bar=${encodeURIComponent(bar)}&units=${units}`;
}

export async function getRunSheet(plant: string, version: number, bar: string, units: string): Promise<string> {
  const answer = await reach(runSheetAddress(plant, version, bar, units, 'html'));
  if (answer.ok) return answer.text();
  const { code, detail } = ((await answer.json().catch(() => ({}))) ?? {}) as { code?: string; detail?: string };
  throw new Refused(code ?? `HTTP_${answer.status}`, detail ?? `The server answered ${answer.status} and said no more.`);
}

export interface NewVersion {
  readonly basedOn: number;
  readonly edits: readonly { readonly file: string; readonly path: readonly (string | number)[]; readonly value: string }[];
  readonly author: string;
  readonly reason: string;
}
export const saveVersion = (plant: string, version: NewVersion) =>
  ask<{ readonly version: VersionLine; readonly notes: readonly { readonly message: string }[] }>(
    `/api/plants/${encodeURIComponent(plant)}/versions`,
    {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(version),
    },
  );
