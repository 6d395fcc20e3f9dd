import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';

const root = fileURLToPath(new URL('../../../', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'barwright-chocolate-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const plant = 'examples/pellamoor';
const day = `${plant}/days/2026-03-17`;

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
const file = (name: string, text: string) => {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
};

/** Every example of every help is run as a person would type it. */
const examples = ['speed', 'lot', 'roast', 'temper', 'tunnel', 'viscosity', 'enrober', 'law'].map((name) => {
  const help = run(name, '--help').stdout;
  const line = /^Example:\n\s+barwright (.*)$/m.exec(help)![1]!;
  return [name, [...line.matchAll(/"([^"]*)"|(\S+)/g)].map((match) => match[1] ?? match[2]!)] as const;
});

describe('every example', () => {
  it.each(examples)('of %s runs, in words and as JSON', (_, args) => {
    const { status, stdout, stderr } = run(...args);
    expect(stderr).toBe('');
    expect(status).toBe(0);
    expect(stdout).not.toContain('NaN');
    expect(stdout).not.toContain('undefined');
    expect(stdout).toMatch(/advises|qualified|scale of each instrument|measure again/);
    expect(() => JSON.parse(run(...args, '--json').stdout)).not.toThrow();
  });
});

describe('answers on the demo day', () => {
  it('speed: the slab former first, 13.8 min of buffer', () => {
    const answer = json('speed', plant, '--rate', '1050 bars/min');
    expect(answer).toMatchObject({ first: 'slab former', most_possible: 1000 });
    expect(answer.buffers[0].one_down_min).toBeCloseTo(13.8, 1);
    expect(answer.tunnel.exit_change_k).toBeGreaterThan(0.2);
  });

  it('lot: 1.95 % by its shell', () => {
    const { worth, grade } = json('lot', plant, '--lot', 'CB-2614');
    const shell = worth.effects.find(({ name }: { name: string }) => name === 'shell');
    expect(shell.yield_change).toBeCloseTo(-0.0195, 4);
    expect(shell.extra_money).toBeCloseTo(251, -0.5);
    expect(grade.grade).toBe('1');
  });

  it('roast: CSV and XLSX, in °C and in °F', () => {
    expect(json('roast', plant, `${day}/peanut_roast.csv`, '--station', 'peanut roaster')).toMatchObject({
      verdict: 'proven',
      rows: { proven: 78 },
    });
    const sheet = json('roast', plant, 'apps/cli/test/fixtures/roast.xlsx', '--station', 'peanut roaster');
    expect(sheet).toMatchObject({ verdict: 'proven', rows: { proven: 12 } });
    expect(sheet.stretches[0].from).toBe('06:00');
  });

  it('temper: coolant supply, 13:05 to 14:34', () => {
    const { incidents, beside } = json('temper', plant, `${day}/temper.csv`);
    expect(incidents).toHaveLength(1);
    expect(incidents[0]).toMatchObject({ cause: 'coolant supply', state: 'under', enrobed: ['17 Mar 13:05', '17 Mar 14:34'] });
    expect(beside).toEqual(['tunnel.csv', 'stops.csv', 'flow_5min.csv']);
    const alone = json('temper', plant, `${day}/temper.csv`, '--alone', '--until', '13:30');
    expect(alone.incidents[0].enrobed_conservative).toEqual(['17 Mar 13:00', 'end of the log, still open']);
  });

  it('tunnel: the offset that the log asks for, which then brings the exit there', () => {
    const { log } = json('tunnel', plant, '--log', `${day}/tunnel.csv`);
    const after = json('tunnel', plant, '--set', `station.cooling_tunnel.exit_offset=${log.offset_k}`);
    expect(after.exit_surface_c.value).toBeCloseTo(log.measured_c, 0);
  });

  it('viscosity: E476, under 0.3 ct a kg', () => {
    const { best } = json('viscosity', plant, '--measured', '12 Pa', '--yield', '9 Pa');
    expect(best).toMatchObject({ name: 'E476', lawful: true, meets: true });
    expect(best.cost_per_kg).toBeLessThan(0.003);
  });

  it('viscosity: a viscometer with semicolons and decimal commas', () => {
    const rows = [2, 5, 10, 20, 30, 40, 50].map((rate) =>
      `${rate};${((Math.sqrt(12) + Math.sqrt(2.3 * rate)) ** 2).toFixed(3)}`.replaceAll('.', ','),
    );
    const { curve } = json('viscosity', plant, '--curve', file('flow.csv', ['Shear rate (1/s);Stress (Pa)', ...rows].join('\n')));
    expect(curve.fits.map(({ law }: { law: string }) => law)).toEqual(['casson', 'windhab', 'herschel-bulkley']);
    expect(curve.fits[0].parameters.yield_value_pa.value).toBeCloseTo(12, 2);
    expect(curve.report.stress_at_5_pa).toBeGreaterThan(12);
  });

  it('enrober: thicker with more yield value, thinner with more blower', () => {
    const mass = (...args: string[]) => json('enrober', plant, ...args).coat.mass_g;
    expect(mass('--yield', '12 Pa')).toBeGreaterThan(mass('--yield', '9.5 Pa'));
    expect(mass('--blower', '30 m/s')).toBeLessThan(mass('--blower', '20 m/s'));
    expect(mass('--yield', '9.5 Pa')).toBeCloseTo(15, 6);
  });

  it('law: three markets', () => {
    const { markets, wanted } = json('law', plant);
    expect(markets.map(({ market }: { market: string }) => market)).toEqual(['eu', 'codex', 'us']);
    expect(wanted.allowed).toBe(true);
  });

  it('a cooling curve is read by its inflection', () => {
    // Cooled in a jacket of 10 °C; crystals give off heat around 120 s and hold it level for a while.
    let t = 32;
    const rows = ['time_s,temperature_C'];
    for (let i = 0; i <= 300; i += 5) {
      rows.push(`${i},${t.toFixed(3)}`);
      t += 5 * (-0.006 * (t - 10) + 0.085 * Math.exp(-(((i - 120) / 40) ** 2)));
    }
    const curve = json('temper', plant, file('curve.csv', rows.join('\n')));
    expect(curve.inflection).toBe(true);
    expect(Math.abs(curve.slope_k_per_min)).toBeLessThan(1);
    expect(curve.state).toBe('well');
  });
});

describe('what is refused, in one sentence', () => {
  it.each([
    [['speed', plant], 2, /--rate/],
    [['speed', plant, '--rate', '50 kg'], 2, /--rate is "50 kg"/],
    [['lot', plant, '--lot', 'CB-1'], 1, /has no lot "CB-1"; it has CB-2609/],
    [['roast', plant, 'no/such.csv', '--station', 'peanut roaster'], 1, /There is no file no\/such.csv; give the path/],
    [['roast', plant, `${day}/peanut_roast.csv`], 1, /"bean roaster", "peanut roaster"; name its station/],
    [['roast', plant, `${day}/stops.csv`, '--station', 'peanut roaster'], 1, /has no column of times/],
    [['temper', plant, `${day}/peanut_roast.csv`, '--alone'], 1, /slope or an index for tests/],
    [['viscosity', plant], 2, /--yield "9 Pa"/],
    [['viscosity', plant, '--yield', '9 Pa', '--component', 'caramel'], 1, /caramel is no chocolate/],
    [['enrober', plant], 2, /Say what changes/],
    [['tunnel', plant, '--log', `${day}/temper.csv`], 1, /zones or the exit temperature/],
  ])('%j', (args, status, sentence) => {
    const result = run(...args);
    expect(result.status).toBe(status);
    expect(result.stderr).toMatch(sentence);
    expect(result.stderr).not.toMatch(/\n\s+at |should not happen/);
  });
});
