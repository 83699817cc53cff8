/** The method's pages, held to the code: links, what they name, and every example run as it is shown. */
import { existsSync, globSync, readFileSync } from 'node:fs'
import { basename, dirname, join, normalize } from 'node:path'
import { Readable, Writable } from 'node:stream'
import { fileURLToPath } from 'node:url'
import { expect, test } from 'vitest'
import { calculations } from '../packages/book/src/index.ts'
import { main } from '../packages/cli/src/main.ts'
import * as fluid from '../packages/fluid/src/index.ts'

const root = fileURLToPath(new URL('..', import.meta.url))
const textOf = (file: string) => readFileSync(join(root, file), 'utf8')
const index = 'docs/method/README.md'
const pages = globSync('docs/method/*.md', { cwd: root })
  .filter((page) => page !== index)
  .sort()

const fence = /^```(\w*)\n([\s\S]*?)^```$/gm
/** Places in this checkout that a page links to, from the root. */
const linksOf = (file: string) =>
  [
    ...textOf(file)
      .replaceAll(fence, '')
      .matchAll(/\]\(([^)\s]+)\)/g),
  ]
    .map(([, target]) => target!.replace(/#.*/, ''))
    .filter((target) => target !== '' && !/^[a-z]+:/.test(target))
    .map((target) => normalize(join(dirname(file), target)))

test('every relative link of the docs leads to a file', () => {
  const files = ['README.md', ...globSync('docs/**/*.md', { cwd: root })]
  const links = files.flatMap((file) => linksOf(file).map((to) => ({ file, to })))
  expect(links.length).toBeGreaterThan(150)
  expect(links.filter(({ to }) => !existsSync(join(root, to)))).toEqual([])
})

test('the index has one line for each page', () => {
  const listed = [...textOf(index).matchAll(/^- \[[^\]]+\]\(([\w-]+\.md)\): .+$/gm)].map(([, page]) => page!)
  expect(listed.toSorted()).toEqual(pages.map((page) => basename(page)))
})

test.each(pages)('%s names what holds it and where it stands in the code', (page) => {
  const { 'Held by': held = '', 'In code': code = '' } = sectionsOf(page)
  expect(held).toMatch(/\]\([^)]+\.(check|test)\.ts\)/)
  expect(code).toMatch(/\]\(\.\.\/\.\.\/packages\/fluid\/src\/[^)]+\.ts\)/)
})

test('every folder of the computation is named on a page', () => {
  const folders = globSync('packages/fluid/src/*/', { cwd: root }).map((folder) => normalize(folder))
  expect(folders.length).toBeGreaterThan(10)
  const linked = pages.flatMap(linksOf)
  const unnamed = folders.filter((folder) => !linked.some((to) => to.startsWith(join(folder, '/'))))
  expect(unnamed).toEqual([])
})

test('every calculation by name is shown with an example', () => {
  const shown = new Set(examples.flatMap(({ source }) => /^npx sumpbook calc ([\w-]+)/.exec(source)?.[1] ?? []))
  expect([...calculations.keys()].filter((name) => !shown.has(name))).toEqual([])
})

/** A block of code and the answer shown under it. */
interface Example {
  page: string
  language: string
  source: string
  answer: string
}

const examples: Example[] = pages.flatMap((page) => {
  const blocks = [...textOf(page).matchAll(fence)].map(([, language, text]) => ({ language: language!, text: text! }))
  return blocks.flatMap(({ language, text }, place) => {
    const after = blocks[place + 1]
    if (language !== 'sh' && language !== 'ts') return []
    return [{ page: basename(page), language, source: text, answer: after?.language === 'json' ? after.text : '' }]
  })
})

test.each(examples)('$page: $source', async ({ language, source, answer }) => {
  expect(answer, 'an example is followed by its answer in a json block').not.toBe('')
  const found = language === 'sh' ? await onCommandLine(source) : inCode(source)
  expect(differences(shownIn(answer), found)).toEqual([])
})

function sectionsOf(page: string): Record<string, string> {
  const parts = textOf(page).split(/^## /m).slice(1)
  return Object.fromEntries(parts.map((part) => [part.split('\n', 1)[0]!, part]))
}

class Sink extends Writable {
  text = ''
  override _write(chunk: Buffer, _: string, done: () => void): void {
    this.text += chunk.toString()
    done()
  }
}

/** `npx sumpbook calc NAME --flag VALUE … --json`, with what stands between `<<'JSON'` and `JSON` as its standard input. */
async function onCommandLine(source: string): Promise<unknown> {
  const [, command = '', , stdin = ''] =
    /^npx sumpbook (calc [\s\S]*?--json)( <<'JSON'\n([\s\S]*)\nJSON)?\n$/.exec(source) ?? []
  const args = [...command.matchAll(/'([^']*)'|([^\s\\]+)/g)].map(([, quoted, plain]) => quoted ?? plain!)
  const [stdout, stderr] = [new Sink(), new Sink()]
  const code = await main(args, { env: {}, stdin: Readable.from([stdin]), stdout, stderr, cwd: () => root })
  expect({ code, stderr: stderr.text }).toEqual({ code: 0, stderr: '' })
  return JSON.parse(stdout.text)
}

/** An import of the computation and one expression (behind the semicolon that keeps it from the line above), as JSON would carry its value. */
function inCode(source: string): unknown {
  const [, names = '', expression = ''] =
    /^import \{ ([^}]+) \} from '@sumpbook\/fluid'\n\n([\s\S]+)$/.exec(source) ?? []
  const evaluate = new Function('fluid', `const { ${names} } = fluid\nreturn (${expression.trim().replace(/^;/, '')})`)
  return JSON.parse(JSON.stringify(evaluate(fluid)))
}

/** A figure as it is written, with the digits it is written to. */
class Figure {
  readonly written: string
  constructor(written: string) {
    this.written = written
  }
  holds(found: unknown): boolean {
    const digits = /\.(\d+)/.exec(this.written)?.[1]?.length ?? 0
    return typeof found === 'number' && Math.abs(found - Number(this.written)) <= 0.5 * 10 ** -digits + 1e-9
  }
}

/** JSON with its numbers as {@link Figure}s. */
function shownIn(answer: string): unknown {
  const marked = answer.replaceAll(/"(?:[^"\\]|\\.)*"|-?\d[\d.]*/g, (token) =>
    token.startsWith('"') ? token : `{"written":"${token}"}`,
  )
  return JSON.parse(marked, (_, value) => (typeof value?.written === 'string' ? new Figure(value.written) : value))
}

/** Where what is shown is not what was found. Of an object some fields may be shown, of a list all places. */
function differences(shown: unknown, found: unknown, path = ''): string[] {
  const differs = [`${path}: shown ${JSON.stringify(shown)}, found ${JSON.stringify(found)}`]
  if (shown instanceof Figure) return shown.holds(found) ? [] : differs
  if (typeof shown !== 'object' || shown === null) return shown === found ? [] : differs
  if (typeof found !== 'object' || found === null) return differs
  if (Array.isArray(shown) && (found as unknown[]).length !== shown.length) return differs
  if (Object.keys(shown).length === 0 && !Array.isArray(shown)) return differs
  return Object.entries(shown).flatMap(([key, value]) =>
    differences(value, (found as Record<string, unknown>)[key], `${path}/${key}`),
  )
}
