import { spawn, type ChildProcessWithoutNullStreams } from 'node:child_process';
import { once } from 'node:events';
import { cpSync, writeFileSync } from 'node:fs';
import { connect, createServer as createSocketServer, type AddressInfo } from 'node:net';
import { networkInterfaces } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { closeStore, listPlants, listVersions, openStore } from '@barwright/store';
import { describe, expect, it } from 'vitest';
import { plantFolders, serve, type ServeOptions, type Serving } from '../src/index.js';
import { afterwards, emptyFolder } from './server.js';

const fixtures = fileURLToPath(new URL('./fixtures', import.meta.url));

async function serving(options: ServeOptions = {}): Promise<Serving & { readonly said: string[] }> {
  const said: string[] = [];
  const running = await serve({ dataDir: emptyFolder(), port: 0, say: (line) => said.push(line), ...options });
  afterwards(running.close);
  return { ...running, said };
}

describe('serve', () => {
  it('answers over real HTTP on this machine only', async () => {
    const { url, port } = await serving();
    expect(url).toBe(`http://127.0.0.1:${port}`);
    const answer = await fetch(`${url}/api/health`);
    expect(answer.status).toBe(200);
    expect(await answer.json()).toMatchObject({ status: 'ok' });
    const outside = Object.values(networkInterfaces())
      .flatMap((list) => list ?? [])
      .find((one) => one.family === 'IPv4' && !one.internal);
    if (outside) await expect(reach(outside.address, port)).rejects.toThrow(/ECONNREFUSED/);
    await expect(reach('127.0.0.1', port)).resolves.toBeUndefined();
  });

  it('takes the next free port when the first is taken, and says so', async () => {
    const taken = createSocketServer().listen(0, '127.0.0.1');
    await once(taken, 'listening');
    afterwards(() => void taken.close());
    const { port: first } = taken.address() as AddressInfo;
    const { port, url, said } = await serving({ port: first });
    expect(port).toBeGreaterThan(first);
    expect(said).toEqual([`Port ${first} is taken; using ${port}`]);
    expect((await fetch(`${url}/api/health`)).status).toBe(200);
  });

  it('starts an empty store with the plants it is given, once', async () => {
    const dataDir = emptyFolder();
    const first = await serving({ dataDir, plants: plantFolders(fixtures) });
    expect(first.said).toEqual(['First run: added the example plants thornby']);
    await first.close();
    const second = await serving({ dataDir, plants: plantFolders(fixtures) });
    expect(second.said).toEqual([]);
    await second.close();
    const store = await openStore(dataDir);
    afterwards(() => closeStore(store));
    expect(await listPlants(store)).toMatchObject([{ id: 'thornby', name: 'Thornby Sweets', latest: 1 }]);
    expect(await listVersions(store, 'thornby')).toHaveLength(1);
  });

  it('leaves out an example that does not load, says why, and starts', async () => {
    const examples = emptyFolder();
    cpSync(fixtures, examples, { recursive: true });
    cpSync(join(fixtures, 'thornby'), join(examples, 'broken'), { recursive: true });
    writeFileSync(join(examples, 'broken', 'bars', 'plainbar.yaml'), 'format: 1\nbar: [\n');
    const { said, url } = await serving({ plants: plantFolders(examples) });
    expect(said[0]).toMatch(/broken was left out: bars\/plainbar\.yaml:\d+: /);
    expect(await (await fetch(`${url}/api/plants`)).json()).toHaveLength(1);
  });

  it('refuses a data folder inside its own source', async () => {
    await expect(serve({ dataDir: join(fixtures, 'data') })).rejects.toMatchObject({ code: 'DATA_FOLDER_IN_SOURCE' });
  });

  it('may be closed twice and lets the port go', async () => {
    const { close, closed, port } = await serving();
    await Promise.all([close(), close()]);
    await closed;
    await expect(reach('127.0.0.1', port)).rejects.toThrow(/ECONNREFUSED/);
  });
});

describe('the program', () => {
  it.each(['SIGINT', 'SIGTERM'] as const)('ends on %s with exit code 0, whatever is open', { timeout: 30_000 }, async (signal) => {
    const data = emptyFolder();
    const { child, url, told } = await program('--port', '0', '--data', data, '--examples', fixtures);
    expect(told()).toContain('thornby');
    expect((await fetch(`${url}/api/plants`, { keepalive: true })).status).toBe(200);
    // A request that never ends, as a live connection would be.
    const slow = connect(Number(new URL(url).port), '127.0.0.1');
    slow.on('error', () => undefined);
    slow.write('POST /api/plants HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\nContent-Length: 1000\r\n\r\n{');
    await new Promise((resolve) => setTimeout(resolve, 100));
    child.kill(signal);
    const [code] = await once(child, 'close');
    expect(code).toBe(0);
    slow.destroy();
    const store = await openStore(data);
    afterwards(() => closeStore(store));
    expect(await listPlants(store)).toHaveLength(1);
  });

  it('says in one line what is wrong and ends with exit code 1', { timeout: 30_000 }, async () => {
    const child = start('--port', 'eighty', '--data', emptyFolder());
    let complaint = '';
    child.stderr.on('data', (bytes) => (complaint += bytes));
    const [code] = await once(child, 'close');
    expect(code).toBe(1);
    expect(complaint).toBe("The port is 'eighty', but 0 to 65535 is expected\n");
  });
});

function start(...args: string[]): ChildProcessWithoutNullStreams {
  const main = fileURLToPath(new URL('../src/main.ts', import.meta.url));
  const child = spawn(process.execPath, ['--import', 'tsx', main, ...args]);
  afterwards(() => void child.kill('SIGKILL'));
  return child;
}

async function program(...args: string[]): Promise<{ child: ChildProcessWithoutNullStreams; url: string; told: () => string }> {
  const child = start(...args);
  let told = '';
  child.stderr.on('data', (bytes) => (told += bytes));
  const url = await new Promise<string>((resolve, reject) => {
    child.stdout.on('data', (bytes) => {
      told += bytes;
      const found = /Barwright is at (\S+)/.exec(told)?.[1];
      if (found) resolve(found);
    });
    child.on('close', () => reject(new Error(told)));
  });
  return { child, url, told: () => told };
}

async function reach(host: string, port: number): Promise<void> {
  const socket = connect(port, host);
  try {
    await once(socket, 'connect');
  } finally {
    socket.destroy();
  }
}
