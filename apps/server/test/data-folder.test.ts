import { mkdirSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { dataFolder, refuseSourceTree } from '../src/data-folder.js';
import { emptyFolder } from './server.js';

describe('dataFolder', () => {
  it.each<[NodeJS.Platform, Record<string, string>, string]>([
    ['linux', {}, '/home/me/.local/share/barwright'],
    ['linux', { XDG_DATA_HOME: '/data' }, '/data/barwright'],
    ['linux', { XDG_DATA_HOME: 'data' }, '/home/me/.local/share/barwright'],
    ['darwin', { XDG_DATA_HOME: '/data' }, '/home/me/Library/Application Support/Barwright'],
    ['win32', { LOCALAPPDATA: '/local' }, '/local/Barwright'],
    ['win32', {}, '/home/me/AppData/Local/Barwright'],
    ['darwin', { BARWRIGHT_DATA: '/elsewhere' }, '/elsewhere'],
    ['linux', { BARWRIGHT_DATA: 'here' }, resolve('here')],
  ])('on %s with %j is %s', (platform, env, folder) => expect(dataFolder(env, platform, '/home/me')).toBe(folder));
});

describe('refuseSourceTree', () => {
  const here = fileURLToPath(new URL('.', import.meta.url));
  it.each([here, join(here, 'not', 'there', 'yet')])('refuses %s', (folder) => {
    expect(() => refuseSourceTree(folder)).toThrow(expect.objectContaining({ code: 'DATA_FOLDER_IN_SOURCE' }));
  });
  it('lets other folders be, also those of other programs', () => {
    const folder = emptyFolder();
    writeFileSync(join(folder, 'package.json'), '{"name": "another"}');
    mkdirSync(join(folder, 'data'));
    expect(() => refuseSourceTree(join(folder, 'data'))).not.toThrow();
  });
});
