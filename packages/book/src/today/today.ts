import type { Action, Advice, CheckReason, ExpectedReading, Figure, RecipeBench } from '@sumpbook/fluid'
import type { CrossingAnswer, DoubtAnswer } from '../estimate/answer-types.ts'
import type { Claimed, ClaimedPour } from '../jobs/claim-types.ts'
import type { Due } from './due.ts'

export type { ExpectedReading, RecipeBench } from '@sumpbook/fluid'
export type { CrossingAnswer, DoubtAnswer, Fan, FannedDay, Outlook } from '../estimate/answer-types.ts'
export type { Claim, Claimed, ClaimedPour, LostClaim } from '../jobs/claim-types.ts'
export type { Due, DueKind } from './due.ts'

/** What the shop should do now: one list, most consequence first, and where every other sump stands. */
export interface Today {
  at: string
  shop: { name: string; timeZone: string; units: 'us' | 'metric' | 'imperial' }
  /** The day in a sentence or two: how much to do, what the cart carries, the last shift's note. */
  lede: string
  cart: Cart
  /** The shift that runs: its list of new things is made when it begins. RFC 3339. */
  shift: { began: string; ends: string }
  /** What is to be done now; what stood there when the last shift began has `isNew` false. */
  items: ClaimedPour<TodayItem>[]
  /** Sumps that are merely due to be read, where they are more than a few: one line, "The round". */
  round: { sentence: string; items: TodayItem[] } | null
  /** New, and beyond what one person is shown in a shift; nothing of it is exempt. */
  later: { sentence: string; items: ClaimedPour<TodayItem>[]; due: Claimed<TodayDue>[] } | null
  /** Put off by somebody, with reason and end. */
  putOff: { items: TodayItem[]; due: TodayDue[] }
  /** Sumps that need nothing now; their recipes are what a fill to the mark would take. */
  calm: SumpItem[]
  /** What else is due today, no pours among it. */
  due: Claimed<TodayDue>[]
  /** Entries whose subject the book does not know (yet): counted nowhere until it does. */
  quarantined: number
}

/** How long something has been on the list, and whether somebody put it off. */
export interface Standing {
  /** The same as long as it wants the same: `lean:mill3`; for a snooze to name. */
  key: string
  /** Not on the list yet when the shift before this one began. */
  isNew: boolean
  /** Neither capped nor to be put off. */
  exempt: boolean
  /** Since when it is known to be so, RFC 3339; of what stood longer than was looked back, the farthest. */
  since: string
  /** Who put it off, why, and when it comes back; null where nobody did. */
  snoozed: Snoozed | null
}

/** What somebody put off. */
export interface Snoozed {
  /** The entry; to void it brings the line back. */
  entry: string
  by: string | null
  why: string
  /** RFC 3339. */
  until: string
}

/** A duty with how long it has been on the list. */
export type TodayDue = Due &
  Omit<Standing, 'key' | 'exempt'> & {
    /** It stands before the pours: health, what must stop, a limit of nitrite passed, a pH that fell. */
    atOnce: boolean
  }

/** What goes on the cart for the pours of the list. */
export interface Cart {
  waters: { id: string | null; name: string; volume: number }[]
  concentrates: { fluid: string; name: string; litres: number }[]
}

/** One sump by all of its records, as the estimate has it. Volumes are of the whole system, in litres; times RFC 3339, UTC. */
export interface SumpNow {
  sump: string
  name: string
  place: string | null
  /** Where on the round it comes; null where nobody said. */
  order: number | null
  fluid: { id: string; name: string; class: string | null }
  /** The time for which the figures hold. */
  asOf: string
  /** What a phone needs to make the recipe itself, the same as the server's. Marks are those of the plate. */
  bench: RecipeBench
  /** Null where no record tells of it, and of a straight oil. */
  concentration: Figure | null
  /** Null where no record tells of the sump. */
  volume: Figure | null
  /** Litres that it truly holds at its full mark, as learnt; null where no record tells of the sump. */
  mark: Figure | null
  /** What a refractometer would show now, and what a reading weighs; null where no scale or no strength is known. */
  expected: ExpectedReading | null
  /** Where it stands in a week if nothing is done; null as the concentration. */
  inAWeek: { concentration: Figure; volume: Figure } | null
  crossing: CrossingAnswer | null
  /** Null of a straight oil. */
  nextCheck: NextCheck | null
  /** Records that do not fit and still move the figures: while there are any, nothing is poured. */
  doubts: DoubtAnswer[]
  /** The last reading of strength, as found. */
  lastStrength: LastReading | null
  /** The last reading of level or volume. */
  lastLevel: LastReading | null
  /** One sentence: where it stands. */
  sentence: string
  ahead: Ahead
}

/** Where a sump goes if nothing is done, and when it is read next, a sentence each; empty where nothing is to be said. */
export interface Ahead {
  /** "Left alone it stands at 6.9 % in a week." */
  drift: string
  /** "It likely leaves its band on Thursday, by Tuesday at the earliest." */
  crossing: string
  /** "Next check on Monday." */
  check: string
}

/** When a sump is to be read next, and why then. */
export interface NextCheck {
  /** The beginning of that day in the shop, RFC 3339. */
  at: string
  /** `2026-03-03`. */
  on: string
  because: CheckReason
}

export interface LastReading {
  entry: string
  at: string
  by: string | null
  /** As read: "3.4 °Brix", "162 L", "84 mm". */
  text: string
  /** What a reading of strength came to, percent, by the scale of its day; null for a level, or without a scale. */
  concentration: number | null
}

/** Why a sump is on the list. */
export type Condition =
  | 'below-suction'
  | 'over-full'
  | 'lean'
  | 'rich'
  | 'doubt'
  | 'low-level'
  | 'measure-first'
  | 'unread'
  | 'in-order'
  | 'straight-oil'

/** A sump with its recipe; on the list it has a {@link Standing} as well. */
export interface SumpItem extends SumpNow, Advice {
  condition: Condition
  action: Action
  /** The time of the youngest record the recipe rests on; null without any. */
  dataAt: string | null
  /** One sentence on its reasons. */
  why: string
}

/** A line of the list. */
export interface TodayItem extends SumpItem, Standing {}
