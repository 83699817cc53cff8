import { expect, test } from 'vitest'
import { sumpbook } from './peers/sumpbook.ts'
import { contradictory } from './special/contradictory.ts'
import { changeOvers, instruments, judgeChangeOver, judgeContradictory, judgeInstrument } from './special/judge.ts'

/** What was not met, to be shown where the test fails. */
const missed = (judged: Awaited<ReturnType<typeof judgeInstrument>>) => judged.filter(({ met }) => !met)

test.each(instruments)(
  'a refractometer that is off on one round is one instrument doubt and no other: %o',
  async (given) => {
    expect(missed(await judgeInstrument(sumpbook, given))).toEqual([])
  },
)

test.each(changeOvers.map((make) => make()))('reads right: $story', async (special) => {
  expect(missed(await judgeChangeOver(sumpbook, special))).toEqual([])
})

test.each(Object.keys(contradictory) as (keyof typeof contradictory)[])(
  'a book that contradicts itself (%s) has figures all the same, and the other sump stands where it stood',
  async (name) => {
    expect(missed(await judgeContradictory(sumpbook, name))).toEqual([])
  },
)
