declare const unit: unique symbol;
/** A number that remembers its unit in the compiler only; at run time it is just a number. */
export type Unit<Name extends string> = number & { readonly [unit]?: Name };
export type Celsius = Unit<'celsius'>;
/** Difference of two temperatures. */
export type Kelvin = Unit<'kelvin difference'>;
/** Absolute pressure, never gauge. */
export type Pascal = Unit<'pascal'>;
/** Share of total mass, 0 to 1. */
export type MassFraction = Unit<'mass fraction'>;
/** Share of amount of substance, 0 to 1. */
export type MoleFraction = Unit<'mole fraction'>;
/** Share of volume, 0 to 1. */
export type VolumeFraction = Unit<'volume fraction'>;
/** Vapour pressure over the mixture by that of pure water at the same temperature, 0 to 1. */
export type WaterActivity = Unit<'water activity'>;
export type Kilogram = Unit<'kilogram'>;
export type KilogramPerHour = Unit<'kilogram per hour'>;
export type KilogramPerCubicMetre = Unit<'kilogram per cubic metre'>;
export type GramPerMole = Unit<'gram per mole'>;
export type Metre = Unit<'metre'>;
export type MetrePerSecond = Unit<'metre per second'>;
export type SquareMetrePerSecond = Unit<'square metre per second'>;
export type Second = Unit<'second'>;
export type PascalSecond = Unit<'pascal second'>;
export type JoulePerKilogramKelvin = Unit<'joule per kilogram kelvin'>;
export type JoulePerKilogram = Unit<'joule per kilogram'>;
export type WattPerMetreKelvin = Unit<'watt per metre kelvin'>;
export type Watt = Unit<'watt'>;
