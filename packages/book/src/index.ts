/** The records: what may be written, the journal that keeps it, and what follows from it. */

export * from './attachments/index.ts'
export { type BackupReport, backUp } from './backup/back-up.ts'
export { backupDrill, type FreshBackup, freshBackup } from './backup/backup-job.ts'
export { type DrillReport, restoreDrill } from './backup/drill.ts'
export { type LastBackup, lastBackup, noteBackup, noteDrill } from './backup/last-backup.ts'
export { type RestoreReport, restore } from './backup/restore.ts'
export { type Book, openBook } from './book.ts'
export type { BookParts, TodayReader } from './book-parts.ts'
export { type Answered, type Calculation, calculations, type Remarks, runCalculation } from './calc/index.ts'
export { moveStore } from './copy/move-store.ts'
export { type Cost, type Habits, type Lives, readCost, readHabits, readLives } from './cost/index.ts'
export type { Observed, SumpDiagnosis } from './diagnosis/answer-types.ts'
export { type DiagnosisQuestion, readDiagnosis } from './diagnosis/read-diagnosis.ts'
export type { SumpDose, SumpDoses } from './dose/answer-types.ts'
export { type DoseOptions, readDoses } from './dose/read-dose.ts'
export { BookError, type ErrorCode, type Fault, refusal, sayFault } from './errors.ts'
export type { EstimateDocument, Outlook, SumpAnswer } from './estimate/answer-types.ts'
export { type EstimateQuestion, readAhead } from './estimate/asked.ts'
export { estimateFile } from './estimate/file-estimate.ts'
export { exportCsv, exportWorkbook } from './export/table/export-table.ts'
export { askedTimes } from './guidance/asked-times.ts'
export { readCalendar, readSumpCalendar } from './guidance/read-calendar.ts'
export { readGuidance } from './guidance/read-guidance.ts'
export type { HandoverNote, Handovers } from './handover/answer-types.ts'
export { readHandovers } from './handover/read-handovers.ts'
export type { ImportOptions } from './import/import-file.ts'
export { fileSource, type SheetSource, sourceOf } from './import/sheet/sheet-source.ts'
export type { ImportReport, SheetMap } from './import/sheet-types.ts'
export { type StoreFault, sayStoreFault } from './integrity/fault-list.ts'
export { type KnownHead, type StoreReport, verifyStore } from './integrity/verify-store.ts'
export {
  type Claim,
  type CleanoutPlan,
  type Job,
  type JobLine,
  type Jobs,
  readClaims,
  readCleanoutPlan,
  readJob,
  readJobs,
  readSideBySide,
  type SideBySide,
} from './jobs/index.ts'
export { type Measurement, measurementsOf, measuringKinds } from './journal/about.ts'
export { type Envelope, envelopeText, readEnvelope } from './journal/envelope.ts'
export type { JournalFilter } from './journal/journal-filter.ts'
export { type JournalPage, journalPage } from './journal/journal-page.ts'
export { type HistoryLine, type JournalLine, sumpHistory } from './journal/lines.ts'
export { type EntryPage, entryPage } from './journal/one-entry.ts'
export { type Arrival, type ArrivalNote, letIn } from './journal/put.ts'
export { type QuarantinedLine, quarantine } from './journal/quarantine.ts'
export { type MonthReport, monthCsv, readMonth } from './report/index.ts'
export { readAnalytes } from './samples/read-analytes.ts'
export { readSamples } from './samples/read-samples.ts'
export { bookFile, bookFormat } from './schema/book-file.ts'
export { type Entry, entry, entryKinds } from './schema/entries/index.ts'
export { faultsOf } from './schema/faults.ts'
export { readStock, type StockQuestion } from './stock/read-stock.ts'
export type { FluidStock, StockAnswer } from './stock/stock-answer.ts'
export { openStore } from './store/open.ts'
export { defaultSchema, type StorePlace, sayPlace } from './store/place.ts'
export { inMemory, openSqliteStore } from './store/sqlite/open.ts'
export type { OpenOptions, PeopleDoor, Store, StoredEntry } from './store/store.ts'
export type { PersonRow, Tables, TokenRow } from './store/tables.ts'
export { inWalkingOrder } from './today/condition.ts'
export type { Due, DueKind } from './today/due.ts'
export type { SumpItem, SumpNow, Today, TodayDue, TodayItem } from './today/today.ts'
export { readUpkeep, type Upkeep, type UpkeepLine } from './upkeep/index.ts'
export { readWaste, type WasteQuestion } from './waste/read-waste.ts'
export type { PickupLine, WasteAnswer, WasteContainerNow } from './waste/waste-answer.ts'
