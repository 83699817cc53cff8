export type { MonthReport, SumpMonth } from './answer-types.ts'
export { monthCsv } from './month-csv.ts'
export { type MonthQuestion, readMonth } from './read-month.ts'
