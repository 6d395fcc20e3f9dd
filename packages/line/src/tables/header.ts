import { dimensionNames, dimensions } from '@barwright/plant';

/** A header parted into its words and its unit. */
export interface Header {
  readonly words: string;
  readonly unit: string | undefined;
  /** Whether the unit is one that the program knows. */
  readonly known: boolean;
}

/** How instruments and spreadsheets spell units, to the one spelling of the unit table. */
const spellings: Readonly<Record<string, string>> = {
  c: '°C',
  degc: '°C',
  'deg c': '°C',
  '°c': '°C',
  '℃': '°C',
  celsius: '°C',
  f: '°F',
  degf: '°F',
  'deg f': '°F',
  '°f': '°F',
  '℉': '°F',
  fahrenheit: '°F',
  k: 'K',
  kelvin: 'K',
  'm s': 'm/s',
  'm/s': 'm/s',
  'm s-1': 'm/s',
  'm min': 'm/min',
  'm/min': 'm/min',
  fpm: 'ft/min',
  'ft/min': 'ft/min',
  'ft min': 'ft/min',
  'mm/s': 'mm/s',
  mm: 'mm',
  cm: 'cm',
  m: 'm',
  in: 'in',
  inch: 'in',
  inches: 'in',
  um: 'µm',
  µm: 'µm',
  micron: 'µm',
  min: 'min',
  mins: 'min',
  minutes: 'min',
  s: 's',
  sec: 's',
  seconds: 's',
  h: 'h',
  hours: 'h',
  hr: 'h',
  pct: '%',
  percent: '%',
  '%': '%',
  'g/100g': '%',
  'g/100 g': '%',
  wt: '%',
  'wt%': '%',
  '% w/w': '%',
  ppm: 'ppm',
  'c min': 'K/min',
  'c/min': 'K/min',
  '°c/min': 'K/min',
  'k min': 'K/min',
  'k/min': 'K/min',
  'f/min': '°F/min',
  '°f/min': '°F/min',
  pa: 'Pa',
  kpa: 'kPa',
  'd/cm2': 'dyn/cm²',
  'dyn/cm²': 'dyn/cm²',
  'dyn/cm2': 'dyn/cm²',
  pas: 'Pa·s',
  'pa s': 'Pa·s',
  'pa.s': 'Pa·s',
  'pa·s': 'Pa·s',
  'pa*s': 'Pa·s',
  mpas: 'mPa·s',
  'mpa s': 'mPa·s',
  'mpa.s': 'mPa·s',
  'mpa·s': 'mPa·s',
  cp: 'cP',
  p: 'P',
  '1/s': '1/s',
  '1 s': '1/s',
  's-1': '1/s',
  's^-1': '1/s',
  's⁻¹': '1/s',
  '/s': '1/s',
  'per s': '1/s',
  rpm: 'rpm',
  'kg h': 'kg/h',
  'kg/h': 'kg/h',
  'kg/hr': 'kg/h',
  'kg/min': 'kg/min',
  'lb/h': 'lb/h',
  'lb/hr': 'lb/h',
  'g cm3': 'g/cm³',
  'g/cm3': 'g/cm³',
  'g/ml': 'g/cm³',
  'kg m3': 'kg/m³',
  'kg/m3': 'kg/m³',
  'lb/ft3': 'lb/ft³',
  kg: 'kg',
  g: 'g',
  'meq kg': 'meq/kg',
  'meq/kg': 'meq/kg',
  'bars/min': 'bars/min',
};

const allUnits = new Set(dimensionNames.flatMap((name) => [...dimensions[name].units.keys()]));

/** One spelling of a unit as written; undefined where it is none that we know. */
export function unitNamed(text: string): string | undefined {
  const tidy = text.trim().replace(/[\s\u00a0]+/g, ' ');
  if (allUnits.has(tidy) && tidy !== '' && tidy !== 'P' && tidy !== 'F') return tidy;
  return spellings[tidy.toLowerCase()];
}

/**
 * 'zone_air_C', 'Air velocity (m/s)', 'Temp [°F]', 'time, min', 'moisture %': words and unit.
 * A unit in brackets or after a comma counts even where it is not known, so that it can be told.
 */
export function headerOf(text: string): Header {
  const bracket = /^(.*?)\s*[([{]\s*([^()[\]{}]+?)\s*[)\]}]\s*$/.exec(text);
  if (bracket) return parted(bracket[1]!, bracket[2]!);
  const comma = /^(.*?),\s*(\S+(?: \S+)?)$/.exec(text) ?? /^(.*\S)\s+\/\s+(\S+)$/.exec(text) ?? /^(.*\S)\s+in\s+(\S+)$/i.exec(text);
  if (comma && unitNamed(comma[2]!)) return parted(comma[1]!, comma[2]!);
  const sign = /^(.*?)\s*(%|°C|°F|℃|℉)$/.exec(text);
  if (sign) return parted(sign[1]!, sign[2]!);
  const parts = text.split(/[\s_]+/).filter(Boolean);
  for (const n of [3, 2, 1]) {
    if (parts.length <= n) continue;
    const tail = parts.slice(-n).join(' ');
    const unit = unitNamed(tail);
    // 'm' or 'h' alone may end a word list ('lane m'); only a suffix after an underscore counts for one letter.
    if (unit && (tail.length > 1 || text.includes(`_${tail}`) || /[°%]/.test(tail)))
      return { words: wordsOf(parts.slice(0, -n).join(' ')), unit, known: true };
  }
  return { words: wordsOf(text), unit: undefined, known: false };
}

function parted(name: string, unit: string): Header {
  const found = unitNamed(unit);
  return { words: wordsOf(name), unit: found ?? unit.trim(), known: found !== undefined };
}

function wordsOf(text: string): string {
  return text
    .replace(/([a-z])([A-Z])/g, '$1 $2')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}%]+/gu, ' ')
    .trim();
}
