import { curve, dayLine, evidenceStrip, lanes, scatter, shares, stack, windowMap, type Drawing, type WindowMapSpec } from '../src/index.js';

/** Invented numbers for looking at the charts. */
export const caramelStack = () =>
  stack({
    width: 460,
    height: 600,
    heads: { charged: '100 kg charged', left: 'what is left' },
    charged: [
      { id: 'syrup', label: 'glucose syrup 42 DE', material: 'syrup', amount: 36, text: '36.0' },
      { id: 'milk', label: 'condensed whole milk', material: 'milk', amount: 24, text: '24.0' },
      { id: 'sugar', label: 'sugar', material: 'sugar', amount: 18, text: '18.0' },
      { id: 'fat', label: 'vegetable fat', material: 'fat', amount: 10, text: '10.0' },
      { id: 'water', label: 'water', material: 'water', amount: 8, text: '8.0' },
      { id: 'butter', label: 'butter', material: 'fat', amount: 3, text: '3.0' },
      { id: 'salt', label: 'salt, lecithin', material: 'dry', amount: 0.7, text: '0.7' },
      { id: 'soda', label: 'soda', material: 'dry', amount: 0.3, text: '0.3' },
    ],
    gone: [{ id: 'boiled', label: 'boiled away', material: 'water', amount: 14.26, text: '14.26 kg' }],
    left: [{ id: 'caramel', label: 'caramel with', material: 'caramel', amount: 85.74, text: '85.74 kg', note: ['9.5 % water'] }],
    balance: { text: 'Balances to 0.00 kg', note: 'Caramel, version 14, as run today' },
  });

export const unbalanced = () =>
  stack({
    width: 420,
    height: 420,
    heads: { charged: '100 kg issued', left: 'accounted' },
    charged: [
      { id: 'choc', label: 'milk chocolate', material: 'milk-chocolate', amount: 55, text: '55.0' },
      { id: 'nuts', label: 'peanuts', material: 'nut', amount: 45, text: '45.0' },
    ],
    left: [{ id: 'bars', label: 'in bars', material: 'nougat', amount: 91, text: '91.0 kg' }],
    balance: { text: '9.0 kg not accounted for' },
  });

const line: [number, number][] = Array.from({ length: 41 }, (_, k) => {
  const x = 8.8 + (k / 40) * 2.2;
  return [x, 0.05 + (x - 9.92) * 0.0288];
});
export const stepCurve = () =>
  curve({
    width: 470,
    height: 170,
    x: [8.8, 11],
    y: [0, 0.1],
    points: line,
    band: line.map(([x, y]) => ({ x, lo: y - 0.02, hi: y + 0.02 })),
    fitted: [9.4, 10.4],
    limits: { hi: 0.05, hiText: 'limit 0.05' },
    now: [10.29, 0.0607],
    wanted: [9.92, 0.05],
    knob: 10.29,
    xLabel: '% water in caramel',
    xTicks: [9, 9.5, 10, 10.5],
  });
export const thicknessCurve = () =>
  curve({
    width: 420,
    height: 220,
    x: [8.8, 10.6],
    y: [10, 60],
    points: Array.from({ length: 30 }, (_, k) => [8.8 + (k / 29) * 1.8, 38 * Math.exp(-0.9 * (8.8 + (k / 29) * 1.8 - 9.5))] as const),
    fitted: [9.4, 10.4],
    limits: { lo: 30, hi: 48, loText: '30', hiText: '48' },
    now: [9.5, 38],
    xLabel: '% water in caramel',
    yLabel: 'Pa·s at deposit',
    yTicks: [20, 40, 60],
  });

export const mapSpec: WindowMapSpec = {
  width: 470,
  height: 360,
  xs: Array.from({ length: 33 }, (_, k) => 114 + k * 0.25),
  ys: Array.from({ length: 25 }, (_, k) => 68 + k),
  borders: [],
  now: [117.7, 78],
  xLabel: 'cook to, °C',
  yLabel: 'deposit at, °C',
};
const field = (of: (x: number, y: number) => number): number[][] => mapSpec.ys.map((y) => mapSpec.xs.map((x) => of(x, y)));
export const windowSpec: WindowMapSpec = {
  ...mapSpec,
  borders: [
    { id: 'aw', text: 'water step over 0.05', margin: field((x) => x - 116.4) },
    { id: 'brown', text: 'browning', margin: field((x, y) => 120.6 - x - (y - 78) * 0.02) },
    { id: 'thick', text: 'too thick to level', margin: field((x, y) => y - 72 - (x - 117) * 1.6) },
    { id: 'slump', text: 'slumps at the slitter', margin: field((x, y) => 84 + (x - 117) * 0.9 - y) },
  ],
};

export const charts = (): readonly (readonly [string, Drawing])[] => [
  ['Recipe as true mass', caramelStack()],
  ['Not balanced', unbalanced()],
  ['What if', stepCurve()],
  ['What if, two limits', thicknessCurve()],
  ['Window map', windowMap(windowSpec)],
  ['Window map, outside', windowMap({ ...windowSpec, now: [115.6, 80], trial: [117.5, 78] })],
  [
    'Shares',
    shares({
      width: 460,
      most: 4,
      restLabel: 'five more',
      shares: [
        ['water in caramel', 0.46],
        ['water activity model', 0.31],
        ['water in nougat', 0.12],
        ['cook probe', 0.06],
        ['a', 0.02],
        ['b', 0.015],
        ['c', 0.01],
        ['d', 0.004],
        ['e', 0.001],
      ].map(([label, value]) => ({
        id: String(label),
        label: String(label),
        value: Number(value),
        text: `${Math.round(Number(value) * 100)} %`,
        standing: label === 'water in caramel' ? ('measured' as const) : ('computed' as const),
      })),
      restText: (value) => `${Math.round(value * 100)} %`,
    }),
  ],
  [
    'Evidence',
    evidenceStrip({
      width: 620,
      heads: ['published', 'computed', 'deviation'],
      rows: [
        {
          id: 'a',
          label: 'water, 25 °C, Pa',
          expected: 3169.7,
          computed: 3169.2,
          tolerance: 3,
          expectedText: '3 169.7',
          computedText: '3 169.2',
          source: 'handbook table 3',
        },
        {
          id: 'b',
          label: 'syrup 70 %, °C',
          expected: 106.5,
          computed: 106.1,
          tolerance: 0.5,
          expectedText: '106.5',
          computedText: '106.1',
          source: 'from memory',
        },
        {
          id: 'c',
          label: 'syrup 85 %, °C',
          expected: 118,
          computed: 119.3,
          tolerance: 0.8,
          expectedText: '118.0',
          computedText: '119.3',
          source: 'from memory',
        },
      ],
    }),
  ],
  [
    'Model against measured',
    scatter({
      width: 420,
      height: 260,
      x: [50, 95],
      y: [100, 135],
      fitted: [60, 85],
      xLabel: '% solids',
      yLabel: 'boils at, °C',
      line: Array.from({ length: 46 }, (_, k) => [50 + k, 100 + 2.3 * Math.exp((k - 8) / 16)] as const),
      points: [55, 62, 68, 74, 79, 83, 88].map((x, k) => ({
        x,
        y: 100 + 2.3 * Math.exp((x - 58) / 16) + (k % 2 === 0 ? 0.7 : -0.9) + (k === 6 ? 4 : 0),
        off: 1,
        red: k === 6,
      })),
    }),
  ],
  [
    'Day line',
    dayLine({
      width: 1180,
      from: 360,
      to: 1600,
      plumb: 1145,
      runs: [
        [405, 410],
        [413, 480],
        [486, 575],
        [590, 640],
        [655, 700],
        [705, 760],
        [770, 900],
        [906, 1040],
        [1060, 1100],
        [1120, 1145],
      ],
      holds: [
        [697, 838],
        [900, 1022],
      ],
      acts: [1096],
    }),
  ],
  [
    'Day line, narrow',
    dayLine({
      width: 600,
      from: 360,
      to: 1600,
      plumb: 775,
      runs: [
        [405, 480],
        [486, 575],
        [590, 640],
        [655, 700],
        [705, 775],
      ],
      holds: [[697, 775]],
      acts: [630],
    }),
  ],
  [
    'Lanes',
    lanes({
      width: 1280,
      height: 140,
      hairs: 2,
      hairText: ['+2 g', '\u22122'],
      targetText: '15.0',
      material: 'milk-chocolate',
      values: Array.from({ length: 32 }, (_, k) =>
        k === 7 ? undefined : Math.sin(k * 2.3) * 0.8 + (k > 21 ? 1.5 : 0) + (k === 23 ? 0.9 : 0),
      ),
      outside: [{ lane: 23, text: '53.2 g' }],
      groups: [
        { from: 0, to: 10, text: 'wrapper 1, lanes 1–11' },
        { from: 11, to: 21, text: 'wrapper 2, lanes 12–22' },
        { from: 22, to: 31, text: 'wrapper 3, lanes 23–32', guilty: true },
      ],
    }),
  ],
];
