import { calendarDaysBetween, sayWhen, type WhenReader } from '../say/when.ts'

/** What the server knows of the book's backups. */
export interface Backups {
  made: { at: string; entries: number; attachments: number; damagedAttachments: number; bytes: number } | null
  tried: { at: string; good: boolean; seconds: number | null; error: string | null } | null
  running: boolean
}

/** Days after which a book should have been backed up again; common practice: every day somebody writes. */
const overdueDays = 2

/** Whether the last backup is too old to be quiet about; a book nobody has backed up is. */
export function isOverdue({ made }: Backups, reader: WhenReader): boolean {
  return made === null || calendarDaysBetween(made.at, reader.now, reader.timeZone) > overdueDays
}

/** "Last backed up today 07:42: 4 120 entries, 12 attachments, 1.4 MB." */
export function sayMade({ made }: Backups, reader: WhenReader): string {
  if (made === null) return 'Not backed up yet by this program.'
  const attachments = made.attachments === 0 ? '' : `, ${count(made.attachments, 'attachment')}`
  const damaged =
    made.damagedAttachments === 0
      ? ''
      : ` ${count(made.damagedAttachments, 'attachment')} had to be left out: damaged on the disk.`
  return `Last backed up ${sayWhen(made.at, reader)}: ${count(made.entries, 'entry', 'entries')}${attachments}, ${sayBytes(made.bytes)}.${damaged}`
}

/** How the last drill went. */
export function sayTried({ tried }: Backups, reader: WhenReader): string {
  if (tried === null) return 'Whether a backup can be restored was not tried yet.'
  const when = sayWhen(tried.at, reader)
  if (!tried.good) return `The drill went wrong ${when}: ${tried.error ?? 'nobody knows why'}`
  const took =
    tried.seconds === null ? '' : ` in ${tried.seconds < 10 ? tried.seconds.toFixed(1) : Math.round(tried.seconds)} s`
  return `Restored, walked and compared for a trial ${when}${took}: it holds.`
}

const count = (n: number, one: string, many = `${one}s`) => `${n} ${n === 1 ? one : many}`

/** Bytes by powers of a thousand, as disks are sold. */
export function sayBytes(bytes: number): string {
  if (bytes < 1000) return `${bytes} bytes`
  const [unit, size] = bytes < 1e6 ? ['KB', 1e3] : bytes < 1e9 ? ['MB', 1e6] : (['GB', 1e9] as const)
  const figure = bytes / Number(size)
  return `${figure < 10 ? figure.toFixed(1) : Math.round(figure)} ${unit}`
}
