/** The map of docs/architecture.md, held: which part may import which, and how files are named. */
import { globSync, readFileSync } from 'node:fs'
import { basename, dirname, join, relative, resolve } from 'node:path'
import { fileURLToPath } from 'node:url'
import { expect, test } from 'vitest'

const root = fileURLToPath(new URL('..', import.meta.url))
const parts = ['fluid', 'book', 'server', 'web', 'cli', 'demo'] as const
type Part = (typeof parts)[number]

/** What each part may import of the others; `types` only as types. Arrows run one way: there is no way back. */
const mayImport: Record<Part, { values: Part[]; types: Part[] }> = {
  fluid: { values: [], types: [] },
  book: { values: ['fluid'], types: [] },
  demo: { values: ['fluid'], types: [] },
  server: { values: ['fluid', 'book', 'demo'], types: [] },
  web: { values: ['fluid'], types: ['book', 'server'] },
  cli: { values: ['fluid', 'book', 'demo', 'server'], types: [] },
}

const sources = globSync('{packages/*,demo}/src/**/*.{ts,tsx}', { cwd: root }).map((file) => join(root, file))
const isTest = (file: string) => /\.test\.tsx?$/.test(file)
const partOf = (file: string) =>
  relative(root, file)
    .split('/')
    .find((name): name is Part => (parts as readonly string[]).includes(name))!

interface Import {
  file: string
  of: string
  typeOnly: boolean
}

const importPattern = /^\s*(import|export)\s+(type\s)?(?:[\s\S]*?\sfrom\s+)?'([^']+)'|import\('([^']+)'\)/gm

const imports: Import[] = sources.flatMap((file) =>
  [...readFileSync(file, 'utf8').matchAll(importPattern)].map(([, , type, plain, dynamic]) => ({
    file: relative(root, file),
    of: plain ?? dynamic!,
    typeOnly: type !== undefined,
  })),
)
const productImports = imports.filter(({ file }) => !isTest(file) && !file.endsWith('/testing.ts'))

test('the pattern finds the imports it is to judge', () => {
  expect(productImports.length).toBeGreaterThan(200)
  expect(imports.some(({ of }) => of === '@sumpbook/fluid')).toBe(true)
})

test('arrows between the parts run one way', () => {
  const wrong = productImports.filter(({ file, of, typeOnly }) => {
    const to = partOfImport(file, of)
    const from = partOf(join(root, file))
    if (to === null || to === from) return false
    const { values, types } = mayImport[from]
    return !values.includes(to) && !(typeOnly && types.includes(to))
  })
  expect(wrong).toEqual([])
})

test('no part reaches into another past its door', () => {
  const wrong = productImports.filter(({ file, of }) => {
    if (!of.startsWith('.')) return false
    return partOf(resolve(root, dirname(file), of)) !== partOf(join(root, file))
  })
  expect(wrong).toEqual([])
})

test('the computation knows neither Node nor the browser, nor clock nor chance', () => {
  const files = sources.filter((file) => partOf(file) === 'fluid' && !isTest(file))
  const wrong = files.filter((file) => {
    const text = readFileSync(file, 'utf8').replaceAll(/\/\*[\s\S]*?\*\/|\/\/.*/g, '')
    return /'node:|\bDate\.now\(|new Date\(\)|Math\.random\(|\bdocument\.|\bwindow\.|\bprocess\./.test(text)
  })
  expect(wrong.map((file) => relative(root, file))).toEqual([])
})

test('no two files import each other, directly or in a circle', () => {
  const next = new Map<string, string[]>()
  for (const { file, of, typeOnly } of productImports) {
    if (!of.startsWith('.') || typeOnly) continue
    const to = relative(root, resolve(root, dirname(file), of))
    next.set(file, [...(next.get(file) ?? []), to])
  }
  const circles: string[][] = []
  const done = new Set<string>()
  const walk = (file: string, way: string[]) => {
    if (way.includes(file)) circles.push([...way.slice(way.indexOf(file)), file])
    if (way.includes(file) || done.has(file)) return
    for (const to of next.get(file) ?? []) walk(to, [...way, file])
    done.add(file)
  }
  for (const file of next.keys()) walk(file, [])
  expect(circles).toEqual([])
})

test('files are named after what they hold, in kebab-case', () => {
  const wrong = sources
    .map((file) => basename(file))
    .filter((name) => !/^[a-z0-9]+(-[a-z0-9]+)*(\.(test|d))?\.tsx?$/.test(name))
  expect(wrong).toEqual([])
  const vague = sources.filter((file) => /\b(utils?|helpers?|manager|misc|common)\b/.test(basename(file)))
  expect(vague).toEqual([])
})

function partOfImport(file: string, of: string): Part | null {
  const [, scoped] = /^@sumpbook\/([a-z]+)/.exec(of) ?? []
  if (scoped !== undefined) return scoped as Part
  return of.startsWith('.') ? partOf(resolve(root, dirname(file), of)) : null
}
