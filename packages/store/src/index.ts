export { closeStore, openStore, type Store } from './store.js';
export { findPlant, importPlant, listPlants, type NewPlant, type PlantInfo } from './plants.js';
export { getVersion, insertVersion, listVersions, type Newer, type Version } from './versions.js';
export type { VersionInfo } from './rows.js';
export type { NewVersion } from './save.js';
export { verifyHistory, type HistoryFinding } from './verify.js';
export { StoreError, storeErrorCodes, type StoreErrorCode } from './errors.js';
export { idFromName } from './entry.js';
