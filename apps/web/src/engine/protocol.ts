import type { Origin } from '@barwright/chain';
import type { BandSpec, Material, SectionSpec } from '@barwright/drawing';
import type { AlongAnswer } from './along-protocol.js';
import type { TrialAnswers, TrialAsks } from './trial-protocol.js';

/** Which units a person reads. */
export type Units = 'metric' | 'us';

/** A window in the unit shown. */
export interface ShownWindow {
  readonly low?: number;
  readonly high?: number;
  readonly aim?: number;
  readonly reason?: string;
  readonly source?: string;
}

/** What a quantity is, in the words and the unit in which it is shown. */
export interface Meta {
  readonly id: string;
  readonly meaning: string;
  readonly unit: string;
  readonly decimals: number;
  readonly window?: ShownWindow;
  /** Nothing computes it: the plant entered it, or it was taken by default. */
  readonly root: boolean;
  /** The root that moves when this number is pulled; its own id for a root that may be pulled. */
  readonly bend?: string;
  /** A composition or profile, not one number. */
  readonly vector?: true;
}

/** A part of the bar, as the section lists them: the coat first, then the layers from the top. */
export interface PartInfo {
  /** Prefix of its ids: 'coat', 'layer.nougat'. */
  readonly id: string;
  readonly slug: string;
  readonly name: string;
  /** Slug of its component. */
  readonly component: string;
  /** Slug of the layer it has sunk into. */
  readonly within?: string;
}

/** A step in water activity between two layers that touch. */
export interface StepInfo {
  readonly id: string;
  readonly above: string;
  readonly below: string;
}

export interface Ingredient {
  readonly id: string;
  readonly name: string;
  readonly material: Material;
  /** Id of its price, where one is known. */
  readonly price?: string;
}

/** A component as the bench shows it. */
export interface ComponentInfo {
  readonly slug: string;
  readonly name: string;
  readonly material: Material;
  readonly ingredients: readonly Ingredient[];
  /** Cooked, and what ends it. */
  readonly cook?: { readonly knob: string; readonly shown: string };
  readonly moisture?: string;
  /** Water driven off, stage by stage. */
  readonly evaporated: readonly string[];
  /** Requirements of its name in law. */
  readonly law: readonly string[];
}

/** The hours of the order as planned, minutes of the day of its start. */
export interface PlanTimes {
  readonly date?: string;
  readonly startUp: number;
  readonly firstSlab: number;
  readonly end: number;
}

/** What does not change while a version is open. */
export interface Catalog {
  readonly plant: string;
  readonly bar: { readonly name: string; readonly slug: string; readonly format: string };
  readonly bars: readonly { readonly name: string; readonly slug: string }[];
  readonly line?: string;
  readonly currency: string;
  readonly version: number;
  readonly metas: readonly Meta[];
  readonly sections: readonly { readonly title: string; readonly ids: readonly string[] }[];
  readonly parts: readonly PartInfo[];
  readonly steps: readonly StepInfo[];
  readonly components: readonly ComponentInfo[];
  readonly cautions: readonly { readonly station: string; readonly texts: readonly string[] }[];
}

/** A number that stands elsewhere than its truth, because somebody pulled it. */
export interface Bent {
  readonly id: string;
  readonly meaning: string;
  readonly truth: string;
  readonly now: string;
  /** What the address keeps: the value in metric units. */
  readonly metric: number;
}

/** One thing a change does, in plain words. */
export interface Consequence {
  readonly id: string;
  readonly meaning: string;
  readonly truth: string;
  readonly now: string;
  readonly rises: boolean;
  readonly breaks?: string;
  readonly mends?: true;
}

export interface Sentence {
  readonly mark?: 'act' | 'seen';
  readonly title: string;
  readonly sub: string;
  /** The quantity the sentence is about. */
  readonly about?: string;
  /** Each finding as a sentence of its own, worst first. */
  readonly all: readonly { readonly text: string; readonly level: 'act' | 'seen' | 'note'; readonly about?: string }[];
}

/** Everything that may change when a number is pulled. */
export interface Frame {
  /** Places in the catalog whose value changed, with the value in the unit shown (NaN: none) and its origin. */
  readonly at: readonly number[];
  readonly values: readonly number[];
  /** What they are when nothing is pulled. */
  readonly truths: readonly number[];
  readonly origins: readonly Origin[];
  /** Why a value is missing, by place. */
  readonly reasons: Readonly<Record<number, string>>;
  /** The bar cut open at 1 px per mm; nothing where it cannot be drawn. */
  readonly picture: SectionSpec | undefined;
  readonly bent: readonly Bent[];
  readonly consequences: readonly Consequence[];
  readonly sentence: Sentence;
  readonly plan: PlanTimes | undefined;
  /** A hand still holds what it pulls. */
  readonly pulling: boolean;
  readonly canUndo: boolean;
  readonly canRedo: boolean;
}

/** A source with its title, and how well it is known. */
export interface SourceLine {
  readonly key: string;
  readonly title: string;
}

export interface InputLine {
  readonly id: string;
  readonly meaning: string;
  readonly text: string;
  readonly origin: Origin;
}

/** Where one number comes from, and what it bears on. */
export interface Inspection {
  readonly id: string;
  /** 'computed', 'entered by the plant', … with the uncertainty. */
  readonly standing: string;
  readonly title?: string;
  readonly equation?: string;
  /** The same with numbers, where that can be written in one line. */
  readonly numbers?: string;
  /** What its step says of it: outside its range, a contradiction, a limit. */
  readonly said: readonly { readonly text: string; readonly act: boolean }[];
  readonly inputs: readonly InputLine[];
  readonly uses: readonly InputLine[];
  readonly sources: readonly SourceLine[];
  readonly standingOfSource?: string;
  readonly place?: string;
  readonly note?: string;
  readonly reason?: string;
  /** Half-width of the 95 % interval the model states, in the unit shown. */
  readonly uncertainty?: number;
  /** Roots it depends on, the most influential first. */
  readonly knobs: readonly KnobLine[];
  /** The elements of a composition. */
  readonly elements?: readonly { readonly label: string; readonly value: number }[];
}

/** A root one may turn to move a number. */
export interface KnobLine {
  readonly id: string;
  readonly meaning: string;
  readonly unit: string;
  readonly decimals: number;
  readonly low: number;
  readonly high: number;
  readonly value: number;
  /** Change of the number over the whole range of the knob, in the number's unit. */
  readonly effect: number;
}

export interface CurveData {
  readonly knob: string;
  readonly x: readonly number[];
  readonly y: readonly number[];
  readonly lo: readonly number[];
  readonly hi: readonly number[];
  /** From where on the model is outside what it was fitted to. */
  readonly fitted?: readonly [number, number];
}

export interface RemedyLine {
  readonly kind: 'set' | 'nothing' | 'unreachable' | 'cannot-tell';
  readonly title: string;
  readonly detail: string;
  /** What to set to try it, in the units shown. */
  readonly set?: Readonly<Record<string, number>>;
}

/** A limit on the way of a knob, in the knob's unit. */
export interface PostLine {
  readonly at: number;
  readonly text: string;
}

/** A value as it would be written into a file of the definition. */
export interface FileEdit {
  readonly file: string;
  readonly path: readonly (string | number)[];
  readonly value: string;
  readonly was: string;
  readonly meaning: string;
}
export interface Edits {
  readonly edits: readonly FileEdit[];
  /** What has no place in the files, in a sentence each. */
  readonly left: readonly string[];
}

export interface DifferenceLine {
  readonly id: string;
  readonly meaning: string;
  readonly before: string;
  readonly after: string;
  /** Signed share of the value before; absent where there is none. */
  readonly relative?: number;
  readonly kind: 'changed' | 'lost' | 'gained' | 'entered';
}
export interface VersionComparison {
  readonly differences: readonly DifferenceLine[];
  readonly onlyBefore: number;
  readonly onlyAfter: number;
}

/** What the band shows: kilograms, money, water or bars along the transit. */
export type BandMeasure = 'kg' | 'money' | 'bars' | 'water';
export interface BandPicture {
  readonly spec: BandSpec;
  /** Quantity behind each thing drawn, by its id in the drawing. */
  readonly opens: Readonly<Record<string, string>>;
  readonly scaleWords: string;
  readonly rows: readonly { readonly what: string; readonly id: string; readonly value: string; readonly room?: string }[];
}

/** What the page asks of the engine. */
export interface Asks extends TrialAsks {
  open: {
    readonly wire: unknown;
    readonly bar: string | undefined;
    readonly version: number;
    readonly units: Units;
    readonly changes: Readonly<Record<string, number>>;
  };
  units: { readonly units: Units };
  set: { readonly values: Readonly<Record<string, number>>; readonly end: boolean };
  undo: Record<string, never>;
  redo: Record<string, never>;
  truth: Record<string, never>;
  inspect: { readonly id: string };
  curve: { readonly id: string; readonly knob: string };
  remedies: { readonly id: string; readonly value: number; readonly knobs: readonly string[] };
  posts: { readonly knob: string; readonly low: number; readonly high: number };
  edits: Record<string, never>;
  compare: { readonly wire: unknown };
  band: { readonly measure: BandMeasure; readonly width: number; readonly height: number };
  along: Record<string, never>;
}

/** And what it answers. */
export interface Answers extends TrialAnswers {
  open: { readonly catalog: Catalog; readonly frame: Frame };
  units: { readonly catalog: Catalog; readonly frame: Frame };
  set: Frame;
  undo: Frame;
  redo: Frame;
  truth: Frame;
  inspect: Inspection;
  curve: CurveData | undefined;
  remedies: readonly RemedyLine[];
  posts: readonly PostLine[];
  edits: Edits;
  compare: VersionComparison;
  band: BandPicture | undefined;
  along: AlongAnswer;
}

export type Verb = keyof Asks;
export interface Request<V extends Verb = Verb> {
  readonly seq: number;
  readonly verb: V;
  readonly ask: Asks[V];
}
export type Reply =
  | { readonly seq: number; readonly answer: Answers[Verb] }
  | { readonly seq: number; readonly refused: { readonly code: string; readonly message: string } };
