/** A phone with a browser of its own, which can be killed and opened again, and what lies in its store. */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { onTestFinished } from 'vitest'
import { openProfile, type ProfileBrowser } from './chromium.ts'
import { phone } from './on-a-screen.ts'

/** A phone whose browser can be killed and opened again. */
export async function phoneOf(...flags: string[]) {
  const folder = mkdtempSync(join(tmpdir(), 'sumpbook-phone-'))
  let profile: ProfileBrowser | null = null
  onTestFinished(async () => {
    await profile?.close()
    rmSync(folder, { recursive: true, force: true, maxRetries: 5 })
  })
  return {
    open: async (): Promise<ProfileBrowser> => {
      profile = await openProfile(folder, ...flags)
      return profile
    },
  }
}

export async function pageOf({ context }: ProfileBrowser, screen = phone): Promise<Page> {
  const page = await context.newPage()
  // A first start brings app, worker and all pages of the book: on a machine that does much else, the book's first answer alone took 29 s.
  page.setDefaultTimeout(90_000)
  await page.setViewportSize(screen)
  return page
}

/** The worker has all files and the page is its own. */
export const isInstalled = (page: Page) =>
  page.waitForFunction(async () => (await navigator.serviceWorker.ready) && navigator.serviceWorker.controller !== null)

/** What lies in the phone's own store. */
export const kept = (page: Page, store: 'outbox' | 'answers') =>
  page.evaluate(
    (name) =>
      new Promise<{ entry?: { id: string }; taken?: unknown; who?: string }[]>((resolve, reject) => {
        const opening = indexedDB.open('sumpbook')
        opening.onerror = () => reject(opening.error)
        opening.onsuccess = () => {
          const asked = opening.result.transaction(name).objectStore(name).getAll()
          asked.onsuccess = () => {
            opening.result.close()
            resolve(asked.result)
          }
        }
      }),
    store,
  )
/** What the book does not have yet. */
export const waitingIds = async (page: Page) =>
  (await kept(page, 'outbox')).filter(({ taken }) => taken === null).map(({ entry }) => entry!.id)
