import { expect, test } from 'vitest'
import { uuidMaker } from './uuid.ts'

const ones = (bytes: Uint8Array) => void bytes.fill(0xff)
const zeros = (bytes: Uint8Array) => void bytes.fill(0)

test('an id carries the time, version 7 and variant 10 (the example time of RFC 9562, appendix A.6)', () => {
  // RFC 9562 A.6: 2022-02-22 19:22:22 UTC is 0x017F22E279B0 ms.
  const id = uuidMaker({ now: () => 0x017f22e279b0, fill: zeros })()
  expect(id).toBe('017f22e2-79b0-7000-8000-000000000000')
})

test('all bits of chance set leave version and variant alone', () => {
  const id = uuidMaker({ now: () => 0x017f22e279b0, fill: ones })()
  expect(id).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/)
  expect(id.slice(19)).toBe('bfff-ffffffffffff')
})

test('ids of one millisecond rise in the order they were made', () => {
  const next = uuidMaker({
    now: () => 1_700_000_000_000,
    fill: (bytes) => void crypto.getRandomValues(bytes as Uint8Array<ArrayBuffer>),
  })
  const ids = Array.from({ length: 6000 }, next)
  expect(ids.toSorted()).toEqual(ids)
  expect(new Set(ids).size).toBe(6000)
})

test('a clock that is set back does not put a later id first', () => {
  const times = [5000, 4000, 4000, 6000]
  const next = uuidMaker({ now: () => times.shift()!, fill: zeros })
  const ids = [next(), next(), next(), next()]
  expect(ids.toSorted()).toEqual(ids)
})
