import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  convert,
  dimensionNames,
  dimensions,
  displayUnit,
  formatNumber,
  fromInside,
  parseQuantity,
  showQuantity,
  toInside,
  UnitError,
  unitsOf,
  type Dimension,
} from '../src/index.js';

const read = (text: string | number, dimension: Dimension | 'any', context = {}) => {
  const parsed = parseQuantity(text, dimension, context);
  if (!parsed.ok) throw new Error(`${parsed.fault.code}: ${parsed.fault.message}`);
  return parsed.measure;
};
const fault = (text: string | number, dimension: Dimension | 'any', context = {}) => {
  const parsed = parseQuantity(text, dimension, context);
  if (parsed.ok) throw new Error(`'${text}' was read as ${parsed.measure.value}`);
  return parsed.fault;
};

describe('parseQuantity', () => {
  it.each([
    ['118 °C', 'temperature', 118],
    ['244 °F', 'temperature', 117.77777777777777],
    ['391.15 K', 'temperature', 118],
    ['-0.4 K', 'temperature difference', -0.4],
    ['3 °F', 'temperature difference', 5 / 3],
    ['0.6 g/m²/d', 'vapour transmission', 0.6e-3 / 86_400],
    ['0.85 EUR/kg', 'money per mass', 0.85],
    ['0.39 EUR/lb', 'money per mass', 0.39 / 0.45359237],
    ['1,050 bars/min', 'count rate', 1050],
    ['1 050 bars/min', 'count rate', 1050],
    ['1\u2009050 bars/min', 'count rate', 1050],
    ['1,234,567.5 kg', 'mass', 1_234_567.5],
    ['12 oz', 'mass', 0.3401942775],
    ['1.9 fl oz', 'volume', 1.9 * 29.5735295625e-6],
    ['400 mbar', 'pressure', 40_000],
    ['350 lb/h', 'mass rate', 158.7573295],
    ['3 ft/min', 'speed', 0.01524],
    ['57 lb/ft³', 'density', 913.0524123157],
    ['0.92 g/cm3', 'density', 920],
    ['48.8 g', 'mass', 0.0488],
    ['1/4 in', 'length', 0.00635],
    ['1 3/8 in', 'length', 0.034925],
    ['38 Pa.s', 'viscosity', 38],
    ['860,160 bars', 'count', 860_160],
    ['98 /100 g', 'count per mass', 980],
    ['26 cases/min', 'count rate', 26],
    ['0.19 EUR/case', 'money', 0.19],
    ['2.5e-3 kg', 'mass', 0.0025],
    ['−45 min', 'time', -2700],
    ['48', 'count', 48],
    [48, 'plain', 48],
  ] as const)('reads %s as %s', (text, dimension, value) => {
    expect(read(text, dimension).value).toBeCloseTo(value, 12 - Math.ceil(Math.log10(Math.abs(value) + 1)));
  });

  it.each([
    ['9.5 % ± 0.4 %', 'fraction', 0.095, 0.091, 0.099, 'plus-minus'],
    ['9.5 ± 0.4 %', 'fraction', 0.095, 0.091, 0.099, 'plus-minus'],
    ['9.5 % +/- 0.4', 'fraction', 0.095, 0.091, 0.099, 'plus-minus'],
    ['244 °F ± 3 °F', 'temperature', 117.7778, 116.1111, 119.4444, 'plus-minus'],
    ['118 °C ± 0.9 °F', 'temperature', 118, 117.5, 118.5, 'plus-minus'],
    ['48.8 g ± 5 %', 'mass', 0.0488, 0.04636, 0.05124, 'plus-minus'],
    ['≤ 0.05', 'plain', 0.05, undefined, 0.05, 'at most'],
    ['at most 35 °C', 'temperature', 35, undefined, 35, 'at most'],
    ['≥ 16 min', 'time', 960, 960, undefined, 'at least'],
    ['5.5 % to 7.0 %', 'fraction', 0.0625, 0.055, 0.07, 'range'],
    ['5.5 to 7.0 %', 'fraction', 0.0625, 0.055, 0.07, 'range'],
    ['124 °C to 142 °C', 'temperature', 133, 124, 142, 'range'],
    ['124–142 °C', 'temperature', 133, 124, 142, 'range'],
  ] as const)('reads the window of %s', (text, dimension, value, low, high, form) => {
    const measure = read(text, dimension);
    expect(measure.form).toBe(form);
    expect(measure.value).toBeCloseTo(value, 4);
    if (low === undefined) expect(measure.low).toBeUndefined();
    else expect(measure.low).toBeCloseTo(low, 4);
    if (high === undefined) expect(measure.high).toBeUndefined();
    else expect(measure.high).toBeCloseTo(high, 4);
  });

  it('takes the mass of a package from the caller', () => {
    expect(read('210 EUR/drum', 'money per mass', { packages: { drum: 300 } }).value).toBe(0.7);
    expect(read('210 EUR/drum', 'money per mass')).toMatchObject({ value: 210, per: 'drum' });
  });

  it("says which dimension a unit has when it may be any: 'K' is a difference, '°C' a temperature", () => {
    expect(read('2 K', 'any').dimension).toBe('temperature difference');
    expect(read('30 °C', 'any').dimension).toBe('temperature');
    expect(read('2 Δ°F', 'any')).toMatchObject({ dimension: 'temperature difference', value: 10 / 9 });
    expect(read('5.0 ± 1.0', 'any').dimension).toBe('plain');
    expect(read('420 packs/min', 'any').dimension).toBe('count rate');
    expect(read('0.17 EUR', 'any').dimension).toBe('money');
  });

  it.each([
    ['48,7 g', 'mass', 'DECIMAL_COMMA', 'write 48.7'],
    ['0,125 kg', 'mass', 'DECIMAL_COMMA', 'write 0.125'],
    ['1,05 bars/min', 'count rate', 'DECIMAL_COMMA', 'write 1.05'],
    ['12,34,567 g', 'mass', 'DECIMAL_COMMA', 'groups of three'],
    ['48 °C', 'mass', 'WRONG_DIMENSION', ''],
    ['48 gramms', 'mass', 'UNKNOWN_UNIT', "'g"],
    ['3 m/mn', 'speed', 'UNKNOWN_UNIT', 'm/min'],
    ['48', 'mass', 'UNIT_MISSING', '48 g'],
    ['1e400 g', 'mass', 'NOT_FINITE', ''],
    ['9e15 g', 'mass', 'NOT_FINITE', ''],
    ['NaN', 'plain', 'NOT_FINITE', ''],
    [Infinity, 'plain', 'NOT_FINITE', ''],
    ['', 'mass', 'NOT_A_NUMBER', ''],
    ['warm', 'temperature', 'NOT_A_NUMBER', ''],
    ['1.2.3 g', 'mass', 'NOT_A_NUMBER', ''],
    ['7 % to 5 %', 'fraction', 'LOW_ABOVE_HIGH', ''],
    ['5 g ± -1 g', 'mass', 'IMPOSSIBLE', ''],
    ['118 °C ± 5 %', 'temperature', 'WRONG_DIMENSION', ''],
    ['0.85 EUR', 'money per mass', 'WRONG_DIMENSION', ''],
    ['0.85 €/kg', 'money per mass', 'UNKNOWN_CURRENCY', 'EUR'],
    ['0.85 EUX/kg', 'money per mass', 'UNKNOWN_CURRENCY', 'EUR'],
    ['5 kg', 'money', 'WRONG_DIMENSION', ''],
    [`${'9'.repeat(300)} g`, 'mass', 'NOT_A_NUMBER', ''],
  ] as const)('refuses %s as %s with %s', (text, dimension, code, advice) => {
    const said = fault(text, dimension);
    expect(said.code).toBe(code);
    expect(said.advice ?? '').toContain(advice);
  });

  it('names both dimensions, and both currencies', () => {
    expect(fault('48 °C', 'mass').message).toBe("A mass expected, got a temperature ('°C')");
    const money = fault('0.39 USD/lb', 'money per mass', { currency: 'EUR' });
    expect(money.code).toBe('WRONG_CURRENCY');
    expect(money.message).toMatch(/USD.*EUR/);
  });

  it('never throws, whatever the text', () => {
    fc.assert(
      fc.property(
        fc.oneof(fc.string({ maxLength: 40 }), fc.stringMatching(/^[0-9., ±to≤≥°%/a-z-]{0,30}$/)),
        fc.constantFrom(...dimensionNames, 'any' as const),
        (text, dimension) => {
          const parsed = parseQuantity(text, dimension);
          if (parsed.ok) expect(Number.isFinite(parsed.measure.value)).toBe(true);
          else expect(parsed.fault.message.length).toBeGreaterThan(0);
        },
      ),
      { numRuns: 3000 },
    );
  });
});

describe('convert', () => {
  // NIST SP 811 appendix B (from memory): the pound, the inch and the US fluid ounce are exact.
  it.each([
    [1, 'lb', 'g', 453.59237],
    [1, 'in', 'mm', 25.4],
    [1, 'fl oz', 'mL', 29.5735295625],
    [1, 'psi', 'kPa', 6.894757293],
    [1, 'lb/ft³', 'kg/m³', 16.01846337],
    [32, '°F', '°C', 0],
    [212, '°F', '°C', 100],
    [100, '°C', 'K', 373.15],
    [1, 'atm', 'mbar', 1013.25],
    [1, 'mmHg', 'Pa', 133.322],
    [1, 'ft/min', 'm/s', 0.00508],
    [1, 'oz', 'g', 28.349523125],
  ] as const)('%d %s in %s', (value, from, to, expected) => {
    expect(convert(value, from, to)).toBeCloseTo(expected, 7);
  });

  it('turns a difference without its offset when told so', () => {
    expect(convert(9, '°F', '°C', 'temperature difference')).toBeCloseTo(5, 12);
  });

  it('comes back to the value in every unit of every dimension', () => {
    for (const dimension of dimensionNames) {
      for (const unit of dimensions[dimension].units.keys()) {
        expect(fromInside(toInside(12.34, dimension, unit), dimension, unit)).toBeCloseTo(12.34, 9);
      }
    }
  });

  it('is exact where decimals can be: 48.8 g, 14.2 g, 9.5 %', () => {
    expect([toInside(48.8, 'mass', 'g'), toInside(14.2, 'mass', 'g'), toInside(9.5, 'fraction', '%')]).toEqual([0.0488, 0.0142, 0.095]);
  });

  it.each([
    ['g', '°C'],
    ['kg', 'parsec'],
    ['', 'm'],
  ])('refuses %s to %s', (from, to) => {
    expect(() => convert(1, from, to)).toThrow(UnitError);
  });
});

describe('formatNumber', () => {
  it.each([
    [1234567.891, 2, '1\u2009234\u2009567.89'],
    [-12345.6, 1, '−12\u2009345.6'],
    [999, 0, '999'],
    [-0.0001, 2, '0.00'],
    [0, 1, '0.0'],
    [NaN, 2, '–'],
    [Infinity, 2, '–'],
  ])('%d with %d decimals', (value, decimals, expected) => expect(formatNumber(value, decimals)).toBe(expected));

  it('reads back as what it was', () => {
    fc.assert(
      fc.property(fc.double({ min: -1e9, max: 1e9, noNaN: true }), (value) => {
        expect(read(formatNumber(value, 3), 'plain').value).toBeCloseTo(value, 2);
      }),
    );
  });
});

describe('display', () => {
  it('offers units of both systems, and picks by size', () => {
    expect(unitsOf('mass')).toEqual(expect.arrayContaining(['g', 'kg', 'oz', 'lb']));
    expect(displayUnit('mass', 'metric', 0.048)).toBe('g');
    expect(displayUnit('mass', 'metric', 460)).toBe('kg');
    expect(displayUnit('mass', 'US', 0.048)).toBe('oz');
    expect(displayUnit('mass', 'US', 460)).toBe('lb');
    expect(displayUnit('temperature', 'US')).toBe('°F');
    expect(displayUnit('length', 'US', 0.1)).toBe('in');
    expect(displayUnit('length', 'US', 24)).toBe('ft');
    expect(displayUnit('volume', 'US', 5e-5)).toBe('fl oz');
    expect(showQuantity(1947, 'mass rate', 'kg/h', 0)).toBe('1\u2009947\u00a0kg/h');
    expect(showQuantity(118, 'temperature', '°F')).toBe('244.4\u00a0°F');
  });

  it('knows every unit that it offers', () => {
    for (const dimension of dimensionNames)
      for (const unit of unitsOf(dimension)) expect(() => fromInside(1, dimension, unit)).not.toThrow();
  });
});
