import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
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

describe('README', () => {
  const readme = readFileSync(join(root, 'README.md'), 'utf8');

  it('shows a program that runs and prints what it says', () => {
    const program = /```ts\n([^]*?)```/.exec(readme)![1]!;
    const folder = mkdtempSync(join(root, 'docs/examples/.readme-'));
    try {
      writeFileSync(join(folder, 'readme.ts'), program);
      const run = spawnSync(process.execPath, ['--import', 'tsx', join(folder, 'readme.ts')], { cwd: root, encoding: 'utf8' });
      expect(run.stderr).toBe('');
      expect(run.status).toBe(0);
      expect(run.stdout).toMatch(/^0\.0\d+ /);
      expect(run.stdout).toContain('aw above');
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  });

  it('names only commands that there are, each of which runs', () => {
    const commands = [...readme.matchAll(/^npx barwright (.*?)(?:\s+#.*)?$/gm)].map((match) => match[1]!);
    expect(commands.length).toBeGreaterThanOrEqual(9);
    const known = spawnSync(process.execPath, ['apps/cli/bin/barwright.mjs', '--help'], { cwd: root, encoding: 'utf8' }).stdout;
    for (const command of commands) expect(known).toMatch(new RegExp(`^ {2}${command.split(' ')[0]!}\\b`, 'm'));
  });
});
