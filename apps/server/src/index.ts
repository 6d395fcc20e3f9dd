export { createServer, type ServerOptions } from './server.js';
export { defaultPort, serve, type ServeOptions, type Serving } from './serve.js';
export { dataFolder } from './data-folder.js';
export { plantFolders } from './examples.js';
export { firstFramePlaceholder, type FirstFrame } from './web.js';
export { noncePlaceholder } from './security.js';
export { serverErrorCodes, ServerError, type ProblemBody, type ServerErrorCode } from './errors.js';
