import { readFileSync } from 'node:fs'
import type { Plugin, Rolldown } from 'vite'
import { shortName } from '../../fluid/src/words/short-name.ts'
import { saidIn, textsIn } from './spoken.ts'
import { listAsCode, namedAsCode } from './words-as-code.ts'

/** A file of a catalogue, of whatever part of the product. */
const catalogueFile = /\/src\/words\/(?:de|es)\/[\w-]+\.json$/
/** What the first page says in a language; and what all other pages say, in English too. */
const catalogueModule = /\/web\/src\/words\/(?<pages>pages\/)?(?<language>en|de|es)\.ts$/
const source = /\/(?:web|fluid)\/src\/.*\.tsx?$/
const marked = /(["'`])said:([0-9a-z]+)\1/g

type Chunks = Record<string, Rolldown.RenderedChunk>
type Told = Readonly<Record<string, string>>

/**
 * Takes the words out of the code of the pages, so that a phone fetches them in one language. A sentence that is said where it stands,
 * `say('Add {volume}')`, becomes `say('17')`, and `words/pages/<language>` a list in which that is the eighteenth. What the first page says stays where it stands:
 * English is there at once. A text that stands in code otherwise, in a table say, is in a catalogue by its short name.
 *
 * Of the catalogues' files only what the app says itself is taken; what only the server says comes with the server's answers.
 */
export function wordsApart(): Plugin {
  const sentences = new Map<string, string>()
  let made: Words | null = null
  return {
    name: 'words-apart',
    apply: 'build',
    enforce: 'post',
    renderStart() {
      made = null
    },
    transform(code, id) {
      if (!source.test(id) || catalogueModule.test(id) || !/\b(say|Said)\b/.test(code)) return null
      let marks = code
      for (const { text, start, end } of saidIn(code).sort((a, b) => b.start - a.start)) {
        const name = shortName(text)
        if ((sentences.get(name) ?? text) !== text) throw new Error(`another sentence has the short name of "${text}"`)
        sentences.set(name, text)
        marks = `${marks.slice(0, start)}"said:${name}"${marks.slice(end)}`
      }
      return { code: marks, map: null }
    },
    renderChunk(code, chunk, _options, { chunks }) {
      made ??= wordsOf(chunks, sentences)
      const { pages, language } = catalogueModule.exec(chunk.facadeModuleId ?? '')?.groups ?? {}
      if (language !== undefined) {
        const told = language === 'en' ? null : toldIn(language, chunks)
        return `export const catalogue = ${pages === undefined ? made.firstPage(told!) : made.otherPages(told)}`
      }
      return code.replace(marked, (_, __, name: string) =>
        JSON.stringify(made!.isFirst(chunk) ? sentences.get(name)! : String(made!.numbers.get(name))),
      )
    },
  }
}

interface Words {
  isFirst(chunk: Rolldown.RenderedChunk): boolean
  /** Of each sentence of a page other than the first, by its short name: its place in the list. */
  numbers: ReadonlyMap<string, number>
  firstPage(told: Told): string
  /** @param told null: in English, which needs nothing of what stands in the code */
  otherPages(told: Told | null): string
}

/** What the chunks of an app say, once they are laid out. */
function wordsOf(chunks: Chunks, sentences: ReadonlyMap<string, string>): Words {
  const first = new Set(Object.values(chunks).filter(({ isEntry }) => isEntry))
  for (const { imports } of first) for (const name of imports) if (chunks[name] !== undefined) first.add(chunks[name])
  const others = Object.values(chunks).filter((one) => !first.has(one))

  const atFirst = new Set<string>()
  for (const text of [...first].flatMap(codeIn).flatMap(textsIn))
    atFirst.add(sentences.get(/^said:(\w+)$/.exec(text)?.[1] ?? '') ?? text)

  const numbers = new Map<string, number>()
  const inTables = new Set<string>()
  // The order of modules is that of the folders: sentences of one page stand together, which compresses best.
  for (const code of others.flatMap(codeIn)) {
    for (const [, , name] of code.matchAll(marked)) if (!numbers.has(name!)) numbers.set(name!, numbers.size)
    for (const text of textsIn(code)) if (!text.startsWith('said:') && !atFirst.has(text)) inTables.add(text)
  }
  return {
    isFirst: (chunk) => first.has(chunks[chunk.fileName] ?? chunk),
    numbers,
    firstPage: (told) => namedAsCode(byName(atFirst, told)),
    otherPages: (told) => {
      const list = [...numbers.keys()].map((name) => sentences.get(name)!)
      const named = told === null ? {} : byName(inTables, told)
      for (const name of Object.keys(named))
        if (Number(name) < list.length) throw new Error(`"${name}" is a sentence's place and another's short name`)
      return `{ list: ${listAsCode(list.map((text) => told?.[text] ?? text))}, named: ${namedAsCode(named)} }`
    },
  }
}

const codeIn = ({ modules }: Rolldown.RenderedChunk): string[] =>
  Object.entries(modules)
    .filter(([id, { code }]) => code !== null && source.test(id) && !catalogueModule.test(id))
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([, { code }]) => code!)

/** @throws Error two sentences that share a short name: one of them wants another word */
function byName(texts: ReadonlySet<string>, told: Told): Told {
  const named: Record<string, string> = {}
  for (const text of [...texts].sort()) {
    if (!Object.hasOwn(told, text)) continue
    const name = shortName(text)
    if (Object.hasOwn(named, name)) throw new Error(`another sentence has the short name of "${text}"`)
    named[name] = told[text]!
  }
  return named
}

/** All that the parts of the product say in a language. */
function toldIn(language: string, chunks: Chunks): Told {
  const files = Object.values(chunks).flatMap(({ moduleIds }) => moduleIds)
  return Object.assign(
    {},
    ...files
      .filter((id) => catalogueFile.test(id) && id.includes(`/words/${language}/`))
      .map((file) => JSON.parse(readFileSync(file, 'utf8')) as Told),
  )
}
