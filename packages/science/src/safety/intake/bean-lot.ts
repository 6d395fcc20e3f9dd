import { BadInput, requireRange } from '../../errors.js';
import { ghanaBeans, iso2451of2014, iso2451of2016 } from '../data/cocoa-beans.js';
import { linearAt } from '../interpolate.js';

/** Beans per 100 g from the mean mass of a bean in g. */
export function beanCount(beanMass: number): number {
  requireRange('bean_mass_g', beanMass, [0.05, 10], 'a cocoa bean');
  return 100 / beanMass;
}

/** Size class of the 2014 edition by beans per 100 g. */
export function beanClass(count: number): 'large' | 'medium' | 'small' {
  requireRange('beans_per_100_g', count, [10, 2000], 'iso-2451-2014');
  const whole = Math.round(count);
  if (whole <= iso2451of2014.values.largeUpTo) return 'large';
  return whole <= iso2451of2014.values.mediumUpTo ? 'medium' : 'small';
}

export interface MassTest {
  readonly moisture: number;
  readonly relatedMatter: number;
  readonly flatBeans: number;
  readonly sieving: number;
}
export type MassLimit = { readonly [K in keyof MassTest]?: number };

/** Limits by mass of one edition at one point of the trade. The 2014 extract gives moisture only. */
export function massLimits(edition: '2014' | '2016', point: 'loading' | 'discharge'): MassLimit {
  if (edition === '2014') return { moisture: iso2451of2014.values.moisture };
  const { moistureLoading, moistureDischarge, relatedMatter, flatBeans, sieving } = iso2451of2016.values;
  return { moisture: point === 'loading' ? moistureLoading : moistureDischarge, relatedMatter, flatBeans, sieving };
}

/** Names of the limits that a lot breaks; what was not measured (NaN) or has no limit is left out. */
export function brokenMassLimits(test: MassTest, limits: MassLimit): readonly (keyof MassTest)[] {
  return (Object.keys(limits) as (keyof MassTest)[]).filter((key) => test[key] > limits[key]! + 1e-12);
}

export interface BeanProperties {
  /** mm */ readonly length: number;
  /** mm */ readonly width: number;
  /** mm */ readonly thickness: number;
  /** Cube root of the three, mm. */ readonly geometricDiameter: number;
  /** Geometric diameter over length, as printed. */ readonly sphericity: number;
  /** Surface of the sphere of equal volume over that of the ellipsoid: what a drag law asks for. */ readonly surfaceSphericity: number;
  /** g */ readonly beanMass: number;
  /** Share of the bean. */ readonly shell: number;
  /** kg/m³ */ readonly density: number;
  /** kg/m³ */ readonly bulkDensity: number;
  readonly porosity: number;
}

/** Size, mass and density of category B beans at a moisture (wet basis, tested 5 to 24 %). */
export function beanProperties(moisture: number): BeanProperties {
  requireRange('moisture', moisture, [0, 0.6], ghanaBeans.source);
  const v = ghanaBeans.values;
  const size = (ys: readonly number[]) => linearAt(v.sizeMoisture, ys, moisture);
  const mass = (ys: readonly number[]) => linearAt(v.massMoisture, ys, moisture);
  const [length, width, thickness] = [size(v.length), size(v.width), size(v.thickness)];
  return {
    length,
    width,
    thickness,
    geometricDiameter: Math.cbrt(length * width * thickness),
    sphericity: mass(v.sphericity),
    surfaceSphericity: ellipsoidSphericity(length, width, thickness),
    beanMass: mass(v.thousandBeans) / 1000,
    shell: mass(v.shell),
    density: mass(v.density),
    bulkDensity: mass(v.bulkDensity),
    porosity: mass(v.porosity),
  };
}

/**
 * Mass-weighted mean of a property over lots that are blended: cadmium, free fatty acids, fat, moisture.
 *
 * @throws BadInput for lists of different length or no mass at all
 */
export function blendMean(masses: readonly number[], values: readonly number[]): number {
  if (masses.length !== values.length) throw new BadInput(`The blend has ${masses.length} masses but ${values.length} values`);
  const total = masses.reduce((sum, mass) => sum + mass, 0);
  if (!(total > 0) || masses.some((mass) => !(mass >= 0)))
    throw new BadInput('The masses of a blend must be 0 or more, at least one above 0');
  return masses.reduce((sum, mass, i) => sum + mass * values[i]!, 0) / total;
}

/**
 * Surface of the sphere of equal volume over the surface of an ellipsoid, by Thomsen's approximation (within 1.1 %).
 * Not the ratio of geometric mean diameter to length, which trade tables call sphericity too.
 */
export function ellipsoidSphericity(length: number, width: number, thickness: number): number {
  const p = 1.6075;
  const [a, b, c] = [length, width, thickness];
  const mean = (((a * b) ** p + (a * c) ** p + (b * c) ** p) / 3) ** (1 / p);
  return Math.cbrt(a * b * c) ** 2 / mean;
}
