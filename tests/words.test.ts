/** Every sentence of the product is in the catalogues of every language, whole, with the same blanks to fill; and nothing else is in them. */
import { globSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { type MessageFormatElement, parse, TYPE } from '@formatjs/icu-messageformat-parser'
import { parseSync } from 'vite'
import { expect, test } from 'vitest'
import { tableMessages } from './words/table-messages.ts'

const root = fileURLToPath(new URL('..', import.meta.url))
const parts = ['fluid', 'book', 'server', 'cli', 'web'] as const
const translated = ['de', 'es'] as const

/** As much of a syntax tree as is looked at. */
interface Syntax {
  type?: string
  name?: unknown
  value?: unknown
  callee?: Syntax
  arguments?: Syntax[]
  attributes?: Syntax[]
  expression?: Syntax
  expressions?: Syntax[]
  quasis?: Syntax[]
  consequent?: Syntax
  alternate?: Syntax
  start?: number
  end?: number
}

interface Found {
  text: string
  file: string
}

/** What sources say: `say('…')`, `message('…')`, `<Said text="…">`; and where one of them is given something put together. */
const said: Found[] = []
const putTogether: Found[] = []
for (const file of globSync(`packages/{${parts.join()}}/src/**/*.{ts,tsx}`, { cwd: root })) {
  if (/\.test\.tsx?$|\/words\/(say|speech)\.ts$/.test(file)) continue
  walk(parseSync(file, readFileSync(join(root, file), 'utf8')).program, file)
}
const messages = new Set([...said.map(({ text }) => text), ...tableMessages()])

const catalogue = (language: string, of: readonly string[] = parts): Map<string, string> => {
  const all = new Map<string, string>()
  for (const file of of.flatMap((part) => globSync(`packages/${part}/src/words/${language}/*.json`, { cwd: root })))
    for (const [text, told] of Object.entries(
      JSON.parse(readFileSync(join(root, file), 'utf8')) as Record<string, string>,
    )) {
      if (all.has(text) && all.get(text) !== told) doubled.push(`${language}: ${text}`)
      all.set(text, told)
    }
  return all
}
const doubled: string[] = []
const catalogues = translated.map((language) => [language, catalogue(language)] as const)

test('the pattern finds the sentences it is to judge', () => {
  expect(said.length).toBeGreaterThan(1000)
})

test('no sentence is put together from pieces where it is said', () => {
  expect(putTogether).toEqual([])
})

test.each(catalogues)('everything that is said is said in %s', (_, told) => {
  expect([...messages].filter((text) => !told.has(text))).toEqual([])
})

/** Whose catalogues a part loads. */
const loaded = {
  fluid: ['fluid'],
  book: ['fluid', 'book'],
  server: ['fluid', 'book'],
  cli: ['fluid', 'book', 'cli'],
  web: ['fluid', 'web'],
} as const

test.each(translated)('what a part says in %s is in the catalogues that it loads', (language) => {
  const missing = parts.flatMap((part) => {
    const told = catalogue(language, loaded[part])
    return said.filter(({ text, file }) => file.startsWith(`packages/${part}/`) && !told.has(text))
  })
  expect(missing).toEqual([])
})

test.each(catalogues)('nothing stands in %s that nobody says', (_, told) => {
  expect([...told.keys()].filter((text) => !messages.has(text))).toEqual([])
})

test('a sentence has one translation', () => {
  expect(doubled).toEqual([])
})

test.each(catalogues)('every sentence of %s has the blanks of the English one', (_, told) => {
  const wrong = [...told].filter(([text, other]) => blanksOf(text) !== blanksOf(other))
  expect(wrong).toEqual([])
})

test.each(catalogues)('every sentence of %s ends as the English one does', (_, told) => {
  const end = (text: string) => /[.:?!…]$/.exec(text)?.[0] ?? ''
  expect([...told].filter(([text, other]) => end(text) !== end(other))).toEqual([])
})

test('no sentence has a skeleton of a figure or a date, which the app could not read', () => {
  const all = [...messages, ...catalogues.flatMap(([, told]) => [...told.values()])]
  expect(all.filter((text) => /,\s*::/.test(text))).toEqual([])
})

test('code of the app that is fetched later comes with its words', () => {
  const bare = globSync('packages/web/src/**/*.{ts,tsx}', { cwd: root }).flatMap((file) => {
    const text = readFileSync(join(root, file), 'utf8').replace(/typeof import\(/g, '')
    return [...text.matchAll(/(later\(\(\) => |withItsWords\()?\bimport\(\s*'(?!\.\.\/words\/)[^']+/g)]
      .filter(([, waits]) => waits === undefined)
      .map(([fetched]) => `${file}: ${fetched}`)
  })
  expect(bare).toEqual([])
})

function walk(node: unknown, file: string): void {
  if (Array.isArray(node)) {
    for (const one of node) walk(one, file)
    return
  }
  if (node === null || typeof node !== 'object') return
  const one = node as Syntax
  if (one.type === 'CallExpression' && ['say', 'message'].includes(one.callee?.name as string))
    take(one.arguments![0], file)
  if (one.type === 'JSXOpeningElement' && (one.name as Syntax).name === 'Said') {
    const text = one.attributes!.find(({ name }) => (name as Syntax | undefined)?.name === 'text')?.value as
      | Syntax
      | undefined
    take(text?.type === 'JSXExpressionContainer' ? text.expression : text, file)
  }
  for (const [name, value] of Object.entries(one)) if (name !== 'parent') walk(value, file)
}

/** Names and members are of tables, marked there; a choice is judged by both its sides. */
function take(node: Syntax | undefined, file: string): void {
  if (node?.type === 'Literal') said.push({ text: node.value as string, file })
  else if (node?.type === 'TemplateLiteral' && node.expressions!.length === 0)
    said.push({ text: (node.quasis![0]!.value as { cooked: string }).cooked, file })
  else if (node?.type === 'ConditionalExpression') {
    take(node.consequent, file)
    take(node.alternate, file)
  } else if (node?.type === 'TemplateLiteral' || node?.type === 'BinaryExpression')
    putTogether.push({ text: readFileSync(join(root, file), 'utf8').slice(node.start, node.end), file })
}

/** Names of blanks and tags in order of the alphabet: a plural has other forms in other languages, but the same blanks. */
function blanksOf(text: string): string {
  const names = new Set<string>()
  const visit = (elements: MessageFormatElement[]) => {
    for (const element of elements) {
      if (element.type === TYPE.literal || element.type === TYPE.pound) continue
      names.add(`${element.type} ${element.value}`)
      if (element.type === TYPE.tag) visit(element.children)
      if (element.type === TYPE.plural || element.type === TYPE.select)
        for (const { value } of Object.values(element.options)) visit(value)
    }
  }
  // A "<" in a sentence of figures is no tag.
  visit(parse(text, { ignoreTag: !/<\/\w/.test(text) }))
  return [...names].sort().join()
}
