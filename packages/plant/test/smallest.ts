/** The smallest plant that makes a bar: two materials, one component, one layer. */
export const smallest: ReadonlyMap<string, string> = new Map([
  [
    'plant.yaml',
    `format: 1
plant:
  name: Small Works
  altitude: 0 m
  currency: EUR
  time zone: Europe/London
  market: EU
`,
  ],
  [
    'materials.yaml',
    `format: 1
materials:
  sugar:
    price: 0.85 EUR/kg
    composition: { water: 0.1 %, sucrose: 99.9 % }
  water:
    price: 0.003 EUR/kg
    composition: { water: 100 % }
`,
  ],
  [
    'components.yaml',
    `format: 1
components:
  fudge:
    texture: caramel
    density: 1.3 g/cm³
    stages:
      - stage: mix
        does: mix
        add: { sugar: 70 %, water: 30 % }
      - stage: boil
        does: cook
        finished moisture: 10 % ± 0.5 %
`,
  ],
  [
    'bars/plain.yaml',
    `format: 1
bar:
  name: Plain
  format: 20 g bar
  nominal: 20 g
  target: 20.5 g
  cut length: 80 mm
  cut width: 20 mm
  size: [80 mm, 20 mm, 10 mm]
  line: Line 1
  layers:
    - layer: fudge   # the only one
      of: fudge
      mass: 20.5 g
      loss: 1 % of made
  pack: { bars per pack: 1 }
`,
  ],
  [
    'lines/line-1.yaml',
    `format: 1
line:
  name: Line 1
  lanes: 4
  edge trim: 5 mm
  slab speed: 2 m/min
  gap: 20 mm
  transit: { wrapper: 5 min }
  stations:
    - station: kettle
      works: fudge
      rate: 200 kg/h
    - station: wrapper
      works: bar
      rate: 100 packs/min
      set points: { jaw: { value: 130 °C, low: 120 °C, high: 140 °C, reaction: "clean, then heat" } }
`,
  ],
  [
    'plan.yaml',
    `format: 1
plans:
  - { bar: Plain, line: Line 1, date: 2026-03-17, order: "10,000 bars" }
`,
  ],
  [
    'checks.yaml',
    `format: 1
checks:
  - { at: fudge, what: moisture, limit: 10 % ± 0.5 %, every: each batch, kind: house }
`,
  ],
]);

/** The smallest plant with one text in a file put in place of another. @throws where it does not stand there */
export function changed(file: string, from: string, to: string, base = smallest): Map<string, string> {
  const text = base.get(file);
  if (!text?.includes(from)) throw new Error(`'${from}' is not in ${file}`);
  return new Map(base).set(
    file,
    text.replace(from, () => to),
  );
}
