import { boxTexture, rect, text, type BandSpec, type Drawing, type Material } from '../src/index.js';

/** An invented line for an invented bar. */
export const classicLine: BandSpec = {
  width: 1390,
  height: 640,
  flowPerPx: 17.9,
  clock: [
    { from: -160, to: -90, share: 0.11 },
    { from: -30, to: 4, share: 0.89 },
  ],
  ticks: [
    { at: -158, text: '11:12', word: 'weighed' },
    { at: -104, text: '12:06', word: 'cooked' },
    { at: -24, text: '13:26', word: 'sheet' },
    { at: -21, text: '13:29', word: 'slab' },
    { at: -13, text: '13:37', word: 'cut' },
    { at: -12, text: '13:38', word: 'tunnel in' },
    { at: -2, text: '13:48', word: 'tunnel out' },
    { at: 0, text: '13:50', word: 'wrapper' },
  ],
  streams: [
    {
      id: 'nougat',
      label: 'Nougat 814 kg/h',
      note: 'line can do 950',
      material: 'nougat',
      flow: 814,
      startsAt: -160,
      mixedAt: -104,
      joinsAt: -29,
      parts: [
        { id: 'n.dry', label: 'fat, milk, egg, paste', material: 'dry', flow: 120 },
        { id: 'n.water', label: 'water', material: 'water', flow: 100 },
        { id: 'n.syrup', label: 'glucose syrup', material: 'syrup', flow: 300 },
        { id: 'n.sugar', label: 'sugar', material: 'sugar', flow: 373 },
      ],
      vapours: [{ id: 'n.vapour', from: -100, to: -94, flow: 79, text: 'water 79 kg/h' }],
    },
    {
      id: 'caramel',
      label: 'Caramel 676 kg/h',
      note: 'line can do 820',
      material: 'caramel',
      flow: 676,
      startsAt: -160,
      mixedAt: -104,
      joinsAt: -23.5,
      parts: [
        { id: 'c.water', label: 'water', material: 'water', flow: 63 },
        { id: 'c.fat', label: 'fat, butter', material: 'fat', flow: 103 },
        { id: 'c.sugar', label: 'sugar', material: 'sugar', flow: 142 },
        { id: 'c.milk', label: 'condensed milk', material: 'milk', flow: 190 },
        { id: 'c.syrup', label: 'glucose syrup', material: 'syrup', flow: 290 },
      ],
      vapours: [{ id: 'c.vapour', from: -100, to: -94, flow: 112, text: 'water 112 kg/h' }],
      held: [[-7, 4]],
    },
    {
      id: 'nuts',
      label: 'Peanuts 447 kg/h',
      note: 'spreader can do 520',
      material: 'nut',
      flow: 447,
      startsAt: -160,
      mixedAt: -104,
      joinsAt: -22,
      parts: [{ id: 'raw', label: 'blanched peanuts', material: 'nut', flow: 481 }],
      vapours: [{ id: 'p.vapour', from: -100, to: -94, flow: 34, text: 'water 34 kg/h' }],
    },
  ],
  coat: {
    id: 'coat',
    label: 'Milk chocolate 860 kg/h',
    note: 'kettle 2; temperer can do 1 600',
    material: 'milk-chocolate',
    over: 500,
    under: 360,
    joinsAt: -12,
    held: [[-11, 4]],
  },
  leaving: [
    { id: 'trim', at: -14, flow: 27, text: 'edge trim 27 kg/h', backTo: 'nougat', idle: true, backText: 'rework into nougat: none now' },
    { id: 'scrap', at: 1, flow: 22, text: 'scrap 22 kg/h' },
  ],
  stations: [
    { id: 'slab', from: -21.4, to: -20.4, capacity: 2025 },
    { id: 'cooler', from: -20.4, to: -14.4, capacity: 2200 },
    { id: 'cutter', from: -14.4, to: -13.2, capacity: 2100 },
    { id: 'coater', from: -12, to: -11.5, capacity: 3600 },
    { id: 'tunnel', from: -11.5, to: -2, capacity: 3050 },
    { id: 'wrapper', from: -0.9, to: 0.4, capacity: 3500 },
    { id: 'case', from: 1.2, to: 4, capacity: 3500 },
    { id: 'cooker', from: -104, to: -92, capacity: 820, stream: 'caramel' },
  ],
  narrowest: { station: 'slab', text: 'narrowest: slab former', note: '955 of 1 000 bars/min; 45 to spare' },
  giveaway: { at: 0.4, flow: 46, text: 'given away 0.8 g', note: '46 kg/h, €118 an hour' },
  notes: [
    { id: 'temper', at: -10.8, text: 'Temper out after 13:00, held', note: 'still being coated: stop, or change the kettle', ink: 'held' },
    { id: 'wet', at: -7, text: 'Caramel C06–C08, held', note: 'ends 7 min past the cutter', ink: 'held' },
  ],
  plumb: 0,
};

/** Two layers, caramel below, a wafer sheet on it, open underside. */
export const waferLine: BandSpec = {
  width: 1100,
  height: 460,
  flowPerPx: 12,
  clock: [{ from: 0, to: 40, share: 1 }],
  ticks: [
    { at: 2, text: '08:02', word: 'baked' },
    { at: 12, text: '08:12', word: 'spread' },
    { at: 22, text: '08:22', word: 'coated' },
    { at: 36, text: '08:36', word: 'wrapped' },
  ],
  streams: [
    { id: 'caramel', label: 'Caramel 380 kg/h', material: 'caramel', flow: 380, startsAt: 0, joinsAt: 11 },
    {
      id: 'wafer',
      label: 'Wafer 300 kg/h',
      note: 'oven can do 310',
      material: 'wafer',
      flow: 300,
      startsAt: 0,
      joinsAt: 14,
      vapours: [{ id: 'steam', from: 1, to: 3, flow: 160, text: 'water 160 kg/h' }],
    },
  ],
  coat: { id: 'dark', label: 'Dark chocolate 210 kg/h', material: 'dark-chocolate', over: 210, under: 0, joinsAt: 22 },
  stations: [
    { id: 'press', from: 15, to: 19, capacity: 720 },
    { id: 'wrap', from: 34, to: 38, capacity: 860 },
  ],
  narrowest: { station: 'wrap', text: 'over: wrapper', note: '890 kg/h come, 860 can be wrapped' },
};

const materials: readonly (readonly [Material, string])[] = [
  ['milk-chocolate', 'milk chocolate'],
  ['dark-chocolate', 'dark chocolate'],
  ['white-chocolate', 'white chocolate'],
  ['caramel', 'caramel'],
  ['nougat', 'nougat'],
  ['nut', 'nut'],
  ['cocoa-bean', 'cocoa bean'],
  ['sugar', 'sugar'],
  ['syrup', 'glucose syrup'],
  ['milk', 'milk'],
  ['fat', 'fat, butter'],
  ['water', 'water, vapour'],
  ['dry', 'small dry goods'],
  ['film', 'film'],
  ['wafer', 'wafer'],
  ['biscuit', 'biscuit'],
  ['jelly', 'jelly'],
  ['paste', 'paste'],
];

/** Every small texture in a box, with its name. */
export function swatches(): Drawing {
  const marks = materials.flatMap(([material, name], at) => {
    const x = 4 + (at % 9) * 118;
    const y = 4 + Math.floor(at / 9) * 112;
    return [
      ...(material === 'milk-chocolate' || material === 'dark-chocolate' ? [rect(x, y, 100, 74, { fill: 'coat' })] : []),
      ...boxTexture(material, x, y, 100, 74),
      rect(x, y, 100, 74, { stroke: 'ink', width: 1 }),
      text(x, y + 92, name, 14, { fill: 'ink-2' }),
    ];
  });
  return { marks, width: 1070, height: 226 };
}
