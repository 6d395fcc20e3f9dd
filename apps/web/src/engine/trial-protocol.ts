import type { Mark } from '@barwright/drawing';
import type { TableKind } from '@barwright/line';

/** The questions that the trials answer: the line, the kettle and the slab, then chocolate as it meets a bar. */
export const trialParts = [
  'speed',
  'cooks',
  'batch',
  'window',
  'syrup',
  'pressure',
  'blend',
  'cooker',
  'foam',
  'slab',
  'lots',
  'roasts',
  'flow',
  'names',
  'temper',
  'coat',
  'tunnel',
] as const;
export type TrialPart = (typeof trialParts)[number];

/** A drawing as marks, with the words that tell it. */
export interface Plate {
  readonly name: string;
  readonly marks: readonly Mark[];
  readonly width: number;
  readonly height: number;
  readonly caption?: string;
}

/** One number or word of a table. */
export interface Cell {
  readonly text: string;
  /** Quantity that a press opens. */
  readonly id?: string;
  readonly act?: boolean;
  /** The window it stands on. */
  readonly sill?: { readonly marks: readonly Mark[]; readonly width: number; readonly height: number };
}

export interface FigureTable {
  readonly caption: string;
  readonly head: readonly string[];
  readonly rows: readonly { readonly name: string; readonly id?: string; readonly cells: readonly Cell[] }[];
  /** Columns of words stand left; the last of them takes what is left of the width. */
  readonly words?: readonly number[];
}

/** Sentences under one heading. */
export interface Said {
  readonly title: string;
  readonly lines: readonly { readonly text: string; readonly act?: boolean }[];
  /** Cautions: work can hurt, and somebody qualified decides. */
  readonly caution?: true;
}

/** What a person may ask otherwise. */
export type Field =
  | {
      readonly kind: 'number';
      readonly key: string;
      readonly label: string;
      readonly unit: string;
      readonly value: string;
      readonly given: boolean;
    }
  | {
      readonly kind: 'choice';
      readonly key: string;
      readonly label: string;
      readonly value: string;
      readonly choices: readonly { readonly value: string; readonly text: string }[];
    };

/** One question answered: a sentence, drawings, numbers, reasons, cautions. */
export interface TrialSheet {
  readonly part: TrialPart;
  readonly mark?: 'act' | 'seen';
  readonly title: string;
  readonly sub: string;
  readonly fields: readonly Field[];
  /** Roots of the chain that may be turned here. */
  readonly knobs: readonly string[];
  readonly plates: readonly Plate[];
  readonly tables: readonly FigureTable[];
  readonly said: readonly Said[];
}

/** The sentence of a question, for the list of all. */
export type TrialLine = Pick<TrialSheet, 'part' | 'mark' | 'title' | 'sub'> & { readonly refused?: true };

export type AskedFor = Readonly<Record<string, string>>;

/** A file that the engine has read. */
export interface TakenFile {
  readonly name: string;
  readonly kind: TableKind;
  readonly part?: TrialPart;
  readonly rows: number;
  /** Day whose folder it lies in; left out: brought by hand. */
  readonly day?: string;
  /** The component that its name tells, where it is a log of one. */
  readonly component?: string;
}

export interface TrialAsks {
  /** A file that was brought, or that lies in the folder of a day. */
  file: { readonly name: string; readonly bytes: ArrayBuffer; readonly day?: string };
  trial: { readonly part: TrialPart; readonly asked: AskedFor; readonly width: number };
  trials: Record<string, never>;
}
export interface TrialAnswers {
  file: TakenFile;
  trial: TrialSheet;
  trials: readonly TrialLine[];
}
