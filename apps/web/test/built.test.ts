import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { brotliCompressSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';

const dist = join(import.meta.dirname, '../dist');
const scripts = readdirSync(join(dist, 'assets')).filter((name) => name.endsWith('.js'));
const text = (name: string) => readFileSync(join(dist, 'assets', name), 'utf8');

describe('what is built', () => {
  it('keeps the file parser and the schemas out of the browser', () => {
    for (const name of scripts) {
      expect(text(name), name).not.toMatch(/yaml-language-server|YAMLParseError|ZodError|\$ZodType/);
    }
  });

  it('keeps the engine in the worker', () => {
    const worker = scripts.filter((name) => name.startsWith('worker-'));
    expect(worker).toHaveLength(1);
    const engine = 'Σ share · price / yield';
    expect(text(worker[0]!)).toContain(engine);
    for (const name of scripts) if (!name.startsWith('worker-')) expect(text(name), name).not.toContain(engine);
  });

  it('needs less than 250 kB of script before the first picture', () => {
    const early = scripts.filter((name) => /^(index|worker|jsx-runtime)-/.test(name));
    const bytes = early.reduce((sum, name) => sum + brotliCompressSync(text(name)).length, 0);
    expect(early.length).toBeGreaterThanOrEqual(2);
    expect(bytes).toBeLessThan(250_000);
  });

  it('fetches nothing but the mark of the tab before the first frame is painted', () => {
    const page = readFileSync(join(dist, 'index.html'), 'utf8');
    expect(page.replace(/<link rel="icon"[^>]*>/, '')).not.toMatch(/<link|<img|<script[^>]*\ssrc=/);
    expect(page.length).toBeLessThan(4000);
  });

  it('fetches nothing from elsewhere, and evaluates nothing', () => {
    const page = readFileSync(join(dist, 'index.html'), 'utf8');
    expect(page).not.toMatch(/(src|href)="https?:/);
    expect(page).toContain('<!--first-frame-->');
    for (const name of scripts) expect(text(name), name).not.toMatch(/\beval\(|new Function\(/);
  });
});
