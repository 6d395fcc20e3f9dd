import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const root = fileURLToPath(new URL('../../../', import.meta.url));
const programs = readdirSync(join(root, 'docs/examples')).filter((name) => name.endsWith('.ts'));
/** Thin spaces are spaces. */
const lines = (text: string) =>
  text
    .trim()
    .replaceAll(/[\u00a0\u2009\u202f]/g, ' ')
    .split('\n');

describe('docs/examples', () => {
  it('holds programs', () => expect(programs.length).toBeGreaterThanOrEqual(3));

  it.each(programs)('%s prints what stands at its end', (name) => {
    const run = spawnSync(process.execPath, ['--import', 'tsx', join('docs/examples', name)], { cwd: root, encoding: 'utf8' });
    expect(run.stderr).toBe('');
    expect(run.status).toBe(0);
    const promised = readFileSync(join(root, 'docs/examples', name), 'utf8').split('\n// Prints\n')[1]!;
    expect(lines(run.stdout)).toEqual(lines(promised).map((line) => line.replace(/^\/\/ /, '')));
  });
});
