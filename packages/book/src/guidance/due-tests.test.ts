import { expect, test } from 'vitest'
import { testId } from '../testing.ts'
import { readEveryDays } from '../today/next-check.ts'
import { dueTests } from './due-tests.ts'
import { readGuidance } from './read-guidance.ts'
import { germany, guidedBook, told, unitedKingdom } from './testing.ts'

async function dueOf(...args: Parameters<typeof guidedBook>) {
  const book = await guidedBook(...args)
  return book.ask((parts, now) => dueTests(parts, { at: now, until: now, reader: {} }))
}
/** Looked at today, so that only what a test is about is due. */
const looked = (n: number, sump = 's1') => told(n, '2026-03-03', { kind: 'observation', signs: [], sump })

test('where nobody chose, no test is due', async () => {
  expect(await dueOf({ entries: [told(1, '2026-01-01', { ph: 9 })] })).toEqual([])
})

test('the tests of one sump are one line, concentration not among them', async () => {
  const due = await dueOf({ guidance: germany, entries: [looked(1)] })
  expect(due).toMatchObject([
    {
      key: 'test:s1:ph+nitrite',
      kind: 'test',
      sump: 's1',
      headline: 'pH and nitrite of Mill 1 are due',
      dueOn: '2026-03-03',
      exempt: false,
      page: '/sumps/s1#tests',
    },
  ])
})

test('a look that is due is finished with one tap, and then it is done for the day', async () => {
  const guidance = { pack: 'own', own: { senses: { everyDays: 1 } } }
  const [line] = await dueOf({ guidance })
  expect(line).toMatchObject({ headline: 'Look at Mill 1 and smell it', finish: { kind: 'observation', signs: [] } })
  expect(await dueOf({ guidance, entries: [looked(1)] })).toEqual([])
})

const manySumps = (count: number) =>
  Array.from({ length: count }, (_, n) => ({ id: `m${n + 1}`, name: `Mill ${n + 1}`, fluid: 'f1' }))

test('the same tests of many sumps are one line for the round', async () => {
  const guidance = { pack: 'own', own: { ph: { everyDays: 7 } } }
  expect((await dueOf({ guidance, sumps: manySumps(3) })).map(({ headline }) => headline)).toEqual([
    'pH of Mill 1 is due',
    'pH of Mill 2 is due',
    'pH of Mill 3 is due',
  ])
  const [round, ...more] = await dueOf({ guidance, sumps: manySumps(9) })
  expect(more).toEqual([])
  expect(round).toMatchObject({ key: 'test:round:ph', sump: null, headline: 'pH of 9 sumps is due', page: '/tests' })
  expect(round!.why).toMatch(/^Mill 1, Mill 2, Mill 3, Mill 4, Mill 5 and 4 more\. pH every 7 days/)
})

test('looks of all sumps are one line from two on', async () => {
  const [looks] = await dueOf({ guidance: { pack: 'own', own: { senses: { everyDays: 1 } } }, sumps: manySumps(2) })
  expect(looks).toMatchObject({ headline: 'Look at 2 sumps and smell them', finish: null })
})

test('nitrite over its limit and a crash of pH are neither capped nor put off, and say what to mind', async () => {
  const entries = [
    looked(1),
    told(2, '2026-02-27', { kind: 'charge', volume: 200, strength: 8 }),
    told(3, '2026-02-27T09:00:00Z', { ph: 9.4 }),
    told(4, '2026-03-03', { nitrite: 30, ph: 8.2 }),
  ]
  const [nitrite, ph, ...rest] = await dueOf({ guidance: germany, entries })
  expect(rest).toEqual([])
  expect(nitrite).toMatchObject({
    key: `finding:nitrite:${testId(4)}`,
    exempt: true,
    consequence: 1,
    dueOn: '2026-03-03',
  })
  expect(nitrite!.why).toContain('TRGS 611')
  expect(nitrite!.cautions[0]).toContain('nitrite')
  expect(ph).toMatchObject({ headline: 'pH has fallen too far in Mill 1', exempt: true, consequence: 1 })
  expect(ph!.cautions[0]).toContain('No dose before the cause is known')
})

test('a fall that is no crash can be put off', async () => {
  const entries = [
    looked(1),
    told(2, '2026-02-27', { kind: 'charge', volume: 200, strength: 8 }),
    told(3, '2026-02-27T09:00:00Z', { ph: 9.4 }),
    told(4, '2026-03-03', { nitrite: 3, ph: 8.8 }),
  ]
  expect(await dueOf({ guidance: germany, entries })).toMatchObject([{ exempt: false, consequence: 3 }])
})

test('make-up water over 50 mg/L nitrate is named, with the blend that brings it back', async () => {
  const waters = [
    { id: 'tap', name: 'Tap water', nitrate: 70 },
    { id: 'di', name: 'Deionised water', nitrate: 0 },
  ]
  const waterOf = async (entries: unknown[]) =>
    (await dueOf({ guidance: germany, waters, entries: [looked(1), ...entries] })).find(
      ({ about }) => about?.kind === 'water',
    )
  expect((await waterOf([]))!.why).toContain(
    'Blended with at least 28.6 % of water without nitrate it comes to 50 mg/L.',
  )
  const analysis = (n: number, nitrate: number) => ({
    id: testId(n),
    at: `2026-02-1${n}T09:00:00Z`,
    kind: 'analysis',
    about: { kind: 'water', id: 'tap' },
    nitrate,
  })
  expect(await waterOf([analysis(2, 80), analysis(3, 50)])).toBeUndefined()
  expect((await waterOf([analysis(2, 80)]))!.dueOn).toBe('2026-02-12')
})

test('the pack’s interval bounds the day on which a sump is read next, and never makes it later', async () => {
  const daysOf = async (guidance: unknown, every: number | undefined) => {
    const book = await guidedBook({ guidance, shop: every === undefined ? {} : { readEveryDays: every } })
    return readEveryDays(await book.present())
  }
  expect(await daysOf(undefined, 14)).toBe(14)
  expect(await daysOf(unitedKingdom, 14)).toBe(7)
  expect(await daysOf(unitedKingdom, 3)).toBe(3)
  expect(await daysOf({ pack: 'united-states', edition: '2001' }, 14)).toBe(14)
  expect(await daysOf(undefined, undefined)).toBe(7)
})

test('the choice is told with what does not count of the shop’s own', async () => {
  const guidance = { ...germany, own: { ph: { everyDays: 14 }, nitrite: { everyDays: 28 } } }
  const book = await guidedBook({ guidance, shop: { readEveryDays: 10 } })
  const { chosen, refused, packs, comparison } = await book.ask((parts, now) => readGuidance(parts, { at: now }))
  expect(chosen).toMatchObject({ outcome: 'chosen', pack: 'germany', edition: '2007' })
  expect(refused).toEqual([
    { name: 'Concentration', own: 10, guidance: 7 },
    { name: 'pH', own: 14, guidance: 7 },
  ])
  expect(packs.map(({ id }) => id)).toEqual(['germany', 'united-kingdom', 'united-states'])
  expect(comparison.topics.filter(({ differs }) => differs).map(({ name }) => name)).toContain('Dip slide: classes')
})

test('guidance that contradicts itself is refused at its field', async () => {
  const book = await guidedBook({})
  const setup = (own: unknown) => ({
    id: testId(9),
    at: '2026-03-03T09:00:00Z',
    kind: 'setup',
    about: { kind: 'shop' },
    changes: { guidance: { pack: 'own', own } },
  })
  await expect(book.put(setup({ bacteria: { reasonable: 1e6, poor: 1e4 } }))).rejects.toMatchObject({
    faults: [{ pointer: '/changes/guidance/own/bacteria/poor' }],
  })
  await expect(book.put(setup({ ph: { everyDays: 0 } }))).rejects.toMatchObject({
    faults: [{ pointer: '/changes/guidance/own/ph/everyDays' }],
  })
})
