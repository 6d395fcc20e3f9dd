import type { CookerAnswer } from './cooker.js';

type Bare = Omit<CookerAnswer, 'advice' | 'notes'>;

const percent = (x: number, digits = 2) => `${(100 * x).toFixed(digits)} %`;

/** What to do about a cooker; first whether it can. */
export function cookerAdvice({ component, kind, probe, spread }: Bare, number: (name: string) => number | undefined): readonly string[] {
  const lines: string[] = [];
  const kettles = number('kettles_needed');
  if (kettles !== undefined)
    lines.push(
      kettles > 1
        ? `One kettle cannot: rated speed keeps ${kettles.toFixed(1)} of them at the boil, filling and emptying apart.`
        : `One kettle boils ${percent(kettles, 0)} of the time at rated speed; what is left is for filling, emptying and cleaning.`,
    );
  const wall = number('wall_use');
  if (wall !== undefined)
    lines.push(
      wall > 1
        ? `The film cannot: rated speed asks ${percent(wall, 0)} of what its wall carries. More steam pressure, less feed or a drier feed.`
        : `The film uses ${percent(wall, 0)} of its wall at rated speed.`,
    );
  if (probe) {
    const { kelvin, moisture } = probe;
    const out = probe.changes.filter(({ broken, wasBroken }) => broken && !wasBroken);
    const end = `a probe that shows ${Math.abs(kelvin).toFixed(1)} K too ${kelvin < 0 ? 'little' : 'much'} makes ${percent(moisture.after)} water of ${percent(moisture.before)}`;
    lines.push(
      out.length > 0
        ? `Check the probe of ${component} against boiling water before each start: ${end}, outside ${out.map(({ meaning }) => meaning).join(', ')}.`
        : `Do nothing about a probe that is right within that: ${end}, and no window that was written breaks.`,
    );
  }
  if (spread) {
    const { batches, kelvin, moisture, seen } = spread;
    lines.push(
      `The end temperatures of ${batches} good cooks scatter by ${kelvin.toFixed(2)} K; that alone makes ${percent(moisture)} of moisture (standard deviation)${seen === undefined ? '' : seenWords(moisture, seen)}.`,
    );
  }
  if (kind === 'film')
    lines.push('A film that is steered by its end temperature evens its level out in part; the spread counts the two as independent.');
  return lines;
}

/** The laboratory's own error is in what it saw: only a scatter well below the computed one contradicts. */
function seenWords(moisture: number, seen: number): string {
  const words = `; the laboratory saw ${percent(seen)}`;
  if (seen < 0.6 * moisture) return `${words}, less: part of that scatter is the probe's, not the mass's`;
  if (seen > 1.5 * moisture) return `${words}, more: charge, sampling and analysis add theirs`;
  return `${words}, as much`;
}

export function cookerNotes({ usual }: Pick<Bare, 'usual'>): readonly string[] {
  return [
    'Heat balance: charge warmed to its boil, water boiled off along the rising boiling point; steam condenses and leaves boiling hot. Losses of the cooker count only where they were entered.',
    'Duty and steam are means at rated speed. A kettle draws most while it comes to the boil; size pipes and boiler by the people who are licensed to.',
    ...usual.map(
      ({ kind, range, source }) =>
        `${kind === 'kettle' ? 'Jacketed kettles, watery liquids' : 'Agitated films, thick to thin liquids'}: ${range[0]} to ${range[1]} W/m²/K overall (${source}, from memory). Nothing is computed from it; enter the plant's own, from the time of a good batch.`,
    ),
  ];
}

/** Cautions beside a cooker. */
export const cookerCautions: readonly string[] = [
  'Steam, pressure and mass above 110 °C burn deep. Relief valves stay free; samples and probe checks by trained people only.',
  'A cooker under pressure or vacuum is inspected by licensed people; the maker’s limits and local codes decide. Barwright advises and sets nothing.',
];
