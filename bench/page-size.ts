import { globSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { gzipSync } from 'node:zlib'

const dist = fileURLToPath(new URL('../packages/web/dist', import.meta.url))

/** Script and style in KB after gzip: what the entry page names itself with what those files import at once; the whole app in English, and in the language with the largest catalogue. */
export function benchPage() {
  const page = readFileSync(join(dist, 'index.html'), 'utf8')
  const named = [...page.matchAll(/(?:src|href)="\/?(assets\/[^"]+\.(?:js|css))"/g)].map(([, file]) => file!)
  const all = globSync('assets/*.{js,css}', { cwd: dist })
  const isCatalogue = (file: string) => /assets\/(de|es)-[^/]+\.js$/.test(file)
  const catalogues = all.filter(isCatalogue).map((file) => kilobytes([file]))
  const englishKB = kilobytes(all.filter((file) => !isCatalogue(file)))
  return {
    entryKB: kilobytes(withImports(named)),
    limitEntryKB: 70,
    wholeEnglishKB: englishKB,
    wholeKB: Math.round(10 * (englishKB + Math.max(...catalogues))) / 10,
    limitWholeKB: 300,
  }
}

function withImports(named: string[]): string[] {
  const found = new Set(named)
  for (const file of found) {
    if (!file.endsWith('.js')) continue
    const text = readFileSync(join(dist, file), 'utf8')
    for (const [, name] of text.matchAll(/(?:^|;|\})import\s*(?:[^'"();]*?from\s*)?["']\.\/([^"']+)["']/g))
      found.add(`assets/${name}`)
  }
  return [...found]
}

const kilobytes = (files: readonly string[]) =>
  Math.round(files.reduce((sum, file) => sum + gzipSync(readFileSync(join(dist, file))).length, 0) / 100) / 10
