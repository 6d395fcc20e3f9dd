export { findBar, plantChain, UnknownBar, type PlantChain } from './plant-chain.js';
