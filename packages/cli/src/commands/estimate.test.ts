import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { Readable, Writable } from 'node:stream'
import { expect, onTestFinished, test } from 'vitest'
import { main } from '../main.ts'

const entry = (n: number, day: string, more: Record<string, unknown>) => ({
  id: `00000000-0000-4000-8000-${String(n).padStart(12, '0')}`,
  at: `2026-${day}T09:30:00+01:00`,
  sump: 's1',
  ...more,
})
const shop = {
  format: 'sumpbook-book/1',
  shop: { name: 'Test works', timeZone: 'Europe/Berlin', units: 'metric' },
  fluids: [{ id: 'f1', name: 'Semi 1', brixFactor: 1.6, limits: { concentration: { low: 6, target: 8, high: 10 } } }],
  sumps: ['s1', 's2'].map((id) => ({ id, name: `Mill ${id}`, fluid: 'f1', fillVolume: 200, capacity: 240 })),
  entries: [
    entry(1, '02-02', { kind: 'charge', volume: 200, strength: 8 }),
    entry(2, '02-10', { kind: 'reading', brix: 5.2, volume: 185 }),
    entry(3, '02-17', { kind: 'reading', brix: 5.4, volume: 172 }),
    entry(4, '03-20', { kind: 'reading', brix: 2, volume: 172 }),
  ],
}

class Sink extends Writable {
  text = ''
  override _write(chunk: Buffer, _: string, done: () => void): void {
    this.text += chunk.toString()
    done()
  }
}

function folder(file: unknown = shop): string {
  const path = mkdtempSync(join(tmpdir(), 'sumpbook-estimate-'))
  onTestFinished(() => rmSync(path, { recursive: true, force: true }))
  writeFileSync(join(path, 'shop.json'), typeof file === 'string' ? file : JSON.stringify(file))
  return path
}

async function run(cwd: string, args: string[], stdin = '') {
  const [stdout, stderr] = [new Sink(), new Sink()]
  const world = { env: {}, stdin: Readable.from([stdin]), stdout, stderr, cwd: () => cwd }
  const code = await main(['estimate', ...args], world)
  return { code, out: stdout.text, err: stderr.text }
}
const at = ['--at', '2026-02-18T10:00:00+01:00']

test('a book file is only read: every sump with now, ahead in the order asked, crossing, recipe and doubts', async () => {
  const cwd = folder()
  const { code, out, err } = await run(cwd, [join(cwd, 'shop.json'), ...at, '--ahead', '14,7', '--json'])
  expect({ code, err }).toEqual({ code: 0, err: '' })
  const document = JSON.parse(out)
  expect(document.at).toBe('2026-02-18T10:00:00+01:00')
  expect(Object.keys(document.sumps)).toEqual(['s1', 's2'])
  const { now, ahead, recipe, doubts } = document.sumps.s1
  expect(Object.keys(now)).toEqual(
    expect.arrayContaining(['concentration', 'volume', 'hardness', 'evaporation', 'carryOff']),
  )
  for (const figure of Object.values(now)) {
    expect(figure).toEqual({
      mean: expect.any(Number),
      sd: expect.any(Number),
      low90: expect.any(Number),
      high90: expect.any(Number),
    })
  }
  expect(ahead.map(({ days }: { days: number }) => days)).toEqual([14, 7])
  expect(recipe.action).toBeTypeOf('string')
  expect(doubts).toEqual([])
})

test('the stored book answers as its file does', async () => {
  const cwd = folder()
  const stores = { env: {}, stdin: Readable.from([]), stdout: new Sink(), stderr: new Sink(), cwd: () => cwd }
  expect(await main(['import', join(cwd, 'shop.json')], stores)).toBe(0)
  const stored = await run(cwd, [...at, '--json'])
  const file = await run(cwd, [join(cwd, 'shop.json'), ...at, '--json'])
  expect(stored.out).toBe(file.out)
})

test('a file may come on standard input, and one sump may be asked for', async () => {
  const { code, out } = await run(folder(), ['-', ...at, '--sump', 's2', '--json'], JSON.stringify(shop))
  expect(code).toBe(0)
  expect(Object.keys(JSON.parse(out).sumps)).toEqual(['s2'])
})

test('for people it is a paragraph a sump, in their units', async () => {
  const cwd = folder()
  const { out } = await run(cwd, [join(cwd, 'shop.json'), ...at, '--ahead', '7'])
  expect(out).toMatch(/^At 2026-02-18T10:00:00\+01:00\n\nMill s1\n {2}\d+\.\d % \(.*\) in \d+ L/)
  expect(out).toContain('In 7 days, with nothing added:')
  const american = folder({ ...shop, shop: { ...shop.shop, units: 'us' } })
  expect((await run(american, [join(american, 'shop.json'), ...at])).out).toContain(' gal')
  const us = await run(cwd, [join(cwd, 'shop.json'), ...at, '--units', 'us'])
  expect(us.out).toContain(' gal')
  expect(us.out).not.toMatch(/\d L\b/)
})

test.each<[string, (cwd: string) => string[], number]>([
  ['a time without offset', (cwd) => [join(cwd, 'shop.json'), '--at', '2026-02-18'], 2],
  ['two files', (cwd) => [join(cwd, 'shop.json'), join(cwd, 'shop.json')], 2],
  ['an option that is none', () => ['--when', 'now'], 2],
  ['days ahead that are none', (cwd) => [join(cwd, 'shop.json'), ...at, '--ahead', '7,x'], 3],
  ['a sump the file does not have', (cwd) => [join(cwd, 'shop.json'), ...at, '--sump', 's9'], 3],
  ['a file that is not there', (cwd) => [join(cwd, 'none.json'), ...at], 3],
])('%s is refused, and standard output stays empty', async (_, args, code) => {
  const cwd = folder()
  const answer = await run(cwd, args(cwd))
  expect(answer).toMatchObject({ code, out: '' })
  expect(answer.err).not.toBe('')
})

test('a file with faults is refused whole, each fault named in the problem document', async () => {
  const faulty = {
    ...shop,
    entries: [entry(1, '02-02', { kind: 'reading', brix: 300 }), entry(2, '02-03', { kind: 'charge', volume: -1 })],
  }
  const cwd = folder(faulty)
  const { code, out, err } = await run(cwd, [join(cwd, 'shop.json'), ...at, '--json'])
  expect({ code, out }).toEqual({ code: 3, out: '' })
  expect(JSON.parse(err).errors.map(({ pointer }: { pointer: string }) => pointer)).toEqual([
    '/entries/0/brix',
    '/entries/1/volume',
  ])
})
