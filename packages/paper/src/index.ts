export { runSheet, type ChargeList, type ChargeRow, type RunSheet, type SheetOptions, type SheetRow } from './content.js';
export { runSheetHtml } from './html.js';
export { layOut, runSheetPdf } from './pdf.js';
