import type { FastifyServerOptions } from 'fastify';
import { serializerCompiler, validatorCompiler } from 'fastify-type-provider-zod';

/**
 * Requests and answers go through the zod schemas of their routes. Given when the app is made, not set afterwards, so that
 * the framework does not load its own schema compilers, which took most of the time of a start.
 */
export const zodCompilers = {
  compilersFactory: { buildValidator: () => validatorCompiler, buildSerializer: () => serializerCompiler },
} as unknown as NonNullable<FastifyServerOptions['schemaController']>;
