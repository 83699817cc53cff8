import { expect, test } from 'vitest'
import { comparedPacks } from '../differences.ts'
import { chosenEdition, guidancePacks } from './index.ts'

const rules = guidancePacks.flatMap(({ id, editions }) =>
  editions.flatMap((edition) => edition.rules.map((rule) => ({ ...rule, of: `${id} ${edition.id} ${rule.id}` }))),
)

test('every rule has a document, a section and an edition, and says what to do in a sentence', () => {
  for (const { source, action, of } of rules) {
    expect([source.document, source.section, source.edition].includes(''), of).toBe(false)
    expect(action, of).toMatch(/^[A-Z].*\.$/)
  }
})

test('no decimal sign stands in our own words: figures are written as the reader writes them', () => {
  const fraction = /\d[.,]\d/
  for (const { action, says, of } of rules) {
    expect(action, of).not.toMatch(fraction)
    if (says.kind === 'ends') expect(says.unit, of).not.toMatch(fraction)
  }
})

test('what is marked read has the day of reading, what is from memory has none', () => {
  for (const { source, of } of rules) {
    expect(source.readOn !== null, of).toBe(source.tag === 'read')
    if (source.readOn !== null) expect(source.readOn, of).toMatch(/^2026-\d\d-\d\d$/)
  }
})

test('ids are unique among packs, editions of a pack and rules of an edition', () => {
  const isUnique = (ids: string[]) => expect(new Set(ids).size).toBe(ids.length)
  isUnique(guidancePacks.map(({ id }) => id))
  isUnique(guidancePacks.flatMap(({ id, editions }) => editions.map((edition) => `${id} ${edition.id}`)))
  isUnique(rules.map(({ of }) => of))
})

test('nothing is chosen for anybody', () => {
  expect(chosenEdition(null)).toEqual({ outcome: 'none' })
  expect(chosenEdition({})).toEqual({ outcome: 'none' })
})

test('of a pack with several editions one has to be named; of a pack with one it need not be', () => {
  expect(chosenEdition({ pack: 'united-kingdom' }).outcome).toBe('unknown')
  expect(chosenEdition({ pack: 'united-kingdom', edition: '2012' })).toMatchObject({
    outcome: 'chosen',
    edition: { id: '2012' },
  })
  expect(chosenEdition({ pack: 'germany' }).outcome).toBe('chosen')
})

test('a shop may go by its own values alone, and says so', () => {
  expect(chosenEdition({ pack: 'own' })).toEqual({ outcome: 'own' })
})

test('a pack that this version does not have is said to be unknown, not replaced', () => {
  expect(chosenEdition({ pack: 'atlantis', edition: '1' })).toEqual({
    outcome: 'unknown',
    pack: 'atlantis',
    edition: '1',
  })
})

test('the comparison shows where sources differ, with a place for every edition', () => {
  const { editions, topics } = comparedPacks()
  expect(editions).toHaveLength(4)
  expect(topics.every(({ rules }) => rules.length === 4)).toBe(true)
  const of = (test: string, topic: string) => topics.find((one) => one.test === test && one.topic === topic)!
  expect(of('bacteria', 'classes').differs).toBe(true)
  expect(of('ph', 'interval').differs).toBe(true)
  expect(of('senses', 'interval').differs).toBe(false)
  expect(of('nitrite', 'ends').rules.map((rule) => rule?.says ?? null)).toEqual([
    { kind: 'ends', high: 20, unit: 'mg/L' },
    null,
    null,
    null,
  ])
})
