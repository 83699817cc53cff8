import { expect, test } from 'vitest'
import type { KeptPhoto, PhotoKeep } from './photo-keep.ts'
import { type SendingParts, sendFrom } from './waiting-photos.ts'

const hour = 3_600_000
const photo = (name: string, isNamed: boolean, takenAt = 0): KeptPhoto => ({
  name,
  bytes: new Uint8Array(1),
  takenAt,
  isNamed,
})

function kept(...photos: KeptPhoto[]): PhotoKeep & { names(): string[] } {
  const all = new Map(photos.map((one) => [one.name, one]))
  return {
    put: async (one) => void all.set(one.name, one),
    list: async () => [...all.values()],
    one: async (name) => all.get(name),
    drop: async (name) => void all.delete(name),
    names: () => [...all.keys()],
  }
}

async function sent(keep: PhotoKeep, send: SendingParts['send'], now = hour) {
  const counts: number[] = []
  await sendFrom(keep, { send, isOffLine: () => false, now, count: (left) => counts.push(left) })
  return counts
}

test('what entries name is sent, each once, and leaves the device only then', async () => {
  const keep = kept(photo('a', true), photo('b', true), photo('only looked at', false))
  const went: string[] = []
  const counts = await sent(keep, async ({ name }) => {
    went.push(name)
    return 'taken'
  })
  expect(went).toEqual(['a', 'b'])
  expect(counts).toEqual([2, 1, 0])
  expect(keep.names()).toEqual(['only looked at'])
})

test('out of reach all of them stay', async () => {
  const keep = kept(photo('a', true), photo('b', true))
  expect(await sent(keep, async () => 'no-answer')).toEqual([2])
  expect(await sent(keep, () => Promise.reject(new TypeError('Failed to fetch')))).toEqual([2])
  expect(keep.names()).toEqual(['a', 'b'])
})

test('what the book does not take stays, is sent no more, and holds up no other', async () => {
  const keep = kept(photo('a', true), photo('b', true))
  const send = async ({ name }: { name: string }) => (name === 'a' ? 'refused' : 'taken') as 'refused' | 'taken'
  expect(await sent(keep, send)).toEqual([2, 1, 0])
  expect(keep.names()).toEqual(['a'])
  expect(await sent(keep, () => Promise.reject(new Error('sent again')))).toEqual([0])
  expect(await keep.one('a')).toMatchObject({ isRefused: true })
})

test('a picture that nobody wrote down goes after a day, not at it', async () => {
  const keep = kept(photo('looked at', false))
  await sent(keep, async () => 'taken', 24 * hour)
  expect(keep.names()).toEqual(['looked at'])
  await sent(keep, async () => 'taken', 24 * hour + 1)
  expect(keep.names()).toEqual([])
})
