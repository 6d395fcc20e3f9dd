import { Session } from '@barwright/chain';
import { dimensions, loadPlant, parseQuantity, type Plant, type Problem } from '@barwright/plant';
import { readPlantFolder } from '@barwright/plant/node';
import { inWords, plantChain, presentation, type PlantChain, type Units } from '@barwright/line';
import { Misused, Refused } from './out.js';

export interface Opened extends PlantChain {
  readonly session: Session;
  readonly units: Units;
  /** A value of a quantity in words; `finer` shows that many digits more. */
  readonly words: (id: string, value: number, finer?: number) => string;
}

/** Options that every command on a plant takes. */
export interface PlantOptions {
  readonly bar?: string;
  readonly units?: string;
  readonly json?: boolean;
  readonly set?: readonly string[];
}

/** Reads and checks a plant folder. @throws Refused with every problem, one a line */
export async function readPlant(folder: string): Promise<Plant> {
  let files;
  try {
    files = await readPlantFolder(folder);
  } catch (error) {
    throw new Refused((error as Error).message);
  }
  const loaded = loadPlant(files);
  if (!loaded.ok) throw new Refused([`${folder} was not loaded:`, ...loaded.problems.map(problemInWords)].join('\n'));
  return loaded.plant;
}

export function problemInWords(problem: Problem): string {
  const place = `${problem.file}:${problem.line}${problem.column === undefined ? '' : `:${problem.column}`}`;
  const tail = [problem.expected && `expected ${problem.expected}`, problem.advice].filter(Boolean).join('; ');
  return `  ${place}  ${problem.message}${tail ? ` (${tail})` : ''}  [${problem.code}]`;
}

/** A plant folder as a chain of one bar, with `--set` changes in place. */
export async function openPlant(folder: string, options: PlantOptions): Promise<Opened> {
  const plant = await readPlant(folder);
  const units = unitsOption(options.units);
  const built = plantChain(plant, options.bar);
  const session = new Session(built.chain);
  const words = (id: string, value: number, finer = 0) => {
    const quantity = built.chain.quantities[built.chain.index.get(id)!]!;
    return inWords({ ...quantity, decimals: (quantity.decimals ?? 2) + finer }, value, units);
  };
  const opened = { ...built, session, units, words };
  const changes = (options.set ?? []).map((text) => assignment(opened, text));
  if (changes.length > 0) session.set(Object.fromEntries(changes));
  return opened;
}

function unitsOption(given: string | undefined): Units {
  if (given === undefined || given === 'metric' || given === 'us') return given ?? 'metric';
  throw new Misused(`--units is "${given}", but metric or us is expected`);
}

/** 'caramel.moisture=10.3 %' as an id and a value in the unit inside. */
export function assignment(opened: PlantChain & { readonly units: Units }, text: string): readonly [id: string, value: number] {
  const cut = text.indexOf('=');
  if (cut < 1) throw new Misused(`"${text}" is no change; write id=value, such as caramel.moisture="10.3 %"`);
  const id = text.slice(0, cut).trim();
  return [id, valueFor(opened, id, text.slice(cut + 1))];
}

/** A value with its unit, or a plain number in the unit in which the quantity is shown. */
export function valueFor(opened: PlantChain & { readonly units: Units }, id: string, text: string): number {
  const base = id.replace(/\[.*\]$/, '');
  const index = opened.chain.index.get(base);
  if (index === undefined)
    throw new Refused(`There is no quantity "${base}". ${nearest(opened, base)}List them with: barwright quantities <plant folder>`);
  const quantity = opened.chain.quantities[index]!;
  const { unit, toInside } = presentation(quantity, opened.units);
  const trimmed = text.trim();
  if (/^[+\-−]?\d+(\.\d+)?(e[+-]?\d+)?$/i.test(trimmed)) return toInside(Number(trimmed.replace('−', '-')));
  const parsed = parseQuantity(trimmed, 'any', { currency: opened.plant.currency });
  if (!parsed.ok)
    throw new Refused(
      `${id}: "${trimmed}" ${parsed.fault.message}; write it in ${unit || 'plain numbers'}, such as ${id}="${sample(unit)}"`,
    );
  const { dimension, value, currency } = parsed.measure;
  if (!fits(quantity.unit, dimensions[dimension].inside, currency)) {
    throw new Refused(`${id} is in ${unit || 'plain numbers'}, but "${trimmed}" is ${dimensions[dimension].label}`);
  }
  return value;
}

/** Whether a measure of a dimension can stand for a quantity in this unit. */
function fits(unit: string, inside: string, currency: string | undefined): boolean {
  if (currency !== undefined) return unit.startsWith(currency);
  return unit === inside || (unit === 'K' && inside === '°C') || (unit === 'kg/kg' && inside === '1') || (unit === '1' && inside === '');
}

function sample(unit: string): string {
  return unit === '%' ? '9.5 %' : `1 ${unit}`.trim();
}

function nearest(opened: PlantChain, wanted: string): string {
  const words = wanted.split('.');
  const last = words.at(-1)!;
  const like = opened.chain.quantities.map((quantity) => quantity.id).filter((id) => id.includes(last) || id.startsWith(`${words[0]}.`));
  const ranked = like.sort((a, b) => distance(a, wanted) - distance(b, wanted)).slice(0, 3);
  return ranked.length ? `Did you mean ${ranked.join(', ')}? ` : '';
}

function distance(a: string, b: string): number {
  const row = Array.from({ length: b.length + 1 }, (_, i) => i);
  for (let i = 1; i <= a.length; i++) {
    let previous = row[0]!;
    row[0] = i;
    for (let j = 1; j <= b.length; j++) {
      const kept = row[j]!;
      row[j] = Math.min(row[j]! + 1, row[j - 1]! + 1, previous + (a[i - 1] === b[j - 1] ? 0 : 1));
      previous = kept;
    }
  }
  return row[b.length]!;
}
