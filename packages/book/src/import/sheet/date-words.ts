import { plain } from './words.ts'

/** Names of the months in English, German and Spanish, January first. */
const months = [
  'january januar janner enero',
  'february februar febrero',
  'march marz marzo mrz',
  'april abril',
  'may mai mayo',
  'june juni junio',
  'july juli julio',
  'august agosto',
  'september septiembre setiembre',
  'october oktober octubre',
  'november noviembre',
  'december dezember diciembre',
].map((names) => names.split(' '))

const weekdays =
  'monday tuesday wednesday thursday friday saturday sunday montag dienstag mittwoch donnerstag freitag samstag sonnabend sonntag lunes martes miercoles jueves viernes sabado domingo'.split(
    ' ',
  )

/** The month a word names or begins to name with three letters or more; null where it names none. */
export function monthNamed(word: string): number | null {
  const name = plain(word)
  if (name.length < 3) return null
  const month = months.findIndex((names) => names.some((full) => full.startsWith(name)))
  return month === -1 ? null : month + 1
}

/** "Mo., 05.10.2026" without its day of the week. */
export function withoutWeekday(text: string): string {
  const found = /^(\p{L}{2,10})\.?,?\s+(?=\S*\d)/u.exec(text)
  if (found === null) return text
  const word = plain(found[1]!)
  return weekdays.some((day) => day.startsWith(word)) && monthNamed(found[1]!) === null
    ? text.slice(found[0].length)
    : text
}
