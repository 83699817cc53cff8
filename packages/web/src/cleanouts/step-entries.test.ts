import { expect, test } from 'vitest'
import type { JobStep } from './asks.ts'
import { claimEntry, noFigures, openingEntry, stepEntries } from './step-entries.ts'

let made = 0
const stamp = () => ({ at: 'at', recordedAt: 'at', by: 'anna', newId: () => `id-${++made}` })
const step = (more: Partial<JobStep>): JobStep => ({
  id: 'skim',
  title: '',
  text: '',
  cautions: [],
  signs: 'operator',
  asks: [],
  hours: 0,
  volume: 0,
  pour: null,
  writes: [],
  signed: null,
  again: [],
  isDone: false,
  verdict: null,
  ...more,
})
const job = { id: 'job-1', sump: 's1' }
const bare = (entries: unknown[]) =>
  (entries as Record<string, unknown>[]).map(({ id: _, recordedAt: __, ...rest }) => rest)

test('a step is signed in its job, with nothing that nobody read', () => {
  expect(bare(stepEntries(job, step({ asks: ['oil'] }), noFigures, stamp()))).toEqual([
    { at: 'at', by: 'anna', kind: 'signoff', sump: 's1', job: 'job-1', step: 'skim' },
  ])
})

test('oil that was skimmed is a fact of its own', () => {
  const entries = bare(stepEntries(job, step({ asks: ['oil'] }), { ...noFigures, oil: 2 }, stamp()))
  expect(entries).toMatchObject([{ values: { oil: 2 } }, { kind: 'skim', litres: 2 }])
})

test('first readings and a slide are readings of the sump, a rinse’s pH is not', () => {
  const first = step({ id: 'first-readings', asks: ['brix', 'ph'] })
  expect(bare(stepEntries(job, first, { ...noFigures, brix: 5, ph: 9.2 }, stamp()))[1]).toMatchObject({
    kind: 'reading',
    brix: 5,
    ph: 9.2,
  })
  const slide = step({ id: 'later-slide', asks: ['bacteria'] })
  expect(bare(stepEntries(job, slide, { ...noFigures, bacteria: { below: 1000 } }, stamp()))[1]).toMatchObject({
    kind: 'reading',
    bacteria: { below: 1000 },
    method: 'dip slide',
  })
  const look = step({ id: 'rinse-check', asks: ['freshPh', 'rinsePh', 'look', 'smell'] })
  const seen = { ...noFigures, freshPh: 9, rinsePh: 9.1, look: 'clear', smell: 'none' }
  expect(bare(stepEntries(job, look, seen, stamp()))).toMatchObject([{ values: { freshPh: 9, look: 'clear' } }])
})

test('the fresh charge carries the lot that was poured, and every entry has an id of its own', () => {
  const charge = step({
    id: 'charge',
    asks: ['lot'],
    writes: [
      { kind: 'cleanout', wasteVolume: 460 },
      { kind: 'charge', volume: 190 },
      { kind: 'setup', about: { kind: 'sump', id: 's1' }, changes: {} },
    ],
  })
  const entries = stepEntries(job, charge, { ...noFigures, lot: 'L7' }, stamp())
  expect(bare(entries)).toMatchObject([
    { kind: 'signoff', values: { lot: 'L7' } },
    { kind: 'cleanout', sump: 's1', wasteVolume: 460 },
    { kind: 'charge', sump: 's1', volume: 190, lot: 'L7' },
    { kind: 'setup', about: { kind: 'sump', id: 's1' } },
  ])
  expect(entries[3]).not.toHaveProperty('sump')
  expect(new Set(entries.map(({ id }) => id)).size).toBe(4)
})

test('an opening names itself, a claim its key', () => {
  const opening = openingEntry({ kind: 'signoff', sump: 's1', step: 'opened' }, stamp())
  expect(opening).toMatchObject({ step: 'opened', job: opening.id })
  expect(claimEntry('pour:s1', 'claimed', 's1', stamp())).toMatchObject({
    claim: 'pour:s1',
    step: 'claimed',
    sump: 's1',
  })
  expect(claimEntry('job:x', 'released', null, stamp())).toMatchObject({ about: { kind: 'shop' }, step: 'released' })
})
