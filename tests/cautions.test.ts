/** What is to be minded: one list, published with its sources, and no sentence that calls a fluid safe. */
import { globSync, readFileSync } from 'node:fs'
import { join, sep } from 'node:path'
import { fileURLToPath } from 'node:url'
import { type Caution, cautions } from '@sumpbook/fluid'
import { expect, test } from 'vitest'

const root = fileURLToPath(new URL('..', import.meta.url))
const isProduct = (file: string) =>
  !/\.test\.tsx?$|\/testing\.ts$/.test(file) && !file.includes(join('src', 'cautions') + sep)
const withoutComments = (text: string) => text.replaceAll(/\/\*[\s\S]*?\*\/|(?<![:'"`])\/\/.*/g, '')
const sources = globSync('packages/*/src/**/*.{ts,tsx}', { cwd: root })
  .filter(isProduct)
  .map((file) => ({ file, text: withoutComments(readFileSync(join(root, file), 'utf8')) }))
const all = Object.entries<Caution>(cautions)

test('docs/cautions.md lists every caution with its place and source, in the same order', () => {
  const rows = readFileSync(join(root, 'docs/cautions.md'), 'utf8')
    .split('\n')
    .filter((line) => line.startsWith('| ') && !line.startsWith('| Caution') && !line.startsWith('| ---'))
    .map((line) =>
      line
        .slice(1, -1)
        .split('|')
        .map((cell) => cell.trim()),
    )
  expect(rows).toEqual(all.map(([, { text, where, source, tag }]) => [text, where, source, tag]))
})

test('nothing in the product calls a fluid safe', () => {
  expect(sources.length).toBeGreaterThan(200)
  const safe = /\b(safe|safely|harmless|risk-free|no risk|not dangerous)\b/i
  const wrong = sources.flatMap(({ file, text }) =>
    text.split('\n').flatMap((line) => (safe.test(line) ? [`${file}: ${line.trim()}`] : [])),
  )
  expect(wrong).toEqual([])
  const said = all.filter(([, { text }]) => safe.test(text)).map(([id]) => id)
  expect(said).toEqual([])
})

test('every caution is used somewhere in the product', () => {
  const product = sources.map(({ text }) => text).join('\n')
  const unused = all.map(([id]) => id).filter((id) => !new RegExp(`'${id}'|cautions\\.${id}\\b`).test(product))
  expect(unused).toEqual([])
})
