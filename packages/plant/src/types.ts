import type { Composition } from '@barwright/science';
import type { Dimension } from './units/table.js';
import type { Form } from './units/quantity.js';

/** Where a word stands in the definition files: 'bars/kestrowan.yaml:12'. */
export type Place = string;

/**
 * A number as the plant wrote it, turned into the one unit used inside (see `units.ts`):
 * kg, m, m², m³, s, °C, K, Pa, kg/m³, kg/h, 1/min, m/s, kg/m², Pa·s, money/kg, fractions 0 to 1.
 */
export interface Entered {
  readonly value: number;
  /** As written: '9.5 % ± 0.4 %'. */
  readonly text: string;
  /** Unit as written, for showing it back: '%', '°C', 'oz'. */
  readonly unit: string;
  /** From '±' or 'low'/'high'/'≤'/'≥', in the inside unit. */
  readonly low?: number;
  readonly high?: number;
  readonly source?: string;
  readonly standing?: string;
  readonly note?: string;
  readonly place: Place;
  /** What it measures: 'mass', 'temperature difference' … */
  readonly dimension?: Dimension;
  /** How it was written. 'at most' and 'at least' give no aim: `value` is the limit itself; of a range it is the middle. */
  readonly form?: Form;
  /** Keys from the root of its file, for editing it; the file is the part of `place` before the colon. */
  readonly path?: readonly (string | number)[];
}

/** How the starch of a glucose syrup was broken down. */
export type Conversion = 'acid' | 'acid_enzyme' | 'high_maltose';

/** Written with a quote or a plain word. */
export interface Word {
  readonly text: string;
  readonly place: Place;
}

export interface Material {
  /** Key in the files, unique among materials and components. */
  readonly name: string;
  /** Lower case, letters, digits and underscores: used in quantity ids. */
  readonly slug: string;
  /** Name on the label; several materials may share one. */
  readonly label: string;
  /** Money per kg. Undefined where nobody entered one. */
  readonly price?: Entered;
  /** Sums to 1 ± 0.002 as entered, then normalised to 1. Scaled to `solids` where a recipe asks for another solids content. */
  readonly composition: Composition;
  readonly compositionSource?: string;
  readonly compositionStanding?: string;
  readonly density?: Entered;
  readonly allergens: readonly string[];
  /** A dextrose equivalent, where the material was written as a syrup. */
  readonly dextroseEquivalent?: Entered;
  /** A glucose syrup written by its solids and dextrose equivalent: `composition` follows from them. */
  readonly syrup?: { readonly solids: Entered; readonly dextroseEquivalent: Entered; readonly conversion?: Conversion };
  /** True where its sugar stays in crystals when it is added after the cook (seed, coarse sugar in chocolate). */
  readonly crystalline: boolean;
  /** Offered by a supplier, in no recipe yet: a candidate for a blend. */
  readonly quoted?: boolean;
  /** Lecithin, E476 …: counted apart in the fat of a chocolate. */
  readonly category?: string;
  readonly texture?: string;
  readonly place: Place;
}

/** One ingredient put in at one stage. */
export interface Addition {
  /** Name of a material or of another component. */
  readonly name: string;
  /** Share of the whole charge, 0 to 1 (a recipe in kg is divided by its sum). */
  readonly share: Entered;
  /** Solids of this syrup when it differs from the material's own. */
  readonly solids?: Entered;
}

/** What ends a cook; exactly one. Moisture is wet basis on total mass. */
export type CookEnd =
  | { readonly by: 'finished moisture'; readonly moisture: Entered }
  | { readonly by: 'moisture'; readonly moisture: Entered }
  | { readonly by: 'temperature'; readonly temperature: Entered };

/** Where the pressure above a cook comes from. */
export type CookPressure = { readonly by: 'atmosphere' } | { readonly by: 'absolute'; readonly pressure: Entered };

/** The machine behind a cook. What the plant does not say stays out. */
export interface Cooker {
  readonly kind: 'kettle' | 'film';
  /** m², W/m²/K, Pa absolute, W. */
  readonly surface?: Entered;
  readonly heatTransfer?: Entered;
  readonly steam?: Entered;
  readonly heatLoss?: Entered;
  readonly boilerEfficiency?: Entered;
  /** Standard deviations: of the true end temperature, K; of the level, share of it. */
  readonly temperatureSpread?: Entered;
  readonly levelSpread?: Entered;
  /** Mass in a film cooker while it runs, kg. */
  readonly holds?: Entered;
}

export interface Stage {
  readonly name: string;
  readonly slug: string;
  readonly does: 'mix' | 'cook' | 'whip' | 'blend' | 'cool' | 'roast' | 'sort' | 'refine' | 'hydrate' | 'temper';
  /** Names of earlier stages whose contents come in; the previous stage where nothing is written; empty for a fresh vessel. */
  readonly takes: readonly string[];
  readonly adds: readonly Addition[];
  readonly temperature?: Entered;
  readonly time?: Entered;
  readonly cook?: {
    readonly end: CookEnd;
    readonly pressure: CookPressure;
    /** What the probe shows less the truth, K. */
    readonly probeOffset?: Entered;
    /** The plant's own correction of the boiling model, K, default 0. */
    readonly modelOffset?: Entered;
    /** What the refractometer shows less what the model expects it to show, default 0. */
    readonly refractometerOffset?: Entered;
    /** Time held near the end temperature to brown, s. */
    readonly hold?: Entered;
    readonly cooker?: Cooker;
  };
  /** Gas by volume of the foam inside a whip, 0 to 1; the plant's own constant. */
  readonly holdUp?: Entered;
  /** Share of the gas that comes to the stage and is lost in it: fat, shear, sheeting. */
  readonly airLoss?: Entered;
  /** Roast: moisture it ends at; the water difference leaves. */
  readonly toMoisture?: Entered;
  /** Named losses after one another, each a share of what comes into it: cleaning 1.2 %, shell 12.8 % … */
  readonly losses: readonly { readonly name: string; readonly share: Entered }[];
  readonly pressure?: Entered;
  readonly place: Place;
}

/** Batches are limited by what is charged, by what comes out, or by the volume of the vessel. */
export type BatchSize =
  | { readonly by: 'finished'; readonly mass: Entered }
  | { readonly by: 'charge'; readonly mass: Entered }
  | { readonly by: 'vessel'; readonly volume: Entered };

export interface Component {
  readonly name: string;
  readonly slug: string;
  readonly label: string;
  /** How it is drawn: nougat, caramel, peanut, milk chocolate, wafer, bean … */
  readonly texture: string;
  readonly stages: readonly Stage[];
  readonly batch?: BatchSize;
  /** Money per kg made, on top of its ingredients. */
  readonly conversionCost?: Entered;
  /** Entered where the plant measures it; otherwise computed from composition. */
  readonly density?: Entered;
  readonly waterActivity?: Entered;
  /** The plant's own correction of the computed water activity, default 0. */
  readonly activityOffset?: Entered;
  /** One viscosity the plant measured, with the temperature and the moisture it belongs to. */
  readonly measuredViscosity?: { readonly viscosity: Entered; readonly temperature: Entered; readonly moisture: Entered };
  /** Entered where it cannot follow from the ingredients (nib out of beans); otherwise computed. */
  readonly composition?: { readonly value: Composition; readonly source?: string; readonly standing?: string; readonly place: Place };
  /** Windows and aims that the plant watches: viscosity at deposit, fineness, roast colour … by name. */
  readonly targets: readonly { readonly name: string; readonly slug: string; readonly value: Entered }[];
  /** The name in law that the label wants for it: 'milk chocolate'. */
  readonly legalName?: string;
  /** How long before use it must be started, s. */
  readonly lead?: Entered;
  /** Longest age at use, s. */
  readonly maxAge?: Entered;
  /** Cap for rework of the bar's own trim in it, share of the finished component. */
  readonly reworkCap?: Entered;
  readonly place: Place;
}

/** How much of a layer there is; exactly one. 'rest' is what is missing to the bar's target mass. */
export type LayerAmount =
  | { readonly by: 'mass'; readonly mass: Entered }
  | { readonly by: 'thickness'; readonly thickness: Entered }
  | { readonly by: 'mass per area'; readonly massPerArea: Entered }
  | { readonly by: 'rest' };

/** A loss is a share of what is made (gross = net / (1 − loss)) or of what ends on bars (gross = net · (1 + loss)). */
export interface Loss {
  readonly share: Entered;
  readonly of: 'made' | 'on bars';
}

export interface Layer {
  readonly name: string;
  readonly slug: string;
  readonly component: string;
  readonly amount: LayerAmount;
  /** Coefficient of variation of the dose or thickness. */
  readonly variation?: Entered;
  readonly loss?: Loss;
  /** Name of the layer into which pieces sink (nuts into caramel); they share its height. */
  readonly sunkInto?: string;
  /** Air left in the layer, share of its volume. */
  readonly voids?: Entered;
  /** Gas-free or baked sheet that is not formed on the line. */
  readonly place: Place;
}

export interface Coat {
  readonly component: string;
  readonly amount: LayerAmount;
  readonly covers: 'all round' | 'without underside';
  readonly variation?: Entered;
  readonly loss?: Loss;
  /** Share of the mean thickness that each face gets, where the plant knows it. */
  readonly minimum: { readonly top?: Entered; readonly side?: Entered; readonly bottom?: Entered };
  readonly place: Place;
}

export interface Pack {
  readonly barsPerPack: number;
  readonly film?: {
    readonly name: string;
    readonly web: Entered;
    readonly cutOff: Entered;
    readonly massPerArea: Entered;
    readonly price?: Entered;
    readonly loss?: Loss;
    readonly reelLength?: Entered;
    readonly waterVapourTransmission?: Entered;
    readonly window?: Entered;
  };
  readonly case?: {
    readonly packs: number;
    readonly tare?: Entered;
    /** Money per case, glue and tape apart. */
    readonly price?: Entered;
    readonly extras?: Entered;
    readonly size?: readonly [Entered, Entered, Entered];
  };
  readonly pallet?: { readonly casesPerLayer: number; readonly layers: number; readonly tare?: Entered };
  readonly code?: Word;
}

export interface Bar {
  readonly name: string;
  readonly slug: string;
  readonly format: string;
  readonly nominal: Entered;
  readonly target: Entered;
  readonly maximum?: Entered;
  readonly cutLength: Entered;
  readonly cutWidth: Entered;
  readonly cutLengthVariation?: Entered;
  readonly cutWidthVariation?: Entered;
  readonly layers: readonly Layer[];
  readonly coat?: Coat;
  /** Length, width, height of the finished bar as the plant measured it. */
  readonly size?: readonly [Entered, Entered, Entered];
  /** Largest permitted difference of water activity between layers that touch. */
  readonly waterActivityStep?: Entered;
  readonly bestBefore?: Entered;
  readonly pack: Pack;
  /** Name of the line that makes it. */
  readonly line?: string;
  readonly place: Place;
}

/** What a station's rate counts. */
export type Rate =
  | { readonly by: 'mass'; readonly rate: Entered }
  | { readonly by: 'bars'; readonly rate: Entered }
  | { readonly by: 'packs'; readonly rate: Entered }
  | { readonly by: 'cases'; readonly rate: Entered }
  | { readonly by: 'loads'; readonly load: Entered; readonly cycle: Entered };

export interface SetPoint {
  readonly name: string;
  readonly slug: string;
  readonly value: Entered;
  /** What to do when it is outside. */
  readonly reaction?: string;
}

export interface Station {
  readonly name: string;
  readonly slug: string;
  /** The component or material it works on; 'bar' for what has been laid up; nothing for tanks. */
  readonly works?: string;
  /** The stage of that component it does, where it does one of several: 'roast' of cocoa liquor. */
  readonly stage?: string;
  readonly rate?: Rate;
  /** Whether the rate counts what goes in or what comes out. */
  readonly counts: 'in' | 'out';
  /** Machines side by side. */
  readonly count: number;
  /** What other lines take of it, in the unit of its rate. */
  readonly usedElsewhere?: Entered;
  /** Mass a tank holds. */
  readonly holds?: Entered;
  /** Length of a belt inside it. */
  readonly length?: Entered;
  readonly width?: Entered;
  readonly meanTimeBetweenStops?: Entered;
  readonly meanTimeToRepair?: Entered;
  readonly setPoints: readonly SetPoint[];
  readonly cautions: readonly string[];
  readonly place: Place;
}

export interface Line {
  readonly name: string;
  readonly slug: string;
  readonly lanes: Entered;
  /** Width cut off at each of the two edges. */
  readonly edgeTrim: Entered;
  readonly slabSpeed: Entered;
  /** Gap between bars along the belt after spreading. */
  readonly gap: Entered;
  /** In order of flow, makers of components first. */
  readonly stations: readonly Station[];
  readonly accumulation?: Entered;
  /** Share of cut bars that do not reach a case. */
  readonly scrap?: Entered;
  /** Component that takes the edge trim back. */
  readonly trimGoesTo?: string;
  /** Transit times from the cutter: 'enrober' 60 s … negative for what lies before it. */
  readonly transit: readonly { readonly to: string; readonly slug: string; readonly time: Entered }[];
  readonly place: Place;
}

export interface Plan {
  readonly bar: string;
  readonly line: string;
  readonly date?: string;
  readonly start?: string;
  /** Bars ordered. */
  readonly order: Entered;
  /** Planned availability × performance × quality. */
  readonly plannedOee?: Entered;
  readonly lots: readonly {
    readonly material: string;
    readonly lot: string;
    readonly note?: string;
    /** Intake results by name: moisture, count … */
    readonly results?: readonly { readonly name: string; readonly slug: string; readonly value: Entered }[];
  }[];
  readonly place: Place;
}

export interface PlannedCheck {
  readonly at: string;
  readonly what: string;
  readonly slug: string;
  /** Quantity id in the chain whose value it checks, where there is one. */
  readonly quantity?: string;
  readonly limit?: Entered;
  /** Limits that are not a number: 'all rejected'. */
  readonly words?: string;
  readonly every: string;
  readonly by?: string;
  readonly reaction?: string;
  readonly hold?: string;
  /** 'critical' for a critical control point. */
  readonly kind: 'critical' | 'law' | 'house';
  readonly writeIn: 'number' | 'pass' | 'words';
  readonly place: Place;
}

export interface Shift {
  readonly name: string;
  /** 'HH:MM' local. */
  readonly from: string;
  readonly to: string;
}

export interface Plant {
  readonly name: string;
  readonly altitude: Entered;
  /** Station pressure of the day, absolute. */
  readonly barometer?: Entered;
  /** ISO 4217 code. */
  readonly currency: string;
  readonly timeZone: string;
  readonly market: string;
  readonly materials: ReadonlyMap<string, Material>;
  readonly components: ReadonlyMap<string, Component>;
  readonly bars: ReadonlyMap<string, Bar>;
  readonly lines: ReadonlyMap<string, Line>;
  readonly plans: readonly Plan[];
  readonly checks: readonly PlannedCheck[];
  readonly shifts: readonly Shift[];
  readonly startUp?: Entered;
  readonly shutDown?: Entered;
  /** Smallest division of the scale for charges up to `upTo` kg, ascending. */
  readonly scales: readonly { readonly upTo: number; readonly division: number }[];
  /** The plant's own validation documents of its kill steps, as written. */
  readonly validations: readonly Validation[];
  readonly changeover: readonly string[];
}

export interface Validation {
  readonly id: string;
  readonly step: string;
  readonly claim: string;
  readonly kind: string;
  readonly limits: readonly { readonly name: string; readonly slug: string; readonly value: Entered }[];
  readonly place: Place;
}

/** One clear complaint about a definition. */
export interface Problem {
  readonly code: string;
  readonly file: string;
  readonly line: number;
  readonly column?: number;
  /** What came. */
  readonly message: string;
  readonly expected?: string;
  /** What to do. */
  readonly advice?: string;
}

export type Loaded =
  | { readonly ok: true; readonly plant: Plant; readonly notes: readonly Problem[] }
  | { readonly ok: false; readonly problems: readonly Problem[] };
