export { type MonthQuestion, type MonthReport, readMonth, type SumpMonth } from './read-month.ts'
