import { readFile } from 'node:fs/promises';
import { modelById, models, runModel, sources, type Model } from '@barwright/science';
import { Misused, Refused, type Out } from '../out.js';
import { table, wrap } from '../text.js';
import { whyUnread } from '../rows.js';

interface ModelOptions {
  readonly list?: boolean;
  readonly in?: string;
  readonly batch?: string;
  readonly json?: boolean;
}

/** The one door to every published model. */
export async function modelCommand(id: string | undefined, options: ModelOptions, out: Out): Promise<void> {
  if (options.batch !== undefined) return batch(options.batch, out);
  if (options.list) return list(options.json ?? false, out);
  if (id === undefined) throw new Misused('Name a model, or list them with --list');
  const model = find(id);
  if (options.in === undefined) {
    if (options.json) out.json(described(model));
    else describe(model, out);
    return;
  }
  const answer = refusing(() => runModel(model, inputOf(options.in!)));
  if (options.json) {
    out.json(answer);
    return;
  }
  for (const [key, { value, unit, low, high }] of Object.entries(answer.outputs)) {
    const interval = low === undefined || high === undefined ? '' : `  (${short(low)} to ${short(high)})`;
    out.line(
      `${key}  ${Array.isArray(value) ? value.map(short).join(', ') : short(value)} ${unit === '1' ? '' : unit}${interval}`.trimEnd(),
    );
  }
  for (const finding of answer.findings) out.line(`note: ${finding.message}`);
}

function find(id: string): Model {
  const model = modelById.get(id);
  if (model) return model;
  const words = id
    .toLowerCase()
    .split(/[^a-z0-9]+/)
    .filter((word) => word.length > 2);
  const like = models
    .map((other) => ({ id: other.id, score: likeness(words, other) }))
    .filter(({ score }) => score > 0)
    .sort((a, b) => b.score - a.score)
    .slice(0, 5);
  throw new Refused(
    `There is no model "${id}". ${like.length ? `Near it: ${like.map((other) => other.id).join(', ')}. ` : ''}List them with: barwright model --list`,
  );
}

/** How many of the words an id holds; whole words and the part behind the dot count most, the title a little. */
function likeness(words: readonly string[], other: Model): number {
  const [, name = ''] = other.id.split('.');
  const parts = other.id.split(/[._]/);
  const title = other.title.toLowerCase();
  const choices = other.inputs.flatMap((input) => input.choices ?? []).join(' ');
  return words.reduce(
    (sum, word) =>
      sum +
      (parts.includes(word) ? 4 : other.id.includes(word) ? 2 : title.includes(word) || choices.includes(word) ? 1 : 0) +
      (name.split('_').includes(word) ? 1 : 0),
    0,
  );
}

function inputOf(text: string): Record<string, unknown> {
  let parsed: unknown;
  try {
    parsed = JSON.parse(text);
  } catch (error) {
    throw new Misused(`--in is not JSON (${(error as Error).message}); write it like '{"temperature_c": 25}'`);
  }
  if (typeof parsed !== 'object' || parsed === null || Array.isArray(parsed))
    throw new Misused('--in must be a JSON object of inputs by key');
  return parsed as Record<string, unknown>;
}

function refusing<T>(work: () => T): T {
  try {
    return work();
  } catch (error) {
    const code = (error as { code?: string }).code;
    if (code === undefined) throw error;
    throw new Refused(`${(error as Error).message} [${code}]`);
  }
}

/** One start for many lines: each line answered in order; a refused line answers with its error and does not stop the rest. */
async function batch(file: string, out: Out): Promise<void> {
  let text: string;
  try {
    text = await readFile(file === '-' ? '/dev/stdin' : file, 'utf8');
  } catch (error) {
    throw new Refused(whyUnread(file, error, 'file', 'give the path of a file with one JSON object a line'));
  }
  const answers: string[] = [];
  let refused = 0;
  for (const [i, line] of text.split(/\r?\n/).entries()) {
    if (line.trim() === '') continue;
    answers.push(JSON.stringify(answerLine(line, i + 1)));
    if (answers.at(-1)!.includes('"error":')) refused++;
  }
  if (answers.length > 0) out.line(answers.join('\n'));
  if (refused > 0) out.warn(`${refused} of ${answers.length} lines were refused; each says why.`);
}

function answerLine(line: string, number: number): unknown {
  let id: string | null = null;
  try {
    const asked = askedBy(line, number);
    if (typeof asked?.id !== 'string')
      throw new Misused(`line ${number} has no "id"; write {"id":"sucrose.boiling_point","in":{"solids":0.8}}`);
    id = asked.id;
    return runModel(find(id), (asked.in ?? {}) as Record<string, unknown>);
  } catch (error) {
    return { id, error: { code: (error as { code?: string }).code ?? 'REFUSED', message: (error as Error).message, line: number } };
  }
}

function askedBy(line: string, number: number): { id?: unknown; in?: unknown } | null {
  try {
    return JSON.parse(line) as { id?: unknown; in?: unknown } | null;
  } catch (error) {
    throw new Misused(`line ${number} is not JSON (${(error as Error).message})`);
  }
}

function described(model: Model): unknown {
  const { id, title, about, inputs, outputs, standing } = model;
  const list = model.sources.map((key) => ({ key, ...(sources as Readonly<Record<string, object>>)[key] }));
  return { id, title, about, inputs: inputs.map((input) => ({ fitted: input.possible, ...input })), outputs, sources: list, standing };
}

function list(json: boolean, out: Out): void {
  if (json) {
    out.json(models.map(described));
    return;
  }
  for (const line of table(models.map((model) => [model.id, model.title]))) out.line(line);
}

function describe(model: Model, out: Out): void {
  out.line(out.style.strong(`${model.id}: ${model.title}`));
  for (const line of wrap(model.about, out.width)) out.line(line);
  out.line();
  const range = (r: readonly [number, number] | undefined) => (r ? `${r[0]} to ${r[1]}` : '');
  const rows = [['in', 'unit', 'possible', 'fitted', 'default', ''].map((cell) => out.style.faint(cell))];
  for (const input of model.inputs) {
    rows.push([
      input.key,
      input.unit,
      input.choices?.join('|') ?? range(input.possible),
      range(input.fitted ?? input.possible),
      input.default === undefined ? 'needed' : String(input.default),
      input.meaning,
    ]);
  }
  for (const line of table(rows)) out.line(line);
  out.line();
  for (const line of table(model.outputs.map((output) => [`out  ${output.key}`, output.unit, output.meaning]))) out.line(line);
  out.line();
  for (const key of model.sources) out.line(`source  ${key}: ${(sources as Readonly<Record<string, { title: string }>>)[key]!.title}`);
  out.line(`standing  ${model.standing}`);
}

function short(value: unknown): string {
  return typeof value === 'number' ? String(Number(value.toPrecision(6))) : String(value);
}
