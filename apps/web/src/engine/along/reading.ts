import type { AlongLine, SlabStretch, Stretch, TunnelStretch } from '../along-protocol.js';

/** A line between its minutes, straight; at the ends what stands there. */
export function readAt(minutes: readonly number[], values: readonly number[], at: number): number {
  let i = 0;
  while (i < minutes.length - 2 && minutes[i + 1]! <= at) i += 1;
  const [a, b] = [minutes[i]!, minutes[i + 1] ?? minutes[i]!];
  const share = b > a ? Math.min(1, Math.max(0, (at - a) / (b - a))) : 0;
  return values[i]! + share * ((values[i + 1] ?? values[i]!) - values[i]!);
}

/** '33.4 °C', with a true minus and a thin space that does not break. */
export function lineWords({ values, unit, decimals }: AlongLine, minutes: readonly number[], at: number): string {
  const value = readAt(minutes, values, at);
  const digits = value
    .toFixed(decimals)
    .replace(/^-(?=0(\.0*)?$)/, '')
    .replace('-', '\u2212');
  return `${digits}\u202f${unit}`;
}

const stateWords = {
  ready: 'slits well',
  'too warm': 'too warm: sticks and strings at a knife',
  'too cold': 'too cold: cracks at a knife',
  'cannot tell': 'cannot tell whether it slits',
} as const;

/** What the knives could do with it at a minute: as at the last minute that is known. */
export function stateAt({ minutes, states }: Pick<SlabStretch, 'minutes' | 'states'>, at: number): string {
  const row = minutes.findLastIndex((minute) => minute <= at + 1e-9);
  return stateWords[states[Math.max(0, row)]!];
}

/** Whole minutes of a stretch, and its end. */
export function wholeMinutes({ minutes }: Pick<Stretch, 'minutes'>): readonly number[] {
  const end = minutes.at(-1)!;
  const step = end > 13 ? Math.ceil(end / 13) : 1;
  const whole = Array.from({ length: Math.floor((end - 0.05) / step) + 1 }, (_, k) => k * step);
  return [...whole, end];
}

/** 'top 33.4 °C, middle 48.2 °C, …; too warm: sticks and strings at a knife', at a minute in the station. */
export function readingWords(stretch: SlabStretch | TunnelStretch, at: number): string {
  const numbers = stretch.lines.map((line) => `${line.name} ${lineWords(line, stretch.minutes, at)}`).join(', ');
  return stretch.kind === 'slab' ? `${numbers}; ${stateAt(stretch, at)}` : numbers;
}

/** Minutes of a stretch are those of belt and length; the ribbon may have another transit, where the plant entered one. */
export function minuteIn({ minutes, from, to }: Stretch, ribbonMinute: number): number {
  return to > from ? ((ribbonMinute - from) / (to - from)) * minutes.at(-1)! : 0;
}

/** The same the other way. */
export function onRibbon({ minutes, from, to }: Stretch, minute: number): number {
  return from + (minute / minutes.at(-1)!) * (to - from);
}

export function isIn({ from, to }: Stretch, ribbonMinute: number): boolean {
  return ribbonMinute >= from - 1e-9 && ribbonMinute <= to + 1e-9;
}
