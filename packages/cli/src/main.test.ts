import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { Readable, Writable } from 'node:stream'
import { expect, onTestFinished, test } from 'vitest'
import { main } from './main.ts'

const shop = {
  format: 'sumpbook-book/1',
  shop: { name: 'Test works', timeZone: 'Europe/Berlin', units: 'metric' },
  fluids: [{ id: 'f1', name: 'Semi 1', brixFactor: 1.6, limits: { concentration: { low: 6, target: 8, high: 10 } } }],
  waters: [{ id: 'di', name: 'Deionised water', kind: 'deionised' }],
  sumps: [{ id: 's1', name: 'Mill 1', fluid: 'f1', fillVolume: 200, capacity: 240 }],
  entries: [
    {
      id: '00000000-0000-4000-8000-000000000001',
      at: '2026-03-03T09:30:00+01:00',
      kind: 'reading',
      sump: 's1',
      brix: 3.5,
      volume: 162,
    },
  ],
}

class Sink extends Writable {
  text = ''
  override _write(chunk: Buffer, _: string, done: () => void): void {
    this.text += chunk.toString()
    done()
  }
}

/** A folder to work in, with the shop's book file in it. */
function folder(file: unknown = shop): string {
  const path = mkdtempSync(join(tmpdir(), 'sumpbook-cli-'))
  onTestFinished(() => rmSync(path, { recursive: true, force: true }))
  writeFileSync(join(path, 'shop.json'), typeof file === 'string' ? file : JSON.stringify(file))
  return path
}

async function run(
  cwd: string,
  args: string[],
  { stdin = '', env = {} }: { stdin?: string; env?: Record<string, string> } = {},
) {
  const [stdout, stderr] = [new Sink(), new Sink()]
  const code = await main(args, { env, stdin: Readable.from([stdin]), stdout, stderr, cwd: () => cwd })
  return { code, out: stdout.text, err: stderr.text }
}
/** In a folder whose book holds the shop. */
async function shopFolder(): Promise<string> {
  const cwd = folder()
  expect(await run(cwd, ['import', join(cwd, 'shop.json')])).toMatchObject({ code: 0, err: '' })
  return cwd
}
const at = ['--at', '2026-03-03T10:00:00+01:00']

test('today says what to pour', async () => {
  const { code, out } = await run(await shopFolder(), ['today', ...at])
  expect(code).toBe(0)
  expect(out).toContain('Today at Test works')
  expect(out).toMatch(/Now 5\.\d % \(\d\.\d–\d\.\d\), under its band of 6\.0 % to 10\.0 %\./)
  expect(out).toMatch(/Add 3\d(\.\d)? L at [\d.]+ %\./)
  expect(out).toMatch(/[\d.]+ L of deionised water, then [\d.]+ L of concentrate into it\./)
})

test('today says where the sumps in order stand, where they go, and when they are read next', async () => {
  const cwd = await shopFolder()
  const poured = {
    id: '00000000-0000-4000-8000-000000000009',
    at: '2026-03-03T08:40:00Z',
    kind: 'addition',
    sump: 's1',
    volume: 36,
    strength: 18,
  }
  writeFileSync(join(cwd, 'shop.json'), JSON.stringify({ ...shop, entries: [...shop.entries, poured] }))
  await run(cwd, ['import', join(cwd, 'shop.json')])
  const { out } = await run(cwd, ['today', ...at])
  expect(out).toMatch(/Mill 1: Stands at 7\.\d % \(\d\.\d–\d\.\d\) in about [\d.]+ L of (199|200|201) L\./)
  expect(out).toMatch(/Left alone it stands at \d\.\d % in a week\..* Next check /)
})

test('today in US units and as JSON', async () => {
  const cwd = await shopFolder()
  expect((await run(cwd, ['today', ...at, '--units', 'us'])).out).toMatch(/Add [\d.]+ gal at [\d.]+ %\./)
  const { out } = await run(cwd, ['today', ...at, '--json'])
  const { items } = JSON.parse(out)
  expect(items).toMatchObject([{ sump: 's1', action: 'top-up' }])
  const [{ volume, recipe, mark }] = items
  // To the mark, whose middle is √(low90 · high90).
  expect(volume.mean + recipe.add.volume).toBeCloseTo(Math.sqrt(mark.low90 * mark.high90), 6)
})

test('an export imports into another book as the same', async () => {
  const cwd = await shopFolder()
  expect(await run(cwd, ['export', join(cwd, 'out.json')])).toEqual({ code: 0, out: '', err: '' })
  expect(JSON.parse(readFileSync(join(cwd, 'out.json'), 'utf8'))).toEqual(shop)
  const other = folder(readFileSync(join(cwd, 'out.json'), 'utf8'))
  await run(other, ['import', join(other, 'shop.json')])
  expect(JSON.parse((await run(other, ['export', '-'])).out)).toEqual(shop)
})

test('export to .csv and .xlsx gives the log as a table, by the name of the file', async () => {
  const id = '00000000-0000-4000-8000-000000000001'
  const entries = [{ id, at: '2026-03-03T09:30:00Z', kind: 'reading', sump: 's1', brix: 4.5 }]
  const cwd = folder({ ...shop, entries })
  expect((await run(cwd, ['import', join(cwd, 'shop.json')])).code).toBe(0)
  for (const name of ['log.csv', 'log.XLSX']) {
    expect(await run(cwd, ['export', join(cwd, name)])).toEqual({ code: 0, out: '', err: '' })
  }
  const [headings = '', row = ''] = readFileSync(join(cwd, 'log.csv'), 'utf8').split('\r\n')
  expect(headings.split(',').indexOf('°Brix')).toBe(row.split(',').indexOf('4.5'))
  expect(readFileSync(join(cwd, 'log.XLSX')).subarray(0, 2).toString()).toBe('PK')
})

test('a refused file leaves stdout empty and ends with 3, every fault on stderr', async () => {
  const cwd = folder({ ...shop, sumps: [{ id: 's1', fluid: 'f1', fillVolume: -1 }] })
  const { code, out, err } = await run(cwd, ['import', join(cwd, 'shop.json')])
  expect({ code, out }).toEqual({ code: 3, out: '' })
  expect(err).toContain('/sumps/0/name: found nothing, expected text')
  expect(err).toContain('/sumps/0/fillVolume: found -1, expected above 0')
})

test('with --json a refusal is the problem document', async () => {
  const cwd = folder('{"format": "sumpbook-book/1", "sumps": [')
  const { code, out, err } = await run(cwd, ['import', join(cwd, 'shop.json'), '--json'])
  expect({ code, out }).toEqual({ code: 3, out: '' })
  expect(JSON.parse(err)).toMatchObject({
    type: 'urn:sumpbook:refused-input',
    errors: [{ pointer: '', expected: 'a whole JSON document' }],
  })
})

test('a file that is not there is refused', async () => {
  const { code, err } = await run(folder(), ['import', 'nowhere.csv'])
  expect(code).toBe(3)
  expect(err).toContain('found no file at nowhere.csv')
})

test('a preview writes nothing', async () => {
  const cwd = folder()
  expect((await run(cwd, ['import', join(cwd, 'shop.json'), '--preview'])).out).toContain(
    'Would take in 1 entries and 4 things',
  )
  expect(JSON.parse((await run(cwd, ['today', '--json'])).out)).toMatchObject({ items: [], calm: [] })
})

test('standard input can be imported', async () => {
  const cwd = folder()
  expect(await run(cwd, ['import', '-'], { stdin: JSON.stringify(shop) })).toMatchObject({ code: 0 })
  expect((await run(cwd, ['today', ...at])).out).toContain('Mill 1')
})

test('calc reads one JSON object, or flags', async () => {
  const cwd = folder()
  const stdin = JSON.stringify({ volume: 150, concentration: 6.5, fillVolume: 200, target: 6 })
  const byJson = await run(cwd, ['calc', 'top-up', '--json'], { stdin })
  expect(JSON.parse(byJson.out)).toMatchObject({
    action: 'top-up',
    add: { volume: 50, strength: 4.5, concentrate: 2.25, water: 47.75 },
  })
  const byFlags = await run(cwd, [
    'calc',
    'top-up',
    '--json',
    '--volume',
    '150',
    '--concentration',
    '6,5',
    '--fill-volume',
    '200',
    '--target',
    '6',
  ])
  expect(byFlags.out).toBe(byJson.out)
  expect((await run(cwd, ['calc', 'top-up'], { stdin })).out).toContain('Add 50 L at 4.5 %.')
})

test.each([
  ['an unknown field', 'top-up', { volume: 150, concentration: 6.5, fillVolume: 200, target: 6, targit: 1 }, '/targit'],
  ['a negative volume', 'top-up', { volume: -150, concentration: 6.5, fillVolume: 200, target: 6 }, '/volume'],
  [
    'a target above the strongest mix',
    'top-up',
    { volume: 150, concentration: 6.5, fillVolume: 200, target: 21 },
    '/target',
  ],
  ['a level above the brim', 'top-up', { volume: 263, concentration: 6.5, fillVolume: 200, target: 6 }, '/volume'],
  ['a Brix above the scale', 'concentration', { brix: 96, factor: 1 }, '/brix'],
  ['no factor and no chart', 'concentration', { brix: 5 }, '/factor'],
  ['an unknown unit', 'hardness', { value: 1, unit: 'grads' }, '/unit'],
  [
    'a level above the vessel',
    'vessel',
    { shapes: [{ kind: 'box', length: 1000, width: 500, height: 300 }], level: 301 },
    '/level',
  ],
  ['a step that says nothing', 'tracer-volume', { before: 5, after: 5.1, added: 1, sd: 0.2 }, '/after'],
])('calc refuses %s by name', async (_, name, input, pointer) => {
  const { code, out, err } = await run(folder(), ['calc', name, '--json'], { stdin: JSON.stringify(input) })
  expect({ code, out }).toEqual({ code: 3, out: '' })
  expect(JSON.parse(err)).toMatchObject({
    errors: [{ pointer, found: expect.any(String), expected: expect.any(String) }],
  })
})

test('a negative number as a flag is refused by name, not taken for an option', async () => {
  const { code, err } = await run(folder(), [
    'calc',
    'top-up',
    '--volume',
    '-5',
    '--concentration',
    '6',
    '--fill-volume',
    '200',
    '--target',
    '6',
  ])
  expect(code).toBe(3)
  expect(err).toContain('/volume: found -5, expected at least 0')
})

test.each([
  ['text that is not JSON', '{"volume": NaN}'],
  ['nothing', ''],
  ['JSON that ends early', '{"volume": 1'],
])('calc refuses %s', async (_, stdin) => {
  expect(await run(folder(), ['calc', 'top-up'], { stdin })).toMatchObject({ code: 3, out: '' })
})

test.each([
  ['an unknown command', ['brew']],
  ['an unknown option', ['today', '--tomorrow']],
  ['an unknown calculation', ['calc', 'nonsense']],
  ['an unknown unit system', ['today', '--units', 'cubits']],
  ['a time without offset', ['today', '--at', '2026-03-03T10:00:00']],
  ['no file', ['import']],
  ['two files', ['export', 'a', 'b']],
  ['a date order there is not', ['import', 'shop.json', '--dates', 'ydm']],
  ['a port there is not', ['serve', '--port', 'seventy']],
])('%s is a mistake of usage', async (_, args) => {
  const cwd = folder()
  const { code, out, err } = await run(
    cwd,
    args.map((arg) => (arg === 'shop.json' ? join(cwd, arg) : arg)),
  )
  expect({ code, out }).toEqual({ code: 2, out: '' })
  expect(err).not.toBe('')
})

test('a book that cannot be opened is out of reach', async () => {
  const cwd = folder()
  writeFileSync(join(cwd, 'book.sqlite'), 'This is a letter and no database. '.repeat(40))
  expect(await run(cwd, ['today', '--data', 'book.sqlite'])).toMatchObject({ code: 6, out: '' })
})

test('settings come by flag, else from the environment, else from the file in the folder', async () => {
  const cwd = folder()
  writeFileSync(join(cwd, 'sumpbook.json'), JSON.stringify({ data: 'by-file' }))
  const bring = (args: string[], env: Record<string, string> = {}) =>
    run(cwd, ['import', join(cwd, 'shop.json'), ...args], { env })
  await bring([])
  await bring([], { SUMPBOOK_DATA: 'by-environment' })
  writeFileSync(join(cwd, 'secret'), 'by-secret\n')
  await bring([], { SUMPBOOK_DATA_FILE: join(cwd, 'secret') })
  await bring(['--data', 'by-flag'], { SUMPBOOK_DATA: 'by-environment' })
  for (const data of ['by-file', 'by-environment', 'by-secret', 'by-flag']) {
    expect((await run(cwd, ['today', ...at, '--data', data])).out).toContain('Mill 1')
  }
}, 20_000)

test('help names every command, and each explains itself', async () => {
  const { code, out } = await run(folder(), ['--help'])
  expect(code).toBe(0)
  for (const name of [
    'serve',
    'demo',
    'import',
    'export',
    'today',
    'verify',
    'backup',
    'restore',
    'move-store',
    'calc',
  ]) {
    expect(out).toContain(`  ${name}`)
    expect((await run(folder(), [name, '--help'])).out).toContain(`sumpbook ${name}`)
  }
})

test('it says its version', async () => {
  expect(await run(folder(), ['--version'])).toMatchObject({ code: 0, out: expect.stringMatching(/^\d+\.\d+\.\d+\n$/) })
})
