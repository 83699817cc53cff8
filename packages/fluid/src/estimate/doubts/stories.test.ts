import { expect, test } from 'vitest'
import { publishedPriors } from '../priors.ts'
import { carryOff, evaporation, fill, full, hardness, size, strength } from '../state.ts'
import { beliefOf } from '../testing.ts'
import { pourOf } from '../written-pour.ts'
import { type Habits, type Story, tellings } from './stories.ts'

const usual = pourOf({ strength: 5, water: { hardness: 150, chloride: 40 } })
const habits: Habits = {
  usual,
  target: 8,
  brim: 1.2,
  plainWater: { ...usual, strength: 0, strengthSd: 0.3, mixed: false },
  forgotten: 0,
  workSince: 4,
  idle: publishedPriors.idle,
}
const low = {
  [fill]: 0.8,
  [strength]: 8,
  [hardness]: 200,
  [full]: 1,
  [evaporation]: Math.log(0.016),
  [carryOff]: Math.log(0.006),
}
const told = (story: Story, which = 0) => {
  const belief = beliefOf(low)
  tellings(habits, 0.8).filter((one) => one.story === story)[which]!.apply!(belief)
  return belief.mean
}

test('all stories together are rarer than that nothing is wrong', () => {
  const sum = tellings(habits, 0.8).reduce((total, { prior }) => total + prior, 0)
  expect(sum).toBeLessThan(0.2)
  for (const { prior } of tellings(habits, 0.8)) expect(prior).toBeGreaterThan(0)
})

test('a pour nobody wrote fills up with what is usually poured: more, and leaner', () => {
  // 0.8 at 8 % and 0.2 at 5 %: 7.4 %.
  const mean = told('unlogged-addition')
  expect(mean[fill]).toBeCloseTo(1, 12)
  expect(mean[strength]).toBeCloseTo(7.4, 12)
})

test('some of a pour, by somebody else, is another telling of it', () => {
  const mean = told('unlogged-addition', 1)
  // 0.6 of the room up to three tenths of the mark.
  expect(mean[fill]).toBeCloseTo(0.8 + 0.6 * 0.3, 12)
})

test('water nobody wrote fills up and thins: the concentrate stays what it was', () => {
  const mean = told('unlogged-water')
  expect(mean[fill]).toBeCloseTo(1, 12)
  expect(mean[fill]! * mean[strength]!).toBeCloseTo(0.8 * 8, 12)
})

test('concentrate nobody wrote strengthens and hardly fills', () => {
  // 0.8 · 8 + 0.018 · 100 = 8.2 in 0.818.
  const mean = told('unlogged-concentrate')
  expect(mean[fill]).toBeCloseTo(0.818, 12)
  expect(mean[strength]).toBeCloseTo(8.2 / 0.818, 10)
})

test('a draw-off nobody wrote lowers the level and leaves the mix', () => {
  const mean = told('unlogged-drawoff')
  expect(mean[fill]).toBeLessThan(0.7)
  expect([mean[strength], mean[hardness]]).toEqual([8, 200])
})

test('a charge nobody wrote starts anew at the mark and the target', () => {
  const mean = told('unlogged-charge')
  expect([mean[fill], mean[strength]]).toEqual([1, 8])
})

test('a standstill nobody wrote gives back what was reckoned as work, and is nothing to ask about', () => {
  expect(told('stands')[fill]!).toBeGreaterThan(0.8)
  expect(told('stands')[strength]!).toBeLessThan(8)
})

test('another job changes nothing but how sure the losses are', () => {
  const belief = beliefOf(low)
  tellings(habits, 0.8).filter(({ story }) => story === 'stands')[1]!.apply!(belief)
  expect([...belief.mean]).toEqual([...beliefOf(low).mean])
  expect(belief.cov[carryOff * (size + 1)]!).toBeGreaterThan(0.1)
})

test('where a pour was due, a forgotten one is as likely as that; otherwise it is rare', () => {
  const addition = (forgotten: number) =>
    tellings({ ...habits, forgotten }, 0.8).find(({ story }) => story === 'unlogged-addition')!.prior
  expect(addition(0.4)).toBe(0.4)
  expect(addition(0)).toBeLessThan(0.05)
})
