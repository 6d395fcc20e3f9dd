// Benchmarks, each beside its alternative in the same run where there is one. `npm run bench -- [--only NAME] [--write]`
// Machines are noisy: read the ratios, not the milliseconds.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { cpus, tmpdir } from 'node:os';
import { join } from 'node:path';
import { findBrowser } from './browser.mjs';
import { root } from './stale.mjs';

const only = process.argv.includes('--only') ? process.argv[process.argv.indexOf('--only') + 1] : undefined;
const folder = mkdtempSync(join(tmpdir(), 'barwright-bench-'));
const draws = join(folder, 'draws.f64');
const rows = [];
const lines = [];

const wanted = (name) => only === undefined || name.includes(only);
const say = (text) => console.log(text);

/** Runs a program and gives the JSON lines it printed. */
function jsonLines(command, args, env = {}) {
  const run = spawnSync(command, args, { cwd: root, encoding: 'utf8', env: { ...process.env, ...env }, maxBuffer: 1e8 });
  if (run.status !== 0) return { failed: (run.stderr || run.error?.message || `ended with ${run.status}`).trim().split('\n').at(-1) };
  const text = run.stdout.trim();
  if (text.startsWith('{\n')) return { lines: [JSON.parse(text)] };
  const found = text.split('\n').filter((line) => line.startsWith('{'));
  return { lines: found.map((line) => JSON.parse(line)) };
}
const tsx = (file, ...args) => jsonLines(join(root, 'node_modules/.bin/tsx'), [join(root, file), ...args]);

function row(what, ours, goal, met, note = '') {
  rows.push({ what, ours, goal, met, note });
}

function python() {
  for (const path of ['/usr/bin/python3', 'python3']) {
    if (spawnSync(path, ['-c', 'import numpy']).status === 0) return path;
  }
  return undefined;
}

if (wanted('whole-bar')) {
  say('Whole bar on its whole line …');
  const { lines: got, failed } = tsx('packages/line/bench/whole-bar.ts');
  if (failed) row('whole bar', 'failed', '', false, failed);
  else {
    const [b] = got;
    lines.push(b);
    row(`whole bar, cold (${b.quantities} quantities)`, `${b.evaluate_cold_ms} ms`, '≤ 0.5 ms', b.evaluate_cold_ms <= 0.5);
    for (const [key, words] of [
      ['change_price_ms', 'a price changed'],
      ['change_moisture_ms', 'a moisture changed'],
      ['change_slab_speed_ms', 'the slab speed changed'],
      ['change_coat_ms', 'the coat changed'],
    ]) {
      row(words, `${b[key]} ms`, '≤ 0.1 ms', b[key] <= 0.1);
    }
    row('the plant read from its files', `${b.load_ms} ms`, '', true);
  }
}

if (wanted('vary')) {
  say('Sixty formulas over 100 000 samples, beside numpy …');
  const with_ = python();
  const numpy = with_
    ? jsonLines(with_, [join(root, 'packages/chain/bench/race-numpy.py'), draws, '100000', '9'], { OMP_NUM_THREADS: '1' })
    : { failed: 'no python3 with numpy on this machine' };
  const { lines: got, failed } = existsSync(draws) ? tsx('packages/chain/bench/vary.ts', draws) : tsx('packages/chain/bench/vary.ts');
  if (failed) row('vary', 'failed', '', false, failed);
  else {
    const long = ['means', 'sds', 'p5', 'p50', 'p95'];
    lines.push(...got.map((line) => Object.fromEntries(Object.entries(line).filter(([key]) => !long.includes(key)))));
    const given = got.find((line) => line.case.includes('given draws'));
    if (given && numpy.lines) {
      const other = numpy.lines.find((line) => line.ms !== undefined) ?? numpy.lines[0];
      const ms = other.ms ?? other.median_ms;
      lines.push({ case: 'numpy, same draws', ms });
      const drawn = got.find((line) => line.case.includes('drawn too'));
      row(
        '60 formulas, 100 000 given draws, one core',
        `${given.ms} ms; numpy ${ms} ms`,
        'at least 2 times as fast',
        ms / given.ms >= 2,
        `${(ms / given.ms).toFixed(2)} times as fast; numpy evaluates with vector instructions in ${other.evaluate_ms} ms, its percentiles take the rest`,
      );
      if (drawn && other.draw_ms !== undefined) {
        const whole = other.draw_ms + ms;
        lines.push({ case: 'numpy, drawing too', ms: whole });
        row(
          'the same, drawing included',
          `${drawn.ms} ms; numpy ${whole.toFixed(1)} ms`,
          '',
          true,
          `${(whole / drawn.ms).toFixed(2)} times as fast; ${drawn.samples} even points here, 100 000 random ones there, which numpy draws once, cold`,
        );
      }
    } else
      row(
        '60 formulas, 100 000 draws',
        given ? `${given.ms} ms` : 'no draws',
        'at least 2 times as fast as numpy',
        false,
        numpy.failed ?? 'no draws were written',
      );
    const even = got.find((line) => line.case === 'relative error of means' && line.samples === 1024);
    if (even) {
      const least = Math.min(...even.fewer_times);
      row(
        'even points at equal error of the mean',
        `${least} times fewer samples than random draws`,
        'at least 70 times',
        least >= 70,
        'means only; tails gain little',
      );
    }
  }
}

if (wanted('graph')) {
  say('A graph of 660 quantities …');
  const { lines: got, failed } = tsx('packages/chain/bench/graph.ts');
  if (failed) row('graph', 'failed', '', false, failed);
  else {
    lines.push(...got);
    for (const line of got)
      row(
        line.case ?? 'graph',
        JSON.stringify({ ...line, case: undefined })
          .replaceAll('"', '')
          .slice(1, -1),
        '',
        true,
      );
  }
}

if (wanted('answers')) {
  say('Answers on demand …');
  const { lines: got, failed } = tsx('packages/line/bench/answers.ts');
  if (failed) row('answers', 'failed', '', false, failed);
  else {
    lines.push(...got);
    const limits = { 'slab history, 200 cells, fat setting': 1, 'tunnel history': 5, 'roast log of 100,000 lines': 200 };
    for (const line of got) {
      const limit = limits[line.case];
      const note = line.judge_ms === undefined ? '' : `reading ${line.read_ms}, table ${line.table_ms}, judging ${line.judge_ms}`;
      row(line.case, `${line.ms} ms`, limit === undefined ? '' : `≤ ${limit} ms`, limit === undefined || line.ms <= limit, note);
    }
  }
}

/** The quickest of a ladder that is at least as exact as asked. */
const atError = (list, key, error) =>
  list.filter((line) => line[key] <= error).reduce((best, line) => (best && best.ms <= line.ms ? best : line), undefined);

if (wanted('solvers')) {
  say('The slab and the moisture of a year, beside scipy …');
  const with_ = python();
  const reference = join(folder, 'migration.json');
  for (const [what, key, error, alternative, ours] of [
    ['slab', 'error_k', 0.02, ['bench/alternatives/slab-scipy.py'], ['packages/science/bench/slab.ts']],
    [
      'migration',
      'error_aw',
      0.00035,
      ['bench/alternatives/migration-scipy.py', reference],
      ['packages/science/bench/migration.ts', reference],
    ],
  ]) {
    const other = with_
      ? jsonLines(with_, [join(root, alternative[0]), ...alternative.slice(1)], { OMP_NUM_THREADS: '1' })
      : { failed: 'no python3 with numpy on this machine' };
    if (!other.lines?.length) {
      row(what, 'not run', 'at equal error', false, other.failed ?? 'no scipy on this machine');
      continue;
    }
    const { lines: got, failed } = tsx(...ours);
    if (failed) {
      row(what, 'failed', '', false, failed);
      continue;
    }
    const [here, there] = [atError(got, key, error), atError(other.lines, key, error)];
    if (!here || !there) continue;
    lines.push({ ...here, beside: there });
    row(
      `${what} at an error of ${error} ${what === 'slab' ? 'K' : 'in water activity'}`,
      `${here.ms} ms (${here.cells} cells); ${there.method} ${there.ms} ms (${there.cells} cells)`,
      'quicker at equal error',
      here.ms <= there.ms,
      `${(there.ms / here.ms).toFixed(1)} times as fast as the quickest of ${other.lines.length} compiled runs`,
    );
  }
}

if (wanted('sheet')) {
  say('The command from start to end …');
  const times = Array.from({ length: 6 }, () => {
    const started = performance.now();
    spawnSync(process.execPath, [join(root, 'apps/cli/bin/barwright.mjs'), 'sheet', 'examples/pellamoor', '--json'], { cwd: root });
    return performance.now() - started;
  })
    .slice(1)
    .sort((a, b) => a - b);
  lines.push({ case: 'barwright sheet --json', ms: times[2] });
  row('barwright sheet, process and all', `${Math.round(times[2])} ms`, '', true);
}

if (wanted('paint') && existsSync(join(root, 'apps/web/bench/paint.ts'))) {
  say('The screens in Chromium …');
  const browser = await findBrowser();
  if (!browser.path) row('screens', 'not run', 'p95 ≤ 16 ms', false, browser.sentence);
  else {
    const { lines: got, failed } = jsonLines(join(root, 'node_modules/.bin/tsx'), [join(root, 'apps/web/bench/paint.ts'), '--runs', '21'], {
      BARWRIGHT_BROWSER: browser.path,
      BARWRIGHT_BROWSER_ARGS: browser.args.join(' '),
      ...browser.env,
    });
    if (failed) row('screens', 'failed', 'p95 ≤ 16 ms', false, failed);
    else {
      const [{ first_contentful_paint: paint, script_before_first_picture: script, repaint_ms: repaint }] = got;
      lines.push(got[0]);
      row(
        'first contentful paint',
        `${paint.section_ms} ms; an empty page ${paint.empty_page_ms} ms`,
        '≤ 1.3 times',
        paint.ratio <= 1.3,
        `${paint.ratio} times`,
      );
      row('script before the first picture', `${script.kilobytes} kB compressed`, '≤ 250 kB', script.kilobytes <= 250);
      row(
        'drag to repaint, work of the page, p95',
        `${repaint.needs.p95} ms over ${repaint.moves} moves`,
        '≤ 16 ms',
        repaint.needs.p95 <= 16,
      );
      row('drag to repaint, until a frame shows it, p95', `${repaint.seen.p95} ms`, '', true, 'waits for the next frame too');
    }
  }
}

rmSync(folder, { recursive: true, force: true });
for (const line of lines) say(JSON.stringify(line));
say('');
const width = (key) => Math.max(...rows.map((r) => r[key].length));
for (const r of rows)
  say(
    `${r.met ? '    ' : 'act '}${r.what.padEnd(width('what'))}  ${r.ours.padEnd(width('ours'))}  ${r.goal.padEnd(width('goal'))}  ${r.note}`,
  );

if (process.argv.includes('--write')) {
  const [{ model }] = cpus();
  const text = `# Benchmarks

Made by \`npm run bench -- --write\` on ${new Date().toISOString().slice(0, 10)}, Node ${process.version}, ${cpus().length} × ${model.trim()}. One run on a shared, noisy machine: read the ratios.

| what | here | goal | |
|---|---|---|---|
${rows.map((r) => `| ${r.what} | ${r.ours} | ${r.goal} | ${r.met ? '' : '**not met** '}${r.note} |`).join('\n')}

What is the method and what is the language: the equal-error figure is the method (evenly spread points against random draws) and holds for means only; the 60-formula race is the same method in another language, on the same draws with the same outputs. The cold and changed figures have no alternative beside them; a spreadsheet of 500 formulas takes milliseconds for the same.
`;
  writeFileSync(join(root, 'docs/benchmarks.md'), text);
  say('\nWritten to docs/benchmarks.md');
}
