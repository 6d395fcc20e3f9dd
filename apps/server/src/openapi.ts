import type { FastifyInstance } from 'fastify';
import { jsonSchemaTransform } from 'fastify-type-provider-zod';
import { zodCompilers } from './compilers.js';

/**
 * OpenAPI 3.1 of the routes. It is made on a second, never listening app when somebody first asks, so that a start does not
 * wait for it and the description cannot differ from the routes.
 */
export async function describeApi(register: (app: FastifyInstance) => Promise<void>, version: string): Promise<object> {
  const [{ default: Fastify }, { default: swagger }] = await Promise.all([import('fastify'), import('@fastify/swagger')]);
  const app = Fastify({ schemaController: zodCompilers, exposeHeadRoutes: false });
  await app.register(swagger, {
    openapi: {
      openapi: '3.1.0',
      info: {
        title: 'Barwright',
        version,
        description: 'One layered, enrobed bar, one line, one day as a single chain of numbers. Refusals are RFC 9457 problem details.',
        license: { name: 'MIT', identifier: 'MIT' } as { name: string },
      },
      servers: [{ url: '/' }],
    },
    transform: jsonSchemaTransform,
  });
  await register(app);
  await app.ready();
  const document = app.swagger();
  await app.close();
  return document;
}
