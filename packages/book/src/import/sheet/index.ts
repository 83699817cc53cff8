/** The import of a shop's own spreadsheet. */
export { importSheet } from './import-sheet.ts'
export { readSheetMap, sheetMap } from './sheet-map.ts'
export { isWorkbook, type SheetSource, sourceOf } from './sheet-source.ts'
