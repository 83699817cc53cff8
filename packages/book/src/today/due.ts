/** What a thing that is due belongs to; the page groups and words by it. */
export type DueKind =
  | 'test'
  | 'result'
  | 'upkeep'
  | 'check'
  | 'cleanout'
  | 'waste'
  | 'stock'
  | 'dose'
  | 'health'
  | 'handover'

/** Something the shop should do that is no pour: a slide to read, a container to be fetched, a strainer to clean. */
export interface Due {
  /** The same as long as it is the same duty, so that it can be put off, claimed and counted: `result:<entry id>`. */
  key: string
  kind: DueKind
  /** The sump it is done at; null where it is about something else. */
  sump: string | null
  about: { kind: string; id?: string } | null
  /** Of the sump or thing, as people call it. */
  name: string
  /** What to do, one sentence without its stop: "Read the dip slide of Mill 3". */
  headline: string
  /** One sentence on its reasons, its source where a rule asks for it. */
  why: string
  /** The shop's calendar day from which it is due, `2026-03-03`; later ones are not on the list. */
  dueOn: string
  /** 0 to 9, as the conditions of sumps: 0 cannot wait an hour, 9 can wait a month. */
  consequence: number
  /** What the cap of new items and putting off do not touch: nitrite, split, pH crash, overflow, health, a lawful term. */
  exempt: boolean
  /** What to mind while doing it, a sentence each. */
  cautions: string[]
  /** The page of the app on which it is done. */
  page: string
  /** The entry that finishes it, but for id, time and person; null where it is done on that page. */
  finish: ({ kind: string } & Record<string, unknown>) | null
}
