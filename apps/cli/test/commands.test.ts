import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';

const root = fileURLToPath(new URL('../../../', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'barwright-cli-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function run(...args: string[]) {
  const { status, stdout, stderr } = spawnSync(process.execPath, [join(root, 'apps/cli/bin/barwright.mjs'), ...args], {
    cwd: root,
    encoding: 'utf8',
  });
  return { status, stdout, stderr };
}
const json = (...args: string[]) => {
  const { status, stdout, stderr } = run(...args, '--json');
  expect(stderr).toBe('');
  expect(status).toBe(0);
  return JSON.parse(stdout);
};

describe('barwright', () => {
  it('says what it is and how it ends when asked for help', () => {
    const { status, stdout } = run('--help');
    expect(status).toBe(0);
    expect(stdout).toMatch(/Exit codes: 0 done, 1 refused .* 2 misused/);
  });

  it.each([
    'sheet',
    'evaluate',
    'explain',
    'observe',
    'solve',
    'vary',
    'map',
    'compare',
    'calibrate',
    'quantities',
    'model',
    'evidence',
    'serve',
  ])('%s --help has an example', (name) => {
    const { status, stdout } = run(name, '--help');
    expect(status).toBe(0);
    expect(stdout).toContain(`barwright ${name}`);
  });

  it('writes no colours where no terminal reads', () => {
    expect(run('sheet', 'examples/pellamoor').stdout).not.toContain('\u001b');
  });

  it.each([
    [['nonsense'], 2],
    [['sheet'], 2],
    [['solve', 'examples/pellamoor'], 2],
    [['sheet', 'examples/pellamoor', '--units', 'cubits'], 2],
    [['sheet', 'no/such/folder'], 1],
    [['sheet', 'packages'], 1],
    [['sheet', 'examples/pellamoor', '--bar', 'Nobody'], 1],
    [['evaluate', 'examples/pellamoor', 'bar.wieght'], 2],
    [['evaluate', 'examples/pellamoor', '--set', 'caramel.moisture=12 kg'], 1],
    [['model', 'no.such.model'], 1],
    [['model', 'water.saturation_pressure', '--in', '{nonsense'], 2],
    [['model', 'water.saturation_pressure', '--in', '{"temperature_c": "hot"}'], 1],
  ])('%j ends with %d and one clear sentence', (args, status) => {
    const result = run(...args);
    expect(result.status).toBe(status);
    expect(result.stderr.trim()).not.toBe('');
    expect(result.stderr).not.toMatch(/\n\s+at /);
  });
});

describe('the verbs on the demo plant', () => {
  const plant = 'examples/pellamoor';

  it('sheet gives every quantity with value, unit, origin and window', () => {
    const { bar, quantities, allergens } = json('sheet', plant);
    expect(bar).toBe('Kestrowan');
    expect(quantities['bar.cost'].value).toBeCloseTo(13.3, 2);
    expect(quantities['nougat.moisture']).toMatchObject({ unit: '%', origin: 'entered', window: { low: 8.6, high: 9.4 } });
    expect(Object.keys(allergens)).toEqual(['egg', 'milk', 'peanut', 'soya']);
  });

  it('sheet reads in ounces too', () => {
    const { quantities } = json('sheet', plant, '--units', 'us');
    expect(quantities['bar.mass']).toMatchObject({ unit: 'oz' });
    expect(quantities['bar.mass'].value).toBeCloseTo(48.8 / 28.349523125, 6);
    expect(quantities['caramel.cook_temperature'].unit).toBe('°F');
  });

  it('sheet writes the run sheet as PDF and HTML', () => {
    const { status } = run('sheet', plant, '--pdf', join(folder, 'run.pdf'), '--html', join(folder, 'run.html'));
    expect(status).toBe(0);
    expect(readFileSync(join(folder, 'run.pdf')).subarray(0, 5).toString()).toBe('%PDF-');
    expect(readFileSync(join(folder, 'run.html'), 'utf8')).toContain('Run sheet: Kestrowan');
  });

  it('evaluate takes what-ifs with units', () => {
    const { 'bar.mass': mass } = json('evaluate', plant, 'bar.mass', '--set', 'coat.mass=16.5 g');
    expect(mass.value).toBeCloseTo(50.3, 9);
  });

  it('explain goes back to file and line', () => {
    const tree = json('explain', plant, 'bar.cost');
    const places: string[] = [];
    const walk = (node: { place?: string; inputs: never[] }) => {
      if (node.place) places.push(node.place);
      node.inputs.forEach(walk);
    };
    walk(tree);
    expect(places.some((place) => /^materials\.yaml:\d+/.test(place))).toBe(true);
  });

  it('observe says what follows from a reading', () => {
    const { differences } = json('observe', plant, 'caramel.moisture=10.3 %', '--note', 'titration');
    const ids = differences.map(({ id }: { id: string }) => id);
    expect(ids).toContain('caramel.water_activity');
    expect(ids).not.toContain('nougat.water_activity');
  });

  it('solve finds the cook temperature for a water activity', () => {
    const found = json('solve', plant, '--target', 'caramel.water_activity=0.54', '--knob', 'caramel.cook_temperature');
    expect(found.found).toBe(true);
    expect(found.reached).toBeCloseTo(0.54, 6);
    expect(found.knob_unit).toBe('°C');
  });

  it('solve says how near it comes when there is no answer, and ends with 1', () => {
    const { status, stdout } = run(
      'solve',
      plant,
      '--target',
      'bar.mass=60 g',
      '--knob',
      'coat.mass',
      '--low',
      '14 g',
      '--high',
      '16 g',
      '--json',
    );
    expect(status).toBe(1);
    const answer = JSON.parse(stdout);
    expect(answer).toMatchObject({ found: false, code: 'UNREACHABLE' });
    expect(answer.nearest.reached).toBeCloseTo(49.8, 6);
  });

  it('vary gives the standard deviation of the bar and whose it is', () => {
    const { outputs } = json('vary', plant, '--output', 'bar.mass', '--samples', '4096');
    expect(outputs[0].sd).toBeCloseTo(1.01, 2);
    expect(outputs[0].shares[0].id).toBe('coat.mass');
    expect(outputs[0].shares[0].first).toBeCloseTo(0.448, 2);
  });

  it('map draws the window over two knobs', () => {
    const drawn = json(
      'map',
      plant,
      '--x',
      'caramel.moisture:8 %:11 %:7',
      '--y',
      'nougat.moisture:8 %:10 %:5',
      '--output',
      'step.caramel_nougat',
    );
    expect(drawn.x.values).toHaveLength(7);
    expect(drawn.holds).toHaveLength(35);
    expect(drawn.holds).toContain(true);
    expect(drawn.holds).toContain(false);
  });

  it('compare lists what differs', () => {
    const { differences } = json('compare', plant, '--set', 'material.cocoa_butter.price=14.3 EUR/kg');
    const cost = differences.find(({ id }: { id: string }) => id === 'bar.cost');
    expect(cost.after - cost.before).toBeCloseTo(0.385, 3);
  });

  it('calibrate fits the plant’s own offset to good cooks', () => {
    const file = join(folder, 'cooks.csv');
    writeFileSync(file, 'caramel.moisture,caramel.cook_temperature\n9.4 %,117.9 °C\n9.5 %,117.7 °C\n9.6 %,117.4 °C\n9.5 %,117.6 °C\n');
    const { parameters, freedom } = json(
      'calibrate',
      plant,
      '--parameter',
      'caramel.cook_model_offset:-8:8',
      '--data',
      file,
      '--observed',
      'caramel.cook_temperature',
    );
    expect(freedom).toBe(3);
    expect(parameters[0].estimate).toBeLessThan(0);
    expect(parameters[0].high - parameters[0].low).toBeLessThan(1);
  });

  it('quantities lists ids with unit and meaning', () => {
    const list = json('quantities', plant, '--like', 'water activity');
    expect(list.map(({ id }: { id: string }) => id)).toContain('caramel.water_activity');
  });
});

describe('the model door', () => {
  it('lists every model with inputs, ranges, outputs and sources', () => {
    const list = json('model', '--list');
    expect(list.length).toBeGreaterThan(20);
    for (const model of list) {
      expect(model.inputs.length + model.outputs.length, model.id).toBeGreaterThan(0);
      expect(model.sources.length, model.id).toBeGreaterThan(0);
    }
  });

  it('answers one, with unit and sources', () => {
    const answer = json('model', 'water.saturation_pressure', '--in', '{"temperature_c": 100}');
    const [output] = Object.values(answer.outputs) as [{ value: number; unit: string }];
    expect(output.unit).toBe('Pa');
    expect(output.value).toBeCloseTo(101_418, -1);
  });

  it('answers a batch line by line, and a refused line does not stop the rest', () => {
    const file = join(folder, 'batch.jsonl');
    const line = (t: unknown) => JSON.stringify({ id: 'water.saturation_pressure', in: { temperature_c: t } });
    writeFileSync(file, [line(20), line('hot'), line(40), '{"id":"no.such.model","in":{}}'].join('\n'));
    const { status, stdout } = run('model', '--batch', file);
    expect(status).toBe(0);
    const answers = stdout
      .trim()
      .split('\n')
      .map((text) => JSON.parse(text));
    expect(answers).toHaveLength(4);
    expect(answers[1].error.message).toMatch(/number in °C is expected/);
    expect(answers[3].error.code).toBeTruthy();
  });
});
