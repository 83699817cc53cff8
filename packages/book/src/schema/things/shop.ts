import { z } from 'zod'
import { day, name } from '../values.ts'
import { additive } from './additive.ts'
import { costs } from './costs.ts'
import { guidance } from './guidance.ts'
import { upkeepTask } from './upkeep-task.ts'

const timeZone = z.string().refine(isTimeZone, { error: 'a time zone of the IANA list, such as Europe/Berlin' })

/** The shop a book belongs to: one book is one shop. */
export const shop = z.looseObject({
  name: name.optional(),
  timeZone: timeZone.optional(),
  units: z.enum(['us', 'metric', 'imperial']).optional(),
  currency: z
    .string()
    .regex(/^[A-Z]{3}$/, { error: 'a currency of ISO 4217, such as EUR' })
    .optional(),
  /** ISO days of the week, 1 is Monday. */
  workDays: z.array(z.int().min(1).max(7)).max(7).optional(),
  /** Both days included. */
  shutdowns: z
    .array(
      z
        .looseObject({ from: day, to: day })
        .refine(({ from, to }) => from <= to, { error: 'a day not before `from`', path: ['to'] }),
    )
    .optional(),
  /** When its shifts begin on a working day, on the shop's clock; one shift from 06:00 where nobody said. */
  shifts: z
    .array(z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/, { error: 'a time of day such as 06:00' }))
    .min(1)
    .max(6)
    .optional(),
  /** Days after which every sump is read again, whatever is expected of it; a week where nobody said. */
  readEveryDays: z.int().min(1).max(31).optional(),
  /** Whose guidance the shop goes by; without it none. */
  guidance: guidance.optional(),
  costs: costs.optional(),
  /** What goes into a mix beside concentrate and water, by label. */
  additives: z.array(additive).max(200).optional(),
  /** What comes back in so many days: strainers, filters, checks. */
  upkeep: z.array(upkeepTask).max(500).optional(),
})

export type Shop = z.infer<typeof shop>

function isTimeZone(zone: string): boolean {
  try {
    new Intl.DateTimeFormat('en', { timeZone: zone })
    return true
  } catch {
    return false
  }
}
