import { say, sayNumber } from '@sumpbook/fluid'
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
  if (made === null) return say('Not backed up yet by this program.')
  const { entries, attachments, damagedAttachments } = made
  const told = { when: sayWhen(made.at, reader), entries, attachments, size: sayBytes(made.bytes) }
  const last =
    attachments === 0
      ? say('Last backed up {when}: {entries, plural, one {# entry} other {# entries}}, {size}.', told)
      : say(
          'Last backed up {when}: {entries, plural, one {# entry} other {# entries}}, {attachments, plural, one {# attachment} other {# attachments}}, {size}.',
          told,
        )
  if (damagedAttachments === 0) return last
  const left = say(
    '{count, plural, one {# attachment} other {# attachments}} had to be left out: damaged on the disk.',
    { count: damagedAttachments },
  )
  return `${last} ${left}`
}

/** How the last drill went. */
export function sayTried({ tried }: Backups, reader: WhenReader): string {
  if (tried === null) return say('Whether a backup can be restored was not tried yet.')
  const when = sayWhen(tried.at, reader)
  if (!tried.good) {
    return tried.error === null
      ? say('The drill went wrong {when}: nobody knows why', { when })
      : say('The drill went wrong {when}: {error}', { when, error: tried.error })
  }
  if (tried.seconds === null) return say('Restored, walked and compared for a trial {when}: it holds.', { when })
  const seconds = sayNumber(tried.seconds, tried.seconds < 10 ? 1 : 0)
  return say('Restored, walked and compared for a trial {when} in {seconds} s: it holds.', { when, seconds })
}

/** Bytes by powers of a thousand, as disks are sold. */
export function sayBytes(bytes: number): string {
  if (bytes < 1000) return say('{count} bytes', { count: sayNumber(bytes, 0) })
  const [unit, size] = bytes < 1e6 ? ['KB', 1e3] : bytes < 1e9 ? ['MB', 1e6] : (['GB', 1e9] as const)
  const figure = bytes / Number(size)
  return `${sayNumber(figure, figure < 10 ? 1 : 0)} ${unit}`
}
