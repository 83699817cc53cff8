import { fileURLToPath } from 'node:url'
import { gzipSync } from 'node:zlib'
import { build } from 'vite'

const entry = fileURLToPath(new URL('round-needs.ts', import.meta.url))

/** What a recipe on a round needs of packages/fluid, bundled and minified as for the browser: KB after gzip. */
export async function benchRoundBundle() {
  const built = await build({
    configFile: false,
    logLevel: 'silent',
    build: { write: false, minify: true, lib: { entry, formats: ['es'], fileName: 'round' } },
  })
  const outputs = (Array.isArray(built) ? built : [built]) as { output: { code?: string }[] }[]
  const code = outputs.flatMap(({ output }) => output.map((chunk) => chunk.code ?? '')).join('')
  return { roundKB: Math.round(gzipSync(code).length / 100) / 10, limitRoundKB: 15 }
}
