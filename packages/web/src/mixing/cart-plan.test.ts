import { expect, test } from 'vitest'
import type { TodayItem } from '../api/types.ts'
import { cartNeeds, fluidsOf, planCart, type SumpsOfDay, worstByStrengths } from './cart-plan.ts'

const item = (sump: string, add: { volume: number; strength: number } | null, more: object = {}) =>
  ({
    sump,
    name: `Mill ${sump}`,
    fluid: { id: 'f1', name: 'Semi 1', class: null },
    bench: { band: { low: 6, high: 10 } },
    action: add === null ? 'none' : 'top-up',
    recipe: {
      add: add === null ? null : { ...add, concentrate: 0, water: 0, waters: [] },
      result: { volume: 200, concentration: 8 },
    },
    ...more,
  }) as unknown as TodayItem
const day = (items: TodayItem[], calm: TodayItem[] = []) =>
  ({ items, calm, round: null, later: null, putOff: { items: [], due: [] } }) as unknown as SumpsOfDay

test('what today pours goes on the cart, list first; a change of the charge and what pours nothing do not', () => {
  const needs = cartNeeds(
    day(
      [
        item('1', { volume: 40, strength: 12 }),
        item('2', null),
        item('3', { volume: 200, strength: 8 }, { action: 'change' }),
      ],
      [item('4', { volume: 20, strength: 6 })],
    ),
  )
  expect(needs.map(({ sump, isListed }) => [sump, isListed])).toEqual([
    ['1', true],
    ['4', false],
  ])
})

// One strength for 40 L at 10 % and 40 L at 14 % into 200 L each is 12 %: 40 × 2 / 200 = 0.4 % off either way.
test('each sump is told what it gets, where it lands and by how much it misses its own recipe', () => {
  const needs = cartNeeds(day([item('1', { volume: 40, strength: 10 }), item('2', { volume: 40, strength: 14 })]))
  const plan = planCart(needs, 1)!
  expect(plan.batches).toMatchObject([{ strength: expect.closeTo(12, 9), volume: 80 }])
  expect(plan.served[0]).toMatchObject({ error: expect.closeTo(0.4, 9), lands: expect.closeTo(8.4, 9), isInBand: true })
  expect(plan.served[1]).toMatchObject({ error: expect.closeTo(-0.4, 9), lands: expect.closeTo(7.6, 9) })
  const worst = worstByStrengths(needs, 3)
  expect(worst).toEqual([expect.closeTo(0.4, 9), 0, 0])
})

test('a sump that the cart would take out of its band is marked', () => {
  const needs = cartNeeds(day([item('1', { volume: 100, strength: 4 }), item('2', { volume: 100, strength: 14 })]))
  // 5 % off in half of the sump is 2.5 % off: 8 − 2.5 lies under 6, 8 + 2.5 above 10.
  expect(planCart(needs, 1)!.served.map(({ isInBand }) => isInBand)).toEqual([false, false])
})

test('no sump, no plan; fluids are told once, in their order', () => {
  expect(planCart([], 2)).toBeNull()
  const other = { fluid: { id: 'f2', name: 'Synthetic', class: null } }
  const needs = cartNeeds(
    day([
      item('1', { volume: 9, strength: 4 }, other),
      item('2', { volume: 9, strength: 4 }),
      item('3', { volume: 9, strength: 4 }, other),
    ]),
  )
  expect(fluidsOf(needs).map(({ id }) => id)).toEqual(['f2', 'f1'])
})
