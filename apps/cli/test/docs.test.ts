import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

const root = fileURLToPath(new URL('../../../', import.meta.url));
const page = readFileSync(join(root, 'docs/cli.md'), 'utf8');
const help = (...args: string[]) =>
  spawnSync(process.execPath, [join(root, 'apps/cli/bin/barwright.mjs'), ...args, '--help'], { cwd: root, encoding: 'utf8' }).stdout;
const commands = [...help().matchAll(/^ {2}([a-z]+) /gm)].map((match) => match[1]!).filter((name) => name !== 'help');

describe('docs/cli.md', () => {
  it('is about the commands that there are', () => expect(commands.length).toBeGreaterThanOrEqual(13));

  it.each(commands)('names %s and shows the example of its help', (name) => {
    expect(page).toContain(`## ${name}\n`);
    const example = /^Example:\n\s+(.*)$/m.exec(help(name))![1]!;
    const plain = (text: string) => text.replaceAll(/\s+/g, ' ');
    expect(plain(page)).toContain(plain(example));
  });
});
