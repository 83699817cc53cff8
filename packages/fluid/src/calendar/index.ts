export { type DayNumber, dayNumber, dayText, isDay, type Term, termEnd } from './day-number.ts'
