import type { Ink } from './mark.js';

/** Inks as colours. The screen uses custom properties instead, so that one picture follows day and night by itself. */
export type Theme = 'day' | 'night' | 'print' | 'variables';

const day: Record<Ink, string> = {
  ink: '#172026',
  'ink-2': '#465157',
  'ink-3': '#59646A',
  rule: '#7C8788',
  hair: '#C3CAC7',
  draw: '#172026',
  coat: '#DDE1DB',
  shade: '#E4E8E2',
  'shade-2': '#EEF1EC',
  paper: '#F8F9F6',
  act: '#B4380E',
  'act-wash': '#FBE7DC',
  held: '#583CA3',
  'held-wash': '#E9E4F6',
};
const night: Record<Ink, string> = {
  ink: '#E8EAE3',
  'ink-2': '#B7BFBF',
  'ink-3': '#94A0A2',
  rule: '#748083',
  hair: '#36424A',
  draw: '#94A1A4',
  coat: '#10161A',
  shade: '#263038',
  'shade-2': '#1A2228',
  paper: '#10161A',
  act: '#FF935F',
  'act-wash': '#3A2116',
  held: '#B9A6FF',
  'held-wash': '#272046',
};
/** Ink only: hues become black, since the wedge and the straps carry the meaning; the coat tone is dropped. */
const print: Record<Ink, string> = {
  ink: '#000000',
  'ink-2': '#222222',
  'ink-3': '#444444',
  rule: '#666666',
  hair: '#AAAAAA',
  draw: '#000000',
  coat: '#FFFFFF',
  shade: '#EEEEEE',
  'shade-2': '#F6F6F6',
  paper: '#FFFFFF',
  act: '#000000',
  'act-wash': '#FFFFFF',
  held: '#000000',
  'held-wash': '#FFFFFF',
};
const palettes = { day, night, print } as const;

/** Colour of an ink: a hexadecimal colour, or with 'variables' a reference such as `var(--ink-2)`. */
export function colour(ink: Ink, theme: Theme): string {
  return theme === 'variables' ? `var(--${ink})` : palettes[theme][ink];
}

/** Family lists of the two voices; `variables` follows the sheet's own tokens. */
export function family(font: 'num' | 'say', theme: Theme): string {
  if (theme === 'variables') return `var(--font-${font})`;
  return font === 'num' ? "'Ysabeau Office', system-ui, sans-serif" : 'Piazzolla, Georgia, serif';
}
