import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { importPlant } from '@barwright/store';
import { describe, expect, it } from 'vitest';
import { openDefinitions } from '../src/definitions.js';
import { firstFrames } from '../src/first-frame.js';
import { start } from './server.js';

const folder = join(import.meta.dirname, '../../../examples/pellamoor');
const files = new Map(
  ['plant.yaml', 'materials.yaml', 'components.yaml', 'checks.yaml', 'plan.yaml', 'bars/kestrowan.yaml', 'lines/line-2.yaml'].map(
    (file) => [file, readFileSync(join(folder, file), 'utf8')] as const,
  ),
);

/** Asks until the frame has been drawn. */
async function drawn(frame: ReturnType<typeof firstFrames>, path: string): Promise<string> {
  for (let i = 0; i < 200; i++) {
    const html = (await frame(path)) ?? '';
    if (html.includes('first-cut')) return html;
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
  throw new Error(`No frame of ${path} in ten seconds`);
}

describe('the first frame', () => {
  it('gives the name at once, and the outline of the bar from the next page on', async () => {
    const { store } = await start();
    await importPlant(store, { id: 'pellamoor', name: 'Pellamoor Works', files, author: 'test', reason: 'test' });
    const frame = firstFrames(store, openDefinitions(store));
    const first = (await frame('/pellamoor/kestrowan/section')) ?? '';
    expect(first).toContain('Barwright');
    expect(first).not.toContain('first-cut');
    const html = await drawn(frame, '/pellamoor/kestrowan/section');
    expect(html).toContain('Kestrowan, 48 g single bar.');
    expect(html).toContain('Pellamoor Works, Line 2');
    expect(html).not.toMatch(/style=|<script/);
    // 26.8 mm at 22 px to the millimetre, and a height for each of its two layers.
    expect(html).toContain('.first-cut{width:590px');
    expect(html.match(/first-layer-\d\{height:/g)).toHaveLength(2);
    expect(html.length).toBeLessThan(8000);
  });

  it('draws the plant that was saved last where the address names none', async () => {
    const { store } = await start();
    await importPlant(store, { id: 'pellamoor', name: 'Pellamoor Works', files, author: 'test', reason: 'test' });
    expect(await drawn(firstFrames(store, openDefinitions(store)), '/')).toContain('Kestrowan');
  });

  it.each(['/', '/nobody', '/%zz'])('is the name alone at %s where there is no plant', async (path) => {
    const { store } = await start();
    expect(await firstFrames(store, openDefinitions(store))(path)).toContain('Barwright');
  });
});
