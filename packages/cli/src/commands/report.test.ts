import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { Readable, Writable } from 'node:stream'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { main } from '../main.ts'

const id = (n: number) => `00000000-0000-4000-8000-${String(n).padStart(12, '0')}`
const shop = {
  format: 'sumpbook-book/1',
  shop: { name: 'Test works', timeZone: 'Europe/Berlin', currency: 'EUR' },
  fluids: [{ id: 'f1', name: 'Semi 1', brixFactor: 1.6, pricePerLitre: 5 }],
  waters: [{ id: 'tap', name: 'Tap', costPerLitre: 0.004 }],
  sumps: [{ id: 's1', name: 'Mill 1', fluid: 'f1', fillVolume: 200 }],
  entries: [
    {
      id: id(1),
      at: '2026-03-03T09:30:00Z',
      kind: 'addition',
      sump: 's1',
      volume: 20,
      strength: 10,
      water: 'tap',
      by: 'p1',
    },
    { id: id(2), at: '2026-03-04T09:30:00Z', kind: 'addition', sump: 's1', volume: 99, strength: 10, water: 'tap' },
    { id: id(3), at: '2026-03-04T09:35:00Z', kind: 'void', entry: id(2), reason: 'a slip' },
  ],
}

class Sink extends Writable {
  text = ''
  override _write(chunk: Buffer, _: string, done: () => void): void {
    this.text += chunk.toString()
    done()
  }
}

const cwd = mkdtempSync(join(tmpdir(), 'sumpbook-report-'))

async function call(...words: string[]) {
  const [stdout, stderr] = [new Sink(), new Sink()]
  const code = await main(words, { env: {}, stdin: Readable.from([]), stdout, stderr, cwd: () => cwd })
  return { code, out: stdout.text, err: stderr.text }
}
const run = (...args: string[]) => call('report', ...args)

beforeAll(async () => {
  writeFileSync(join(cwd, 'shop.json'), JSON.stringify(shop))
  expect(await call('import', join(cwd, 'shop.json'))).toMatchObject({ code: 0 })
}, 60_000)
afterAll(() => rmSync(cwd, { recursive: true, force: true }))

test('a month in words: what it cost, what was withdrawn, the end of the chain', async () => {
  const { code, out } = await run('2026-03')
  expect(code).toBe(0)
  // 2 L × 5 and 18 L × 0.004 = 0.072
  expect(out).toContain('March 2026 cost €10.07: €10.00 concentrate and €0.07 water.')
  expect(out).toContain('  Mill 1: €10.07 (concentrate €10.00, water €0.07), 20 L poured')
  expect(out).toMatch(/Withdrawn: Mill 1 Added 99 L at 10 %.*: a slip/)
  expect(out).toMatch(/Entries up to 3, chain [0-9a-f]{64}\n$/)
})

test('as JSON, and as a table', async () => {
  expect(JSON.parse((await run('2026-03', '--json')).out)).toMatchObject({ month: '2026-03', cost: { cents: 1007 } })
  expect((await run('2026-03', '--csv')).out).toContain('2026-03,Mill 1,10.07,')
})

test('what is no month is a mistake of the call', async () => {
  expect(await run('2026-13')).toMatchObject({ code: 2, out: '' })
  expect(await run()).toMatchObject({ code: 2, out: '' })
})
