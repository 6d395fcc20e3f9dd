import { circle, curve, type Point } from '@barwright/drawing';
import { flowTable, type FlowTable, flowLawNames, flowParameterNames } from '@barwright/line';
import {
  cassonStress,
  fitCasson,
  fitHerschelBulkley,
  fitWindhab,
  flowReport,
  stressOf,
  type FlowFit,
  type FlowPoint,
  type FlowReport,
} from '@barwright/science';
import type { FigureTable, Plate, Said } from '../trial-protocol.js';
import { fileWords, type HeldFile } from './files.js';
import { n, saying, type Words } from './words.js';

export interface FlowCurve {
  readonly file: HeldFile;
  readonly table: FlowTable;
  readonly casson: { readonly yieldValue: number; readonly plasticViscosity: number };
  /** Casson first. */
  readonly fits: readonly FlowFit[];
  readonly report?: FlowReport;
}

let kept: FlowCurve | undefined;

/** The table of a viscometer, with the fit of every law that the number of points allows. Kept while the file stays. */
export function curveOf(file: HeldFile): FlowCurve {
  if (kept?.file === file) return kept;
  const table = flowTable(file.cells, file.name);
  const { up, down } = table;
  const spans = (points: readonly FlowPoint[]) =>
    points.length > 1 && Math.min(...points.map(({ rate }) => rate)) <= 5 && Math.max(...points.map(({ rate }) => rate)) >= 40;
  const first = fitCasson(up);
  if (first.law.law !== 'casson') throw new Error('A Casson fit is a Casson law');
  const { yieldValue, plasticViscosity } = first.law;
  kept = {
    file,
    table,
    casson: { yieldValue, plasticViscosity },
    fits: [first, ...(up.length > 4 ? [fitWindhab(up)] : []), ...(up.length > 3 ? [fitHerschelBulkley(up)] : [])],
    ...(spans(up) ? { report: flowReport(up, spans(down) ? down : []) } : {}),
  };
  return kept;
}

/** Stress against shear rate: readings as dots (up) and rings (down), Casson as the line with what its parameters may be off by. */
export function curvePlate(_words: Words, { table: { up, down }, fits, file }: FlowCurve, width: number): Plate {
  const all = [...up, ...down];
  const most = Math.max(...all.map(({ rate }) => rate)) * 1.05;
  const [first] = fits;
  const limits = first!.parameters;
  const [tau, eta] = [limits['yield_value_pa']!, limits['plastic_viscosity_pa_s']!];
  const xs = Array.from({ length: 60 }, (_, k) => (most * (k + 0.2)) / 60);
  const points = xs.map((rate): Point => [rate, stressOf(first!.law, rate)]);
  const least = (x: number) => Math.max(0, x);
  const band = xs.map((x) => ({ x, lo: cassonStress(least(tau.low), least(eta.low), x), hi: cassonStress(tau.high, eta.high, x) }));
  const top = Math.max(...all.map(({ stress }) => stress), ...points.map(([, y]) => y)) * 1.08;
  const drawn = curve({
    width: Math.min(width, 860),
    height: 340,
    x: [0, most],
    y: [0, top],
    points,
    band: band.map(({ x, lo, hi }) => ({ x, lo: Math.min(top, lo), hi: Math.min(top, hi) })),
    fitted: [Math.min(...up.map(({ rate }) => rate)), Math.max(...up.map(({ rate }) => rate))],
    xLabel: 'shear rate, 1/s',
    yLabel: 'stress, Pa',
    yTicks: [0, 0.25, 0.5, 0.75].map((share) => +(share * top).toPrecision(2)),
  });
  const dot = ({ rate, stress }: FlowPoint, isUp: boolean) =>
    circle(
      drawn.atX(rate),
      drawn.atY(stress),
      3.6,
      isUp ? { fill: 'ink', stroke: 'paper', width: 1.2 } : { fill: 'paper', stroke: 'ink', width: 1.3 },
    );
  return {
    name: `Flow curve of ${file.name} with its Casson fit`,
    marks: [...drawn.marks, ...up.map((point) => dot(point, true)), ...down.map((point) => dot(point, false))],
    width: drawn.width,
    height: drawn.height,
    caption: `Dots: ramp up${down.length > 0 ? '; rings: ramp down' : ''}. Line: Casson, dashed beyond the rates measured. Slanted: its parameters at the ends of their 95 % limits, both at once.`,
  };
}

export function curveTables(_words: Words, { fits, report, file }: FlowCurve): readonly FigureTable[] {
  return [
    {
      caption: `Laws fitted to ${fileWords(file)}`,
      head: ['value', '95 % limits', 'residual', 'R²'],
      rows: fits.flatMap(({ law, parameters, residual, r2 }) =>
        Object.entries(parameters).map(([key, value], i) => {
          const [title, unit, digits] = flowParameterNames[key] ?? [key.replaceAll('_', ' '), '', 3];
          return {
            name: `${flowLawNames[law.law]}: ${title}`,
            cells: [
              { text: `${n(value.value, digits)}${unit ? `\u202f${unit}` : ''}` },
              { text: `${n(value.low, digits)} to ${n(value.high, digits)}` },
              { text: i === 0 ? `${n(residual, 2)} Pa` : '' },
              { text: i === 0 ? n(r2, 4) : '' },
            ],
          };
        }),
      ),
    },
    ...(report
      ? [
          {
            caption: 'Interpolated report (ICA 46, 2000)',
            head: ['value'],
            rows: [
              { name: 'stress at 5 1/s', cells: [{ text: `${n(report.stressAt5, 1)} Pa` }] },
              { name: 'viscosity at 40 1/s', cells: [{ text: `${n(report.viscosityAt40, 2)} Pa·s` }] },
              ...(report.thixotropyAt5 === undefined
                ? []
                : [{ name: 'stress up less stress down at 5 1/s', cells: [{ text: `${n(report.thixotropyAt5, 1)} Pa` }] }]),
            ],
          },
        ]
      : []),
  ];
}

export function curveSaid({ table, report }: FlowCurve): readonly Said[] {
  return saying('How the table was read', [
    ...table.said,
    ...(report ? [] : ['The rates do not reach from 5 to 40 1/s: the interpolated report of ICA 46 cannot be given.']),
    'Limits are 95 % of the fit alone. Laboratories differ by more: compare readings of one instrument only.',
  ]);
}
