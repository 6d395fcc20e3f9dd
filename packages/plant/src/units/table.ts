/**
 * Every unit that the files may be written in, as a factor to the one unit used inside (and an offset for temperatures).
 * Factors are exact by definition: pound 0.45359237 kg, foot 0.3048 m, US gallon 231 in³ (international yard and pound
 * agreement of 1959; NIST SP 811 appendix B); conventional millimetre of mercury 133.322 Pa.
 */
export interface UnitFactor {
  readonly factor: number;
  /** Inside = written · factor + offset. */
  readonly offset: number;
  /** The whole number 1 / factor, where it is one. */
  readonly divisor?: number;
  /** The power of ten that the factor is: shifting the point keeps decimals as written, which multiplying by 0.001 does not. */
  readonly shift?: number;
}

/** From the written unit to the one inside. */
export function inward(value: number, { factor, offset, divisor, shift }: UnitFactor): number {
  if (shift !== undefined) return shifted(value, shift);
  return (divisor === undefined ? value * factor : value / divisor) + offset;
}

/** From the unit inside to the written one. */
export function outward(value: number, { factor, offset, divisor, shift }: UnitFactor): number {
  if (shift !== undefined) return shifted(value, -shift);
  return divisor === undefined ? (value - offset) / factor : (value - offset) * divisor;
}

function shifted(value: number, places: number): number {
  if (places === 0) return value;
  const text = String(value);
  return text.includes('e') ? value * 10 ** places : Number(`${text}e${places}`);
}

/** A factor, freed of the last-digit noise of combining two others. */
export function unitFactor(raw: number): UnitFactor {
  const whole = (x: number): number => (Math.abs(x - Math.round(x)) < 1e-9 * x ? Math.round(x) : x);
  const factor = whole(raw);
  const shift = Math.round(Math.log10(raw));
  if (Math.abs(raw / 10 ** shift - 1) < 1e-9) return { factor: 10 ** shift, offset: 0, shift };
  const divisor = whole(1 / raw);
  return Number.isInteger(divisor) && divisor > 1 ? { factor: 1 / divisor, offset: 0, divisor } : { factor, offset: 0 };
}

export interface DimensionSpec {
  /** With its article, for messages: 'a mass'. */
  readonly label: string;
  /** The unit used inside. */
  readonly inside: string;
  /** May lie below zero. */
  readonly signed: boolean;
  /** Accepts a number without a unit. */
  readonly bare: boolean;
  readonly units: ReadonlyMap<string, UnitFactor>;
  /** What a screen offers, by system; the first is the default. */
  readonly metric: readonly string[];
  readonly us: readonly string[];
}

const pound = 0.45359237;
const ounce = pound / 16;
const foot = 0.3048;
const inch = foot / 12;
const gallon = 231 * inch ** 3;
const newtonPerPound = pound * 9.80665;

const masses = { kg: 1, g: 1e-3, mg: 1e-6, µg: 1e-9, t: 1000, lb: pound, oz: ounce };
const lengths = { m: 1, km: 1000, cm: 0.01, mm: 1e-3, µm: 1e-6, in: inch, ft: foot, yd: 3 * foot, mil: inch / 1000 };
const areas = { 'm²': 1, 'cm²': 1e-4, 'mm²': 1e-6, 'in²': inch ** 2, 'ft²': foot ** 2 };
const volumes = {
  'm³': 1,
  L: 1e-3,
  mL: 1e-6,
  cL: 1e-5,
  'cm³': 1e-6,
  'dm³': 1e-3,
  'in³': inch ** 3,
  'ft³': foot ** 3,
  'fl oz': gallon / 128,
  gal: gallon,
};
const times = { s: 1, min: 60, h: 3600, d: 86_400, wk: 604_800, ms: 1e-3 };
/** Months of a best-before date are counted in days by the plant; a month is no fixed time. */
const counted = [
  '',
  'bars',
  'packs',
  'cases',
  'pallets',
  'layers',
  'lanes',
  'pieces',
  'beans',
  'cuts',
  'reels',
  'loads',
  'trays',
  'kernels',
];
const rated = { '/s': 60, '/min': 1, '/h': 1 / 60 };

type Plain = Readonly<Record<string, number>>;
const combine = (over: Plain, under: Plain, inside: number, join = '/'): Plain => {
  const made: Record<string, number> = {};
  for (const [a, x] of Object.entries(over)) for (const [b, y] of Object.entries(under)) made[`${a}${join}${b}`] = x / y / inside;
  return made;
};

function dimension(
  label: string,
  inside: string,
  units: Plain,
  metric: string[],
  us: string[],
  options: { signed?: boolean; bare?: boolean } = {},
): DimensionSpec {
  const all = new Map(Object.entries(units).map(([name, factor]) => [name, unitFactor(factor)]));
  return { label, inside, units: all, metric, us, signed: options.signed ?? false, bare: options.bare ?? false };
}

const fahrenheit = 5 / 9;
const temperature: DimensionSpec = {
  label: 'a temperature',
  inside: '°C',
  signed: true,
  bare: false,
  metric: ['°C', 'K'],
  us: ['°F'],
  units: new Map([
    ['°C', { factor: 1, offset: 0 }],
    ['°F', { factor: fahrenheit, offset: -32 * fahrenheit }],
    ['K', { factor: 1, offset: -273.15 }],
  ]),
};

const countRates: Plain = Object.assign({}, ...counted.map((word) => combine({ [word]: 1 }, { s: 1 / 60, min: 1, h: 60 }, 1)), {
  '1/min': 1,
  '1/h': rated['/h'],
  '1/s': rated['/s'],
  rpm: 1,
}) as Plain;

const tables = {
  mass: dimension('a mass', 'kg', masses, ['g', 'kg', 't', 'mg'], ['oz', 'lb']),
  length: dimension('a length', 'm', lengths, ['mm', 'cm', 'm', 'µm'], ['in', 'ft']),
  area: dimension('an area', 'm²', areas, ['cm²', 'm²', 'mm²'], ['in²', 'ft²']),
  volume: dimension('a volume', 'm³', volumes, ['L', 'mL', 'm³', 'cm³'], ['fl oz', 'gal', 'ft³']),
  time: dimension('a time', 's', times, ['min', 's', 'h', 'd'], ['min', 's', 'h', 'd']),
  temperature,
  'temperature difference': dimension(
    'a temperature difference',
    'K',
    { K: 1, '°C': 1, '°F': fahrenheit, 'Δ°C': 1, 'Δ°F': fahrenheit },
    ['K'],
    ['Δ°F'],
    { signed: true },
  ),
  'temperature rate': dimension(
    'a temperature rate',
    'K/s',
    combine({ K: 1, '°C': 1, '°F': fahrenheit }, { s: 1, min: 60, h: 3600 }, 1),
    ['°C/min', 'K/min'],
    ['°F/min'],
    { signed: true },
  ),
  pressure: dimension(
    'a pressure',
    'Pa',
    {
      Pa: 1,
      kPa: 1e3,
      MPa: 1e6,
      hPa: 100,
      mbar: 100,
      bar: 1e5,
      atm: 101_325,
      psi: newtonPerPound / inch ** 2,
      mmHg: 133.322,
      inHg: 3386.39,
    },
    ['mbar', 'bar', 'kPa', 'Pa', 'hPa'],
    ['psi', 'inHg'],
  ),
  density: dimension(
    'a density',
    'kg/m³',
    { ...combine({ kg: 1, g: 1e-3, lb: pound, oz: ounce, t: 1000 }, volumes, 1) },
    ['g/cm³', 'kg/m³'],
    ['lb/ft³', 'lb/gal'],
  ),
  'mass rate': dimension('a mass rate', 'kg/h', combine(masses, times, 1 / 3600), ['kg/h', 'kg/min', 't/h', 'g/s'], ['lb/h', 'lb/min']),
  'count rate': dimension(
    'a count rate',
    '1/min',
    countRates,
    ['bars/min', 'packs/min', 'cases/min'],
    ['bars/min', 'packs/min', 'cases/min'],
  ),
  speed: dimension('a speed', 'm/s', combine(lengths, times, 1), ['m/min', 'm/s', 'mm/s'], ['ft/min', 'ft/s']),
  'mass per area': dimension('a mass per area', 'kg/m²', combine(masses, areas, 1), ['g/m²', 'kg/m²'], ['oz/ft²', 'lb/ft²']),
  viscosity: dimension('a viscosity', 'Pa·s', { 'Pa·s': 1, 'kPa·s': 1e3, 'mPa·s': 1e-3, cP: 1e-3, P: 0.1 }, ['Pa·s', 'mPa·s'], ['cP', 'P']),
  fraction: dimension(
    'a share',
    '1',
    {
      '%': 0.01,
      '‰': 1e-3,
      ppm: 1e-6,
      ppb: 1e-9,
      'g/kg': 1e-3,
      'mg/kg': 1e-6,
      'µg/kg': 1e-9,
      'g/100 g': 0.01,
      'mg/100 g': 1e-5,
      '% RH': 0.01,
    },
    ['%', 'ppm', 'mg/kg'],
    ['%', 'ppm'],
  ),
  plain: dimension('a plain number', '1', { '': 1, 'log₁₀': 1, DE: 1, pH: 1 }, [''], [''], { signed: true, bare: true }),
  count: dimension('a count', '1', Object.fromEntries(counted.map((word) => [word, 1])), [''], [''], { bare: true }),
  'count per mass': dimension(
    'a count per mass',
    '1/kg',
    { '/100 g': 10, '/kg': 1, '/g': 1000, '/oz': 1 / ounce, '/lb': 1 / pound },
    ['/100 g', '/kg'],
    ['/oz'],
  ),
  'vapour transmission': dimension(
    'a vapour transmission',
    'kg/m²/s',
    { 'g/m²/d': 1e-3 / 86_400, 'kg/m²/s': 1, 'g/100 in²/d': 1e-3 / 86_400 / (100 * inch ** 2) },
    ['g/m²/d'],
    ['g/100 in²/d'],
  ),
  'molar mass': dimension('a molar mass', 'g/mol', { 'g/mol': 1, 'kg/mol': 1000 }, ['g/mol'], ['g/mol']),
  'peroxide value': dimension('a peroxide value', 'meq/kg', { 'meq/kg': 1, 'meq O₂/kg': 1 }, ['meq/kg'], ['meq/kg']),
  'force per length': dimension(
    'a force per length',
    'N/m',
    { 'N/m': 1, 'kN/m': 1000, 'N/15 mm': 1000 / 15, 'N/mm': 1000, 'lbf/in': newtonPerPound / inch },
    ['N/15 mm', 'kN/m'],
    ['lbf/in'],
  ),
  force: dimension('a force', 'N', { N: 1, kN: 1000, lbf: newtonPerPound }, ['N'], ['lbf']),
  'heat transfer': dimension('a heat transfer coefficient', 'W/m²/K', { 'W/m²/K': 1 }, ['W/m²/K'], ['W/m²/K']),
  power: dimension('a power', 'W', { W: 1, kW: 1000, MW: 1e6 }, ['kW', 'W'], ['kW', 'W']),
  energy: dimension('an energy', 'J', { J: 1, kJ: 1000, MJ: 1e6, kWh: 3.6e6, MWh: 3.6e9 }, ['kWh', 'MJ'], ['kWh']),
  money: dimension('a sum of money', 'money', {}, [], []),
  'money per mass': dimension('a price per mass', 'money/kg', {}, [], []),
} as const satisfies Record<string, DimensionSpec>;

export type Dimension = keyof typeof tables;
export const dimensions: Readonly<Record<Dimension, DimensionSpec>> = tables;
export const dimensionNames = Object.keys(tables) as readonly Dimension[];

/** Things that a price may be quoted for: 'EUR/case'. */
export const priceThings: ReadonlySet<string> = new Set(['case', 'pack', 'bar', 'pallet', 'reel', 'piece', 'each', '1000']);

/** Other spellings of a unit. The table has one spelling of each. */
// prettier-ignore
const otherSpellings = {
  l: 'L', ml: 'mL', cl: 'cL', liter: 'L', liters: 'L', litre: 'L', litres: 'L', cc: 'cm³',
  kilogram: 'kg', kilograms: 'kg', kgs: 'kg', gram: 'g', grams: 'g', tonne: 't', tonnes: 't', lbs: 'lb', pound: 'lb', pounds: 'lb', ounce: 'oz', ounces: 'oz', mcg: 'µg', ug: 'µg',
  metre: 'm', metres: 'm', meter: 'm', meters: 'm', um: 'µm', micron: 'µm', microns: 'µm', inch: 'in', inches: 'in', '"': 'in', foot: 'ft', feet: 'ft', "'": 'ft', yard: 'yd', yards: 'yd',
  second: 's', seconds: 's', sec: 's', minute: 'min', minutes: 'min', mins: 'min', hour: 'h', hours: 'h', hr: 'h', hrs: 'h', day: 'd', days: 'd', week: 'wk', weeks: 'wk',
  C: '°C', degC: '°C', F: '°F', degF: '°F', 'deg C': '°C', 'deg F': '°F', '℃': '°C', '℉': '°F', kelvin: 'K',
  percent: '%', 'per cent': '%', pct: '%', floz: 'fl oz', 'fl. oz': 'fl oz', 'fl.oz': 'fl oz', gallon: 'gal', gallons: 'gal',
  bar: 'bars', pack: 'packs', case: 'cases', pallet: 'pallets', layer: 'layers', lane: 'lanes', piece: 'pieces', pcs: 'pieces', cut: 'cuts', reel: 'reels', load: 'loads', tray: 'trays',
  log10: 'log₁₀', cps: 'cP', '%RH': '% RH', 'bar abs': 'bar', 'mbar abs': 'mbar', 'kPa abs': 'kPa', psia: 'psi',
  'meq O²/kg': 'meq/kg', gsm: 'g/m²', fpm: 'ft/min', 'feet/min': 'ft/min', 'W/(m²·K)': 'W/m²/K', 'g/(m²·d)': 'g/m²/d', 'kg/(m²·s)': 'kg/m²/s',
};
const spellings: ReadonlyMap<string, string> = new Map(Object.entries(otherSpellings));

/** One spelling: superscripts, the micro sign, the middle dot; no space around '/' and '·'. */
export function tidyUnit(written: string): string {
  if (known.has(written)) return written;
  return written
    .trim()
    .replace(/[\s\u00a0\u2009\u202f]+/g, ' ')
    .replace(/ ?([/·]) ?/g, '$1')
    .replace(/\u03bc/g, 'µ')
    .replace(/º/g, '°')
    .replace(/° /g, '°')
    .replace(/(?<=[a-zA-Z])\^?2(?![0-9])/g, '²')
    .replace(/(?<=[a-zA-Z])\^?3(?![0-9])/g, '³')
    .replace(/^(m?Pa)[.* ]?s$/, '$1·s');
}

/** Units as the table spells them need no tidying. */
const known: ReadonlySet<string> = new Set(dimensionNames.flatMap((name) => [...dimensions[name].units.keys()]));

/** The factor of a unit in a dimension, by its own or another spelling. */
export function factorOf(of: Dimension, written: string): { readonly name: string; readonly factor: UnitFactor } | undefined {
  const { units } = dimensions[of];
  const direct = units.get(written);
  if (direct) return { name: written, factor: direct };
  const whole = spellings.get(written);
  if (whole !== undefined && units.has(whole)) return { name: whole, factor: units.get(whole)! };
  if (!written.includes('/')) return undefined;
  const parts = written.split('/').map((part) => spellings.get(part) ?? part);
  const name = parts.join('/');
  const factor = units.get(name);
  return factor && { name, factor };
}

/** Every way to write a unit of the dimension, with its name in the table: to guess what was meant. */
export function spellingsOf(of: Dimension): ReadonlyMap<string, string> {
  const { units } = dimensions[of];
  const names = [...units.keys()].map((name) => [name, name] as const);
  return new Map([...names, ...[...spellings].filter(([, name]) => units.has(name))]);
}

/** Dimensions that know the unit; more than one for 'K' and '°C'. */
export function dimensionsOf(written: string): readonly Dimension[] {
  return dimensionNames.filter((name) => factorOf(name, written) !== undefined);
}
