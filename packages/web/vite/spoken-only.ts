import { readFileSync } from 'node:fs'
import { type Plugin, parseSync } from 'vite'
import { shortName } from '../../fluid/src/words/short-name.ts'

/** A file of a catalogue, of whatever part of the product. */
const catalogueFile = /\/src\/words\/(?:de|es)\/[\w-]+\.json$/
const catalogueModule = /\/web\/src\/words\/(?:de|es)\.ts$/

/**
 * Of the catalogues the app gets the sentences that it says itself, under short names; what only the server says comes with the server's answers.
 * An English sentence counts as the app's where it stands as a text in the code of one of its chunks.
 */
export function spokenOnly(): Plugin {
  return {
    name: 'spoken-only',
    apply: 'build',
    renderChunk(_code, chunk, _options, { chunks }) {
      if (chunk.facadeModuleId === null || !catalogueModule.test(chunk.facadeModuleId)) return null
      const texts = new Set<string>()
      for (const { modules } of Object.values(chunks))
        for (const [id, { code }] of Object.entries(modules))
          if (code !== null && !catalogueFile.test(id) && !catalogueModule.test(id)) collectTexts(code, texts)
      const files = chunk.moduleIds.filter((id) => catalogueFile.test(id))
      return `export const catalogue = ${JSON.stringify(shortCatalogue(files, texts))}`
    },
  }
}

/** @throws Error two sentences that share a short name: one of them wants another word */
function shortCatalogue(files: readonly string[], spoken: ReadonlySet<string>): Record<string, string> {
  const all: Record<string, string> = Object.assign({}, ...files.map((file) => JSON.parse(readFileSync(file, 'utf8'))))
  const short: Record<string, string> = {}
  for (const [message, told] of Object.entries(all)) {
    if (!spoken.has(message)) continue
    const name = shortName(message)
    if (Object.hasOwn(short, name)) throw new Error(`another sentence has the short name of "${message}"`)
    short[name] = told
  }
  return short
}

/** Every text that stands whole in a piece of code. */
function collectTexts(code: string, texts: Set<string>): void {
  const visit = (node: unknown): void => {
    if (node === null || typeof node !== 'object') return
    const { type, value, quasis } = node as { type?: string; value?: unknown; quasis?: { value: { cooked: string } }[] }
    if (type === 'Literal' && typeof value === 'string') texts.add(value)
    if (type === 'TemplateLiteral' && quasis?.length === 1) texts.add(quasis[0]!.value.cooked)
    for (const part of Object.values(node)) visit(part)
  }
  visit(parseSync('module.js', code).program)
}
