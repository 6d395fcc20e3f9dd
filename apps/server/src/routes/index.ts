import type { Routes } from './context.js';
import { dayRoutes } from './days.js';
import { evidenceRoutes } from './evidence.js';
import { healthRoutes } from './health.js';
import { modelRoutes } from './models.js';
import { paperRoutes } from './papers.js';
import { plantRoutes } from './plants.js';
import { versionRoutes } from './versions.js';

/** Every topic, in the order of the API description. A new topic is a new file and a line here. */
export const routes: readonly Routes[] = [healthRoutes, plantRoutes, versionRoutes, dayRoutes, paperRoutes, modelRoutes, evidenceRoutes];
