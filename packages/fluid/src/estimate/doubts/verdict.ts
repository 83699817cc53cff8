import type { ShopEvent } from '../events.ts'
import type { SumpState } from '../shop-estimate.ts'
import { joinAlike, settle } from './settle.ts'

/** The stories that an answer speaks for. */
const storyOf = (answer: string) => (answer === 'misread' || answer === 'wrong-sump' ? 'set-aside' : answer)

/** Somebody says what was behind a surprise: only the branches in which it was so go on, and the doubt is over. */
export function takeVerdict(sump: SumpState, { entries, answer }: ShopEvent & { kind: 'verdict' }): void {
  sump.doubts = sump.doubts.filter((doubt) => !doubt.entries.some((entry) => entries.includes(entry)))
  const story = storyOf(answer)
  for (const surprise of sump.surprises.filter(({ entry }) => entries.includes(entry))) {
    const told = sump.branches.filter(({ stories }) =>
      stories.some((one) => one.surprise === surprise.number && one.story === story),
    )
    if (told.length > 0) sump.branches = told
    sump.surprises = sump.surprises.filter((one) => one !== surprise)
    for (const branch of sump.branches) {
      branch.stories = branch.stories.filter((one) => one.surprise !== surprise.number)
    }
    joinAlike(sump)
  }
  settle(sump)
}
