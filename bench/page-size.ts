import { globSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { gzipSync } from 'node:zlib'

const dist = fileURLToPath(new URL('../packages/web/dist', import.meta.url))

/** Script and style in KB after gzip: what the entry page names itself with what those files import at once; the whole app in each language. */
export function benchPage() {
  const page = readFileSync(join(dist, 'index.html'), 'utf8')
  const named = [...page.matchAll(/(?:src|href)="\/?([^"]+\.(?:js|css))"/g)].map(([, file]) => file!)
  const all = globSync('assets/*.{js,css}', { cwd: dist })
  /** Code, and the words of one language. */
  const whole = (language: string) =>
    kilobytes(all.filter((file) => (/assets\/(en|de|es)-[^/]+\.js$/.exec(file)?.[1] ?? language) === language))
  return {
    entryKB: kilobytes(withImports(named)),
    limitEntryKB: 70,
    wholeKB: { en: whole('en'), de: whole('de'), es: whole('es') },
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
