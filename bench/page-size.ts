import { globSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { gzipSync } from 'node:zlib'

const dist = fileURLToPath(new URL('../packages/web/dist', import.meta.url))

/** Script and style in KB after gzip: what the entry page names itself with what those files import at once, and the whole app. */
export function benchPage() {
  const page = readFileSync(join(dist, 'index.html'), 'utf8')
  const named = [...page.matchAll(/(?:src|href)="\/?(assets\/[^"]+\.(?:js|css))"/g)].map(([, file]) => file!)
  const all = globSync('assets/*.{js,css}', { cwd: dist })
  return { entryKB: kilobytes(withImports(named)), wholeKB: kilobytes(all), limitEntryKB: 70 }
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
