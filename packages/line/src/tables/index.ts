export { BadTable, tableOf } from './table.js';
export { headerOf } from './header.js';
export { readClock, type Clock } from './clock.js';
export { roastTable, type RoastTable } from './roast-table.js';
export { temperTable, type TemperTable } from './temper-table.js';
export { tunnelTable, type TunnelTable } from './tunnel-table.js';
export { flowTable, type FlowTable } from './flow-table.js';
export { stopsTable, type Stop } from './stops-table.js';
export { countsTable, type CountsTable } from './counts-table.js';
