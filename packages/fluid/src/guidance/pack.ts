import type { Days } from '../quantities.ts'
import { message, say } from '../words/index.ts'

/** What a rule of guidance is about, in the order in which it is shown. */
export const guidedTests = [
  'senses',
  'level',
  'concentration',
  'ph',
  'nitrite',
  'bacteria',
  'hardness',
  'trampOil',
  'waterNitrate',
  'mist',
] as const
export type GuidedTest = (typeof guidedTests)[number]

/** What the test calendar of a sump has days for, in the order in which they are done. */
export const calendarTests = ['senses', 'concentration', 'ph', 'nitrite', 'bacteria', 'hardness'] as const
export type CalendarTest = (typeof calendarTests)[number]

/** Where a rule stands, and how it is known. */
export interface GuidanceSource {
  document: string
  section: string
  edition: string
  /** The day on which a copy of it, or of a page quoting it, was read; null where nobody of this project did. */
  readOn: string | null
  tag: 'read' | 'from memory' | 'common practice'
}

/** The classes that a count of germs falls into, best first; each begins where it says, in CFU/mL. */
export interface GermClasses {
  /** Null where only the highest count wanted is set: nothing is called good by that. */
  reasonable: number | null
  poor: number
}

/** Figures inside our own words, by the blanks they stand in: written as the reader writes figures. */
export type WordFigures = Readonly<Record<string, number>>

/** What a rule says. */
export type RuleSays =
  /** At least once in so many days. */
  | { kind: 'every'; days: Days }
  /** The same, and longer after so many results in a row under a value; back again above it. */
  | { kind: 'every-unless-calm'; days: Days; calm: { below: number; inARow: number; longest: Days } }
  | { kind: 'classes'; classes: GermClasses }
  | { kind: 'ends'; low?: number; high?: number; unit: string; figures?: WordFigures }
  /** How far pH may fall from that of the fresh fill before something is done, or the charge is changed. */
  | { kind: 'fall'; by: number; asks: 'act' | 'change' }
  /** That it sets no figure here is itself worth knowing. */
  | { kind: 'no-figure'; about: RuleTopic }

/** What two rules must share to be set beside each other. */
export type RuleTopic = 'interval' | 'classes' | 'ends' | 'fall to act on' | 'fall to change at'

export interface GuidanceRule {
  /** One of its edition. */
  id: string
  test: GuidedTest
  says: RuleSays
  /** What is to be done, in our own words. */
  action: string
  /** Those of `action`. */
  figures?: WordFigures
  /** A figure that fluid, work or sump may only make tighter. */
  binding: boolean
  source: GuidanceSource
}

export interface GuidanceEdition {
  id: string
  /** As people would name it: "current page", "2012". */
  name: string
  rules: readonly GuidanceRule[]
}

/** What one country's bodies say of keeping coolant, as data with its sources. */
export interface GuidancePack {
  id: string
  name: string
  /** Newest first. */
  editions: readonly GuidanceEdition[]
}

const topicWords: Record<RuleTopic, string> = {
  interval: message('interval'),
  classes: message('classes'),
  ends: message('ends'),
  'fall to act on': message('fall to act on'),
  'fall to change at': message('fall to change at'),
}

/** What two rules are set beside each other in: "interval", "fall to act on". */
export const sayTopic = (topic: RuleTopic): string => say(topicWords[topic])

/** An edition with its pack as people name it, in their language: "United Kingdom: HSE, page of November 2012". */
export const sayEdition = (pack: Pick<GuidancePack, 'name'>, edition: Pick<GuidanceEdition, 'name'>): string =>
  `${say(pack.name)}, ${say(edition.name)}`

/** The topic a rule's figure belongs to. */
export function topicOf(says: RuleSays): RuleTopic {
  switch (says.kind) {
    case 'every':
    case 'every-unless-calm':
      return 'interval'
    case 'classes':
      return 'classes'
    case 'ends':
      return 'ends'
    case 'fall':
      return says.asks === 'act' ? 'fall to act on' : 'fall to change at'
    case 'no-figure':
      return says.about
  }
}
