/** What is answered about guidance, tests and limits; no code, so that the web app can read it. */
import type {
  CalendarTest,
  GermClass,
  GuidanceRule,
  LimitLevel,
  PhVerdict,
  SettledLimit,
  TestInterval,
} from '@sumpbook/fluid'
import type { Guidance } from '../schema/things/index.ts'

/** One kind of test of one sump: when it was done, when it is due, and who says so. */
export interface SumpTest {
  test: CalendarTest
  /** The last one that counts; null without one. */
  last: { entry: string; at: string } | null
  interval: TestInterval
  /** The shop's calendar day; null where nobody sets an interval. */
  dueOn: string | null
  isDue: boolean
  /** One or two sentences: how often, by whom, and why just so. */
  why: string
  /** The rule's source with edition and date; null where the shop alone sets it. */
  source: string | null
}

/** What the last results ask for, most serious first. */
export interface Finding {
  about: 'nitrite' | 'ph' | 'bacteria'
  entry: string
  at: string
  /** `act-now` cannot wait; `act`: this week; `note`: nothing to do but know it. */
  urgency: 'act-now' | 'act' | 'note'
  sentence: string
  /** Where the limit comes from; null where there is none. */
  source: string | null
  /** Of pH and slides, what it came to. */
  outcome: PhVerdict['outcome'] | GermClass | 'over' | null
}

/** A test with its name in words. */
export interface CalendarLine extends SumpTest {
  name: string
}

/** A limit in words, and where it comes from. */
export interface LimitLine {
  quantity: SettledLimit['quantity']
  end: SettledLimit['end']
  value: number
  text: string
  level: LimitLevel
  /** "guidance", "this sump". */
  levelName: string
  source: string
  /** What was asked for and does not count; empty without it. */
  refused: string
  /** What other levels say. */
  others: { text: string; level: LimitLevel; levelName: string; source: string }[]
}

/** What packs say of one thing where none was chosen: nothing is taken in their place. */
export interface UnsettledLine {
  name: string
  /** Where they say different things. */
  differs: boolean
  says: { pack: string; text: string; source: string }[]
}

/** The tests, limits and findings of one sump. */
export interface SumpCalendar {
  sump: string
  name: string
  /** "HSE, page current in 2026", or that none is chosen. */
  guidance: { outcome: 'chosen' | 'own' | 'none' | 'unknown'; name: string }
  tests: CalendarLine[]
  findings: Finding[]
  limits: LimitLine[]
  /** Empty where guidance is chosen. */
  unsettled: UnsettledLine[]
}

/** A rule in words. */
export interface RuleLine {
  id: string
  test: GuidanceRule['test']
  name: string
  text: string
  action: string
  /** A figure that may only be made tighter. */
  binding: boolean
  source: string
  tag: GuidanceRule['source']['tag']
}

/** The packs, what is chosen, the shop's own values, and where the packs differ. */
export interface GuidanceAnswer {
  chosen: { outcome: 'chosen' | 'own' | 'none' | 'unknown'; pack: string | null; edition: string | null; name: string }
  own: NonNullable<Guidance['own']>
  /** Days of the shop's own that are longer than the chosen guidance lets them be: they do not count. */
  refused: { name: string; own: number; guidance: number }[]
  /** How the choice of the shop's own values alone is written. */
  ownPack: string
  packs: { id: string; name: string; editions: { id: string; name: string; rules: RuleLine[] }[] }[]
  /** One column an edition, in the order of the packs. */
  comparison: {
    editions: { pack: string; edition: string; name: string }[]
    topics: { name: string; differs: boolean; says: (RuleLine | null)[] }[]
  }
}

/** Tests and findings of every sump that is tested, in walking order. */
export interface ShopCalendar {
  at: string
  guidance: SumpCalendar['guidance']
  sumps: Pick<SumpCalendar, 'sump' | 'name' | 'tests' | 'findings'>[]
}
