import { dayIn } from '../say/when.ts'

/** Longer than this nothing is put off; the book lets nothing wait longer either. */
export const longestDays = 31

/** Ends that are one tap away: the next shift, tomorrow, a week, a day of one's own. */
export type EndChoice = 'shift' | 'tomorrow' | 'week' | 'day'

/** The end as an entry has it: an instant, or the day on which it is back. Null where the day is missing, gone or too far. */
export function endOf(
  choice: EndChoice,
  { now, shiftEnds, timeZone, day }: { now: string; shiftEnds: string; timeZone: string; day: string },
): string | null {
  const today = dayIn(now, timeZone)
  switch (choice) {
    case 'shift':
      return shiftEnds
    case 'tomorrow':
      return daysAfter(today, 1)
    case 'week':
      return daysAfter(today, 7)
    case 'day':
      return /^\d{4}-\d\d-\d\d$/.test(day) && day > today && day <= daysAfter(today, longestDays) ? day : null
  }
}

const daysAfter = (day: string, days: number) =>
  new Date(Date.parse(`${day}T00:00:00Z`) + days * 86_400_000).toISOString().slice(0, 10)
