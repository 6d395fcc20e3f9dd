import { band, knob, section, sideView, sill, waterSteps, type Drawing, type SillSpec, type Theme } from '../src/index.js';
import * as bars from './bars.js';
import { charts } from './charts.js';
import { classicLine, swatches, waferLine } from './lines.js';

export interface Plate {
  readonly name: string;
  readonly size: readonly [number, number];
  readonly themes?: readonly Theme[];
  readonly draw: () => readonly (readonly [string, Drawing])[];
}

const sills: readonly (readonly [string, Omit<SillSpec, 'width'>])[] = [
  ['measured', { standing: 'measured', window: { lo: 9.1, hi: 9.9 }, aim: 9.5, value: 9.45, figure: { text: '9.45', unit: '%' } }],
  ['computed', { standing: 'computed', window: { lo: 0.5, hi: 0.56 }, aim: 0.54, value: 0.542, figure: { text: '0.542' } }],
  ['assumed', { standing: 'assumed', window: { lo: 0.3, hi: 0.4 }, value: 0.35, figure: { text: '0.35' } }],
  ['default', { standing: 'default', window: { lo: 1.2, hi: 1.5 }, value: 1.32, figure: { text: '1.32', unit: 'g/cm³' } }],
  [
    'drifting',
    { standing: 'measured', window: { lo: 17, hi: 19.5 }, aim: 18.2, value: 18.5, drifting: true, figure: { text: '18.5', unit: '°C' } },
  ],
  ['outside', { standing: 'measured', window: { lo: 9.1, hi: 9.9 }, aim: 9.5, value: 10.36, figure: { text: '10.36', unit: '%' } }],
  ['below', { standing: 'measured', window: { lo: 30, hi: 48 }, aim: 38, value: 25, figure: { text: '25', unit: 'Pa·s' } }],
  ['missing', { standing: 'missing', window: { lo: 9.1, hi: 9.9 }, figure: { text: '9.99', unit: '%' } }],
  ['replaced', { standing: 'measured', value: 10.62, figure: { text: '10.62', unit: '%', replaced: true } }],
  ['one-sided', { standing: 'computed', window: { hi: 0.05 }, aim: 0.036, value: 0.038, figure: { text: '0.038' } }],
  ['one-sided, below', { standing: 'measured', window: { lo: 48 }, aim: 48.8, value: 48.6, figure: { text: '48.6', unit: 'g' } }],
  ['bent', { standing: 'computed', window: { lo: 9.1, hi: 9.9 }, aim: 9.5, value: 9.8, bent: 9.5, figure: { text: '9.5', unit: '%' } }],
];
const water = (caramel: number) => ({
  width: 260,
  height: 420,
  scale: [0.24, 0.66] as const,
  ticks: [0.3, 0.4, 0.5, 0.6],
  levels: [
    { id: 'coat', y0: 0, y1: 46, level: 0.35, standing: 'assumed' as const, text: '0.35' },
    { id: 'peanut', y0: 48, y1: 134, level: 0.3, standing: 'default' as const, text: '0.30' },
    { id: 'caramel', y0: 134, y1: 218, level: caramel, standing: 'computed' as const, text: String(caramel) },
    { id: 'nougat', y0: 218, y1: 396, level: 0.504, standing: 'measured' as const, text: '0.504' },
  ],
  steps: [{ from: 'caramel', to: 'nougat', limit: 0.05, text: `step ${(caramel - 0.504).toFixed(3)}`, limitText: 'limit 0.05' }],
});

export const plates: readonly Plate[] = [
  {
    name: 'section',
    size: [1440, 1000],
    draw: () => [
      ['Heavy top, computed', section(bars.heavyTop)],
      ['Lopsided coat, measured; held caramel', section(bars.lopsided)],
      ['Twice life size', section({ ...bars.classic, scale: 7.56 })],
      ['Long side', sideView({ ...bars.classic, scale: 6 }, 102.8, 1.41)],
    ],
  },
  {
    name: 'section-kinds',
    size: [1440, 1200],
    draw: () => [
      ['Caramel below, almonds, jelly; dark coat', section(bars.caramelBelow)],
      ['Filled wafer, open underside, white coat', section(bars.waferBar)],
      ['Light nougat', section(bars.nougatOnly)],
      ['Biscuit, caramel, chocolate cap', section(bars.biscuitBar)],
      ['Crisp base, marshmallow', section(bars.marshmallow)],
      ['Naked fruit and nut slab', section(bars.naked)],
    ],
  },
  {
    name: 'sill',
    size: [1440, 900],
    draw: () =>
      sills.flatMap(([caption, spec]) => [
        [caption, sill({ ...spec, width: 84 })] as const,
        ['46', sill({ ...spec, width: 46, ...(spec.figure === undefined ? {} : { figure: { ...spec.figure, size: 17 } }) })] as const,
      ]),
  },
  {
    name: 'knob',
    size: [1100, 700],
    draw: () => [
      [
        'Sheet of one number',
        sill({ width: 250, standing: 'computed', window: { hi: 0.05 }, aim: 0.036, value: 0.061, figure: { text: '0.061' } }),
      ],
      [
        'Printed',
        sill({
          width: 160,
          standing: 'measured',
          window: { lo: 117.2, hi: 118.2 },
          aim: 117.7,
          print: true,
          ends: { lo: '117.2', hi: '118.2' },
        }),
      ],
      ['Printed, one end', sill({ width: 160, standing: 'measured', window: { lo: 135 }, aim: 135, print: true, ends: { lo: '135' } })],
      [
        'Pulled',
        knob({
          width: 300,
          min: 116,
          max: 121,
          value: 119.1,
          truth: 117.7,
          window: { lo: 117.2, hi: 118.2 },
          posts: [{ at: 120.6, text: 'browning, assumed', assumed: true }],
          text: '119.1 °C',
        }),
      ],
      ['At rest', knob({ width: 300, min: 60, max: 96, value: 78, window: { lo: 73.5, hi: 82.5 }, text: '78 °C' })],
      ['At a post', knob({ width: 300, min: 0, max: 7, value: 5, truth: 0, posts: [{ at: 5, text: 'cap 5 %' }], text: '5 %' })],
      ['Locked', knob({ width: 300, min: 0, max: 7, value: 2, posts: [{ at: 5, text: 'cap 5 %' }], text: '2 %', locked: true })],
      ['Tablet', knob({ width: 420, min: 60, max: 96, value: 80, truth: 78, window: { lo: 73.5, hi: 82.5 }, text: '80 °C', tablet: true })],
      ['Water steps', waterSteps(water(0.542))],
      ['Water steps, over', waterSteps(water(0.565))],
    ],
  },
  {
    name: 'band',
    size: [1440, 1300],
    draw: () => [
      ['The line at 13:50', band(classicLine)],
      ['A wafer line', band(waferLine)],
    ],
  },
  { name: 'materials', size: [1160, 330], draw: () => [['Materials', swatches()]] },
  { name: 'charts', size: [1440, 2300], draw: charts },
];
