import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { fileURLToPath } from 'node:url';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';

const root = fileURLToPath(new URL('../../../', import.meta.url));
const page = readFileSync(join(root, 'docs/cli.md'), 'utf8');
const run = (command: string) =>
  spawnSync(command.replace(/^barwright/, `"${process.execPath}" apps/cli/bin/barwright.mjs`), {
    cwd: root,
    shell: true,
    encoding: 'utf8',
    env: { ...process.env, NO_COLOR: '1' },
  });
const help = (...args: string[]) => run(['barwright', ...args, '--help'].join(' ')).stdout;
const commands = [...help().matchAll(/^ {2}([a-z]+) /gm)].map((match) => match[1]!).filter((name) => name !== 'help');
/** Columns may move: only the words count, and thin spaces are spaces. */
const plain = (text: string) => text.replaceAll(/\s+/g, ' ').trim();

const sections = page
  .split(/^## /m)
  .slice(1)
  .map((text) => {
    const blocks = (kind: string) => [...text.matchAll(new RegExp(`\`\`\`${kind}\\n([^]*?)\`\`\``, 'g'))].map((match) => match[1]!);
    return { name: text.split('\n', 1)[0]!, text, commands: blocks('sh'), texts: blocks('text') };
  });
const scratch = mkdtempSync(join(tmpdir(), 'barwright-docs-'));
afterAll(() => rmSync(scratch, { recursive: true }));

describe('docs/cli.md', () => {
  it('is about the commands that there are', () => {
    expect(commands.length).toBeGreaterThanOrEqual(13);
    expect(sections.map(({ name }) => name).sort()).toEqual([...commands].sort());
  });

  it.each(commands)('shows the examples and the options of %s', (name) => {
    const { text, commands: shown } = sections.find((section) => section.name === name)!;
    const printed = help(name);
    const examples = printed
      .slice(printed.search(/^Examples?:/m))
      .split('\n')
      .filter((line) => line.trim().startsWith('barwright '));
    expect(examples.length).toBeGreaterThan(0);
    for (const example of examples) expect(shown.map(plain)).toContain(plain(example));
    const common = page.slice(0, page.indexOf('\n## '));
    const options = [...printed.matchAll(/^ {2}(?:-\w, )?(--[a-z-]+)/gm)].map((match) => match[1]!).filter((option) => option !== '--help');
    expect(options.filter((option) => !text.includes(option) && !common.includes(option))).toEqual([]);
  });

  it.each(sections.filter(({ texts }) => texts.length > 0))('shows what $name prints', ({ commands: shown, texts }) => {
    const [input, output] = texts.length > 1 ? [texts[0]!, texts[1]!] : [undefined, texts[0]!];
    const cooks = join(scratch, 'cooks.csv');
    if (input) writeFileSync(cooks, input);
    const { stdout, status } = run(shown[0]!.trim().replace('cooks.csv', cooks));
    expect(status).toBe(0);
    const printed = stdout.split('\n').map(plain);
    const lines = output
      .split('\n')
      .map(plain)
      .filter((line) => line !== '' && line !== '…');
    const missing = lines.filter((line) =>
      line.endsWith(' …') ? !printed.some((other) => other.startsWith(line.slice(0, -2))) : !printed.includes(line),
    );
    expect(lines.length).toBeGreaterThan(0);
    expect(missing).toEqual([]);
  });
});
