import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { openBook, openStore } from '@sumpbook/book'
import { exampleShop } from '@sumpbook/demo'
import type { TestProject } from 'vitest/node'
import { openChromium } from './chromium.ts'

declare module 'vitest' {
  interface ProvidedContext {
    /** A folder with a book that is the example shop, to be copied. */
    exampleFolder: string
  }
}

/**
 * Once, before two tests start side by side: a browser that a package brings is unpacked at its first start, and the example shop is
 * written into a book, which takes as long as all that most tests do with it.
 */
export default async function setup({ provide }: TestProject): Promise<() => void> {
  await (await openChromium()).close()
  const folder = mkdtempSync(join(tmpdir(), 'sumpbook-example-'))
  const book = openBook(await openStore({ kind: 'file', file: join(folder, 'book.sqlite') }), () => new Date())
  await book.loadExample((until) => JSON.stringify(exampleShop({ until })))
  await book.settle()
  await book.close()
  provide('exampleFolder', folder)
  return () => rmSync(folder, { recursive: true, force: true })
}
