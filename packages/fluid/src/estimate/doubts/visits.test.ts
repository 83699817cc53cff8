import { expect, test } from 'vitest'
import { publishedPriors } from '../priors.ts'
import { newSump } from '../shop-estimate.ts'
import { specOf } from '../testing.ts'
import { forgottenPour, noVisits, visited } from './visits.ts'

const sumpAt = (lastFill: number | null, pouredSince = false) => ({
  ...newSump(specOf(), 0, publishedPriors),
  lastFill,
  pouredSince,
})
/** A shop in which so many of a hundred visits at a level were followed by a pour. */
const shopThatPours = (of100: number, lastFill = 0.88) => {
  const shop = noVisits()
  for (let k = 0; k < 100; k++) visited({ ...sumpAt(lastFill, k < of100), visits: noVisits() }, shop)
  return shop
}

test('a visit is counted by how full the sump was, for the sump and for the shop', () => {
  const [sump, shop] = [sumpAt(0.88, true), noVisits()]
  visited(sump, shop)
  visited({ ...sump, pouredSince: false }, shop)
  for (const visits of [sump.visits, shop]) {
    expect(visits.made.reduce((sum, n) => sum + n)).toBe(2)
    expect(visits.poured.reduce((sum, n) => sum + n)).toBe(1)
    expect(visits.made.indexOf(2)).toBe(visits.poured.indexOf(1))
  }
})

test('the first visit has none before it', () => {
  const shop = noVisits()
  visited(sumpAt(null), shop)
  expect(shop).toEqual(noVisits())
})

test('levels on both sides of a class’s end are counted apart', () => {
  const shop = noVisits()
  visited(sumpAt(0.8999), shop)
  visited(sumpAt(0.9), shop)
  expect(shop.made.filter((n) => n === 1)).toHaveLength(2)
  // Above the last end is one class.
  visited(sumpAt(0.98), shop)
  visited(sumpAt(2), shop)
  expect(shop.made.at(-1)).toBe(2)
})

test('where a pour nearly always follows, a missing record is likelier forgotten', () => {
  const chanceOf = (of100: number) => forgottenPour(sumpAt(0.88), shopThatPours(of100))
  expect(chanceOf(99)).toBeGreaterThan(0.2)
  expect(chanceOf(50)).toBeLessThan(0.06)
  expect(chanceOf(1)).toBeLessThan(0.005)
  expect(chanceOf(99)).toBeGreaterThan(chanceOf(90))
  expect(forgottenPour(sumpAt(0.88), shopThatPours(100))).toBeLessThan(1)
})

test('what is known of one level says nothing of another', () => {
  expect(forgottenPour(sumpAt(0.99), shopThatPours(99))).toBeLessThan(0.1)
})

test('a pour that was written is not forgotten, nor one before the first visit', () => {
  expect(forgottenPour(sumpAt(0.88, true), shopThatPours(99))).toBe(0)
  expect(forgottenPour(sumpAt(null), shopThatPours(99))).toBe(0)
})

test('a sump of its own habits is told apart from its shop', () => {
  const seldom = { ...sumpAt(0.88), visits: shopThatPours(0) }
  expect(forgottenPour(seldom, shopThatPours(99))).toBeLessThan(forgottenPour(sumpAt(0.88), shopThatPours(99)) / 5)
})
