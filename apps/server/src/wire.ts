/** The plant package's JSON form, by its file: it has no door of its own yet. */
export { decodeLoaded, encodeLoaded, type WireLoaded } from '../../../packages/plant/src/wire.js';
