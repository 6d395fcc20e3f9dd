import { spawnSync } from 'node:child_process';
import { copyFileSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';

const root = fileURLToPath(new URL('../../../', import.meta.url));
const plant = 'examples/pellamoor';
const day = 'examples/pellamoor/days/2026-03-17';
const scratch = mkdtempSync(join(tmpdir(), 'barwright-affected-'));
afterAll(() => rmSync(scratch, { recursive: true, force: true }));

function run(...args: string[]) {
  const { status, stdout, stderr } = spawnSync(process.execPath, [join(root, 'apps/cli/bin/barwright.mjs'), ...args], {
    cwd: root,
    encoding: 'utf8',
  });
  return { status, stdout: stdout.replaceAll(/\s+/g, ' '), raw: stdout, stderr };
}
const json = (...args: string[]) => {
  const { status, raw, stderr } = run(...args, '--json');
  expect(stderr).toBe('');
  expect(status).toBe(0);
  return JSON.parse(raw);
};
const pallets = (from: number, to: number) => Array.from({ length: to - from + 1 }, (_, i) => `P${String(from + i).padStart(3, '0')}`);

describe('barwright affected', () => {
  it('one window: packed, bars with what the intervals allow, pallets, who may release', () => {
    const { status, stdout } = run('affected', plant, day, '--at', 'enrober', '--from', '13:05', '--to', '14:34');
    expect(status).toBe(0);
    expect(stdout).toMatch(/For certain: packed 17 Mar 13:17 to 14:46: 51 854 bars \(50 639 to 53 151\) on 6 pallets, P025 to P030/);
    expect(stdout).toMatch(/only a named person may release/);
  });

  it('several windows: bars in both are counted once; good readings widen the safe set', () => {
    const two = json(
      'affected',
      plant,
      day,
      '--window',
      'slab=11:26/13:43',
      '--window',
      'enrober=13:05/14:34',
      '--good',
      'enrober=13:00/15:00',
    );
    expect(two.for_certain.pallets).toEqual(pallets(18, 30));
    expect(two.for_certain.packed).toEqual([['17 Mar 11:39', '17 Mar 14:46']]);
    const [first, second] = two.windows;
    expect(first.bars.value + second.bars.value - two.counted_once).toBeCloseTo(two.for_certain.bars.value, -1);
    expect(second.window_to_be_safe).toEqual(['17 Mar 13:00', '17 Mar 15:00']);
    expect(two.to_be_safe.pallets.length).toBeGreaterThan(two.for_certain.pallets.length);
  });

  it('over midnight, by times of day alone', () => {
    const night = json('affected', plant, day, '--at', 'wrapper', '--from', '23:50', '--to', '00:20');
    expect(night.windows[0].packed).toEqual(['17 Mar 23:50', '18 Mar 00:20']);
    expect(night.for_certain.pallets).toEqual(pallets(70, 73));
  });

  it('finds the logs by their headings; without a list of pallets it says so', () => {
    copyFileSync(join(root, day, 'flow_5min.csv'), join(scratch, 'made today.csv'));
    copyFileSync(join(root, day, 'temper.csv'), join(scratch, 'temper.csv'));
    const answer = json('affected', plant, scratch, '--at', 'wrapper', '--from', '15:01', '--to', '17:02');
    expect(answer.beside).toEqual(['made today.csv']);
    expect(answer.for_certain.pallets).toBeNull();
    expect(answer.cannot_tell.join(' ')).toMatch(/Which pallets cannot be told: there is no log of pallets/);
    const named = json(
      'affected',
      plant,
      scratch,
      '--at',
      'wrapper',
      '--from',
      '15:01',
      '--to',
      '17:02',
      '--pallets',
      join(day, 'pallets.csv'),
    );
    expect(named.for_certain.pallets).toEqual(pallets(31, 41));
  });

  it.each([
    [['--at', 'enrober'], 2, /belong together/],
    [[], 2, /Say which window/],
    [['--window', 'enrober 13:05'], 2, /write the place and its two times/],
    [['--window', 'enrober=13:05/14:34', '--good', 'enrober=13:20/15:00'], 2, /encloses no window/],
    [['--at', 'moulder', '--from', '13:05', '--to', '14:34'], 1, /writes no transit to "moulder"; it can follow bars from slab, cutter/],
    [['--at', 'enrober', '--from', 'noon', '--to', '14:34'], 1, /"noon" is no time/],
  ])('%j ends with %d and one clear sentence', (args, code, words) => {
    const { status, stderr } = run('affected', plant, day, ...args);
    expect(status).toBe(code);
    expect(stderr).toMatch(words);
    expect(stderr.trim().split('\n')).toHaveLength(1);
  });
});

describe('answers that find a window name bars and pallets', () => {
  it('cook: C06 to C08 on P018 to P029; the single odd result of C14 holds none', () => {
    const { affected } = json('cook', plant, `${day}/caramel_batches.csv`);
    expect(affected.windows.map(({ what }: { what: string }) => what)).toEqual(['C06, C07, C08']);
    expect(affected.for_certain.pallets).toEqual(pallets(18, 29));
    expect(affected.for_certain.bars.value).toBeGreaterThan(113_713 * 0.97);
    expect(affected.for_certain.bars.value).toBeLessThan(113_713 * 1.03);
  });

  it('temper: P025 to P030; at 13:30 what was packed so far; alone the packed window only', () => {
    expect(json('temper', plant, `${day}/temper.csv`).affected.for_certain.pallets).toEqual(pallets(25, 30));
    const then = json('temper', plant, `${day}/temper.csv`, '--until', '13:30').affected;
    expect(then.for_certain.pallets).toEqual(pallets(25, 27));
    expect(then.for_certain.not_packed_yet.value).toBeGreaterThan(10_000);
    const alone = json('temper', plant, `${day}/temper.csv`, '--alone').affected;
    expect(alone.for_certain.bars).toBeNull();
    expect(alone.cannot_tell).toHaveLength(2);
  });

  it('roast: nothing where it is proven; the order of use and the safe set where it is not', () => {
    const log = `${day}/peanut_roast.csv`;
    expect(json('roast', plant, log, '--station', 'peanut roaster').affected).toBeNull();
    const slow = join(scratch, 'peanut_roast.csv');
    const rows = readFileSync(join(root, log), 'utf8').split(/\r?\n/);
    writeFileSync(slow, rows.map((row, i) => (i >= 20 && i <= 22 ? row.replace(/^([^,]*,[^,]*,[^,]*),[^,]*/, '$1,1.0') : row)).join('\n'));
    const beside = ['--counts', `${day}/flow_5min.csv`, '--pallets', `${day}/pallets.csv`];
    const { affected } = json('roast', plant, slow, '--station', 'peanut roaster', ...beside);
    expect(affected.for_certain.pallets).toEqual(pallets(17, 24));
    expect(affected.to_be_safe.pallets).toEqual(pallets(17, 81));
    expect(affected.how.join(' ')).toMatch(/30 to 60 min from the peanut roaster to the cutter, as the plant writes it/);
  });
});
