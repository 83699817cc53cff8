import { expect, test } from 'vitest'
import type { Fluid, Sump } from '../../schema/things/index.ts'
import { resolveMachines } from './machines.ts'

const fluid: Fluid = { id: 'f', name: 'F', limits: { concentration: { low: 6, target: 8, high: 10 } } }
const sump = (over: Partial<Sump>): Sump => ({ id: 'm7', name: 'Mill 7', fluid: 'f', ...over })
const resolve = (over: Partial<Parameters<typeof resolveMachines>[0]>) =>
  resolveMachines({ names: [], book: { sumps: [] }, map: {}, fluids: [fluid], ...over })

test('two sumps of one name are asked about', () => {
  const sumps = [sump({}), sump({ id: 'm8' })]
  const { questions, sumpOf } = resolve({ names: ['Mill 7'], book: { sumps } })
  expect(questions).toMatchObject([{ pointer: '/machines/Mill 7', choices: ['m7', 'm8'] }])
  expect(sumpOf('Mill 7')).toBeNull()
  expect(
    resolve({ names: ['Mill 7'], book: { sumps }, map: { machines: { 'mill 7': 'm8' } } }).sumpOf('MILL 7')?.id,
  ).toBe('m8')
})

test("a sump's own name goes before another's machine or id", () => {
  const sumps = [
    sump({ id: 'Mill 7', name: 'Other' }),
    sump({ id: 'a', name: 'Central', machines: ['Mill 7'] }),
    sump({ id: 'b', name: 'mill 7' }),
  ]
  expect(resolve({ names: ['Mill 7'], book: { sumps } }).sumpOf('Mill 7')?.id).toBe('b')
})

test('two names can be one new sump', () => {
  const map = { machines: { 'Mill 7': { id: 's7', fillVolume: 200 }, M7: 's7' } }
  const { sumpOf, added, faults, questions } = resolve({ names: ['M7', 'Mill 7'], map })
  expect([sumpOf('M7')?.id, sumpOf('Mill 7')?.id, added.length, faults, questions]).toEqual(['s7', 's7', 1, [], []])
})

test('an id is made of the name, always the same, and never one that is taken', () => {
  const map = { newSumps: { fillVolume: null } }
  const ids = (names: string[], sumps: Sump[] = []) =>
    resolve({ names, map, book: { sumps } }).added.map(({ id }) => id)
  expect(ids(['Fräse Nr. 1', '车床'])).toEqual(['frase-nr-1', expect.stringMatching(/^sump-[0-9a-f]{8}$/)])
  expect(ids(['车床'])).toEqual(ids(['车床']))
  expect(ids(['Mill 8'], [sump({ id: 'mill-8', name: 'Old' })])).toEqual([
    expect.stringMatching(/^mill-8-[0-9a-f]{8}$/),
  ])
})

test('a new sump whose mark lies above its brim is a fault with its pointer', () => {
  const { faults } = resolve({
    names: ['Mill 7/a'],
    map: { machines: { 'Mill 7/a': { fillVolume: 300, capacity: 200 } } },
  })
  expect(faults).toMatchObject([{ pointer: '/machines/Mill 7~1a/fillVolume' }])
})

test('a fluid that nobody has is a fault, one of several is asked for', () => {
  const two = [fluid, { ...fluid, id: 'g' }]
  expect(resolve({ names: ['M'], map: { machines: { M: { fluid: 'x', fillVolume: null } } } }).faults).toMatchObject([
    { pointer: '/machines/M/fluid' },
  ])
  const { questions } = resolve({
    names: ['M'],
    map: { newSumps: { fillVolume: null, target: 8, low: null, high: null } },
    fluids: two,
  })
  expect(questions).toMatchObject([{ pointer: '/machines/M/fluid', choices: ['f', 'g'] }])
})

test('what the map says otherwise of a sump of the book changes nothing and is told', () => {
  const { warnings, added } = resolve({
    names: ['Mill 7'],
    book: { sumps: [sump({ fillVolume: 240 })] },
    map: { machines: { 'Mill 7': { fillVolume: 300 } } },
  })
  expect(added).toEqual([])
  expect(warnings.join()).toContain('fillVolume of the map changes nothing')
})
