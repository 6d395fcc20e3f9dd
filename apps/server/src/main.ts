/** Starts the server with the example plants and the built screens of this source tree. */
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { plantFolders } from './examples.js';
import { defaultPort, serve } from './serve.js';

const { values } = parseArgs({
  options: { port: { type: 'string' }, data: { type: 'string' }, web: { type: 'string' }, examples: { type: 'string' } },
});
const beside = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

try {
  const serving = await serve({
    port: portFrom(values.port ?? process.env.BARWRIGHT_PORT),
    webRoot: values.web ?? beside('../../web/dist'),
    plants: plantFolders(values.examples ?? beside('../../../examples')),
    ...(values.data === undefined ? {} : { dataDir: values.data }),
  });
  console.log(`Barwright is at ${serving.url} (data in ${serving.dataDir}); Ctrl-C ends it`);
  await serving.closed;
  process.exit(0);
} catch (error) {
  console.error((error as Error).message);
  process.exit(1);
}

function portFrom(text: string | undefined): number {
  if (text === undefined) return defaultPort;
  const port = Number(text);
  if (!Number.isInteger(port) || port < 0 || port > 65_535) throw new Error(`The port is '${text}', but 0 to 65535 is expected`);
  return port;
}
