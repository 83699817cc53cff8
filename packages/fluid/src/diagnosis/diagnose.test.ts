import fc from 'fast-check'
import { expect, test } from 'vitest'
import { causes } from './causes/index.ts'
import { diagnose } from './diagnose.ts'
import type { Symptoms } from './evidence.ts'
import { frequencies, priors } from './network.ts'
import { infer } from './noisy-or.ts'
import { signs } from './signs.ts'
import { findingNumber, tables } from './tables.ts'

const of = (given: Partial<Symptoms>) => diagnose({ readings: {}, limits: {}, signs: [], ...given })
const probabilityOf = (given: Partial<Symptoms>, cause: string) =>
  of(given).causes.find((ranked) => ranked.cause.id === cause)?.probability ?? 0
const someSigns = fc.uniqueArray(fc.constantFrom(...signs.map(({ id }) => id)), { maxLength: 8 })

test('with nothing that speaks for a cause none is named', () => {
  expect(of({})).toEqual({ causes: [], nextCheck: null, stops: [], unjudged: [], leftOut: [] })
})

test('whatever is ticked, probabilities lie between 0 and 1, and the order of ticking does not matter', () => {
  fc.assert(
    fc.property(someSigns, (ticked) => {
      const found = of({ signs: ticked })
      for (const { probability } of found.causes) {
        expect(probability).toBeGreaterThanOrEqual(0)
        expect(probability).toBeLessThanOrEqual(1)
      }
      const ranking = found.causes.map(({ cause, probability }) => [cause.id, probability])
      expect(
        of({ signs: ticked.toReversed() }).causes.map(({ cause, probability }) => [cause.id, probability]),
      ).toEqual(ranking)
    }),
    { numRuns: 60 },
  )
})

test('a sign that a cause makes more often than all others together never lowers that cause', () => {
  // P(sign | cause there) ≥ 1 − (1 − leak)(1 − s) and P(sign | not there) ≤ 1 − (1 − leak) Π (1 − others): enough where s is the greater.
  const own = causes.flatMap(({ id, shows }) =>
    shows.flatMap(([finding, frequency]) => {
      const others = causes.flatMap((other) =>
        other.id === id ? [] : other.shows.filter(([one]) => one === finding).map(([, f]) => frequencies[f]),
      )
      const together = 1 - others.reduce((left, strength) => left * (1 - strength), 1)
      const sign = signs.find((one) => one.id === finding)
      return sign !== undefined && frequencies[frequency] >= together ? [{ id, sign: sign.id }] : []
    }),
  )
  expect(own.length).toBeGreaterThan(10)
  fc.assert(
    fc.property(fc.constantFrom(...own), someSigns, ({ id, sign }, ticked) => {
      const before = ticked.filter((one) => one !== sign)
      const lower = probabilityOf({ signs: before }, id)
      expect(probabilityOf({ signs: [...before, sign] }, id)).toBeGreaterThanOrEqual(lower - 1e-9)
    }),
    { numRuns: 150 },
  )
})

test('seen alone, a sign or a reading lifts every cause that makes it above its prior', () => {
  for (const [number, { id, prior, shows }] of causes.entries()) {
    for (const [finding] of shows) {
      const { evidence, joint } = infer(tables, { present: [findingNumber(finding)], absent: [] })
      expect([id, finding, joint[number]! / evidence > priors[prior]]).toEqual([id, finding, true])
    }
  }
})

test('what was looked for in vain speaks against', () => {
  const limits = { bacteria: { high: 1e4 } }
  const [grown, clean] = [{ atLeast: 1e6 }, { below: 1e3 }].map((bacteria) =>
    probabilityOf({ signs: ['rancid smell'], readings: { bacteria }, limits }, 'bacterial growth'),
  )
  expect(grown).toBeGreaterThan(probabilityOf({ signs: ['rancid smell'] }, 'bacterial growth'))
  expect(clean).toBeLessThan(probabilityOf({ signs: ['rancid smell'] }, 'bacterial growth'))
  const reasons = of({ signs: ['rancid smell'], readings: { bacteria: { below: 1e3 } }, limits }).causes.find(
    ({ cause }) => cause.id === 'bacterial growth',
  )
  expect(reasons?.speaksAgainst.map(({ finding }) => finding)).toEqual(['bacteria high'])
})

test('the next test is one that was not made', () => {
  const limits = { bacteria: { high: 1e4 } }
  const asked = { signs: ['cough or chest tightness'] as const, limits }
  expect(of(asked).nextCheck?.id).toBe('bacteria')
  expect(of({ ...asked, readings: { bacteria: 2e6 } }).nextCheck?.id).not.toBe('bacteria')
})

test('a circumstance alone is no fault', () => {
  expect(of({ signs: ['fresh charge', 'stood idle'] }).causes).toEqual([])
})

test('no test is asked for while nobody may go near the sump', () => {
  expect(of({ signs: ['rancid smell'] }).nextCheck).not.toBeNull()
  expect(of({ signs: ['rancid smell', 'rotten-egg smell'] }).nextCheck).toBeNull()
})

test('beyond twelve signs the least telling are left out by name, and what must stop is said all the same', () => {
  const all = signs.map(({ id }) => id)
  const found = of({ signs: all })
  expect(found.leftOut).toHaveLength(all.length - 12)
  expect(found.leftOut).toContain('oil film')
  expect(found.stops.map(({ id }) => id)).toEqual(
    expect.arrayContaining(['hydrogen sulfide', 'breathing', 'skin and eyes', 'split', 'hydrogen']),
  )
})
