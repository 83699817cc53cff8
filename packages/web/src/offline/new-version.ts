import { outbox } from '../entry/book-outbox.ts'
import { observed } from './observed.ts'

/** Whether a newer version of the app lies on this device and waits to be let in. */
export const newVersion = observed<'none' | 'ready' | 'another-page-is-busy'>('none')

const hour = 3_600_000
const afterPictureMs = 3_000
/** Other open pages of this device are asked, and answer at once or are asleep. */
const answerMs = 400
let waiting: ServiceWorker | null = null
let typedAt: string | null = null

/**
 * Whether something on this page would be lost or broken off if it were loaded anew: at a stop of the round, in fields that
 * were typed in since the page was opened, or with entries that nothing but this page holds.
 */
export function isBusy(): boolean {
  const { pathname } = location
  return pathname.startsWith('/round/') || typedAt === pathname || outbox.view().onPage.size > 0
}

/**
 * Installs the worker that keeps the app's own files, where the page may have one (https, or this machine), and watches for
 * newer versions. One is let in at once when the app has just been opened, later while nobody looks, or when the person says
 * so; never while a page of this device is busy. What an old page fetches late would otherwise not be there any more.
 */
export function watchVersions(): void {
  document.addEventListener('input', () => {
    typedAt = location.pathname
  })
  const worker = navigator.serviceWorker
  if (worker === undefined || import.meta.env.DEV) return
  let isKept = worker.controller !== null
  worker.addEventListener('controllerchange', () => {
    if (isKept) reloadWhenFree()
    isKept = true
  })
  pages?.addEventListener('message', ({ data }) => {
    if (data === 'is anybody busy?' && isBusy()) pages.postMessage('busy')
  })
  const install = () => worker.register('/sw.js').then(watch, (error: unknown) => console.warn(error))
  // The first time it fetches all of the app's files, which the page that is being opened would have to wait for.
  if (isKept) void install()
  else setTimeout(install, afterPictureMs)
}

const pages = typeof BroadcastChannel === 'undefined' ? null : new BroadcastChannel('sumpbook.version')

function watch(registration: ServiceWorkerRegistration): void {
  const openedAt = Date.now()
  const look = () => {
    if (registration.waiting === null || navigator.serviceWorker.controller === null) return
    waiting = registration.waiting
    newVersion.set('ready')
    if (Date.now() - openedAt < 5_000 || document.visibilityState === 'hidden') void letIn()
  }
  look()
  registration.addEventListener('updatefound', () => registration.installing?.addEventListener('statechange', look))
  const ask = () => void registration.update().catch(() => {})
  setInterval(ask, hour)
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'visible') ask()
    else look()
  })
}

/** Lets the newer version in, unless a page is busy; all pages of this device are then loaded anew. */
export async function letIn(): Promise<void> {
  if (waiting === null || isBusy()) return
  if (await isAnotherBusy()) newVersion.set('another-page-is-busy')
  else waiting.postMessage({ type: 'SKIP_WAITING' })
}

async function isAnotherBusy(): Promise<boolean> {
  if (pages === null) return false
  return new Promise((resolve) => {
    const hear = ({ data }: MessageEvent) => data === 'busy' && resolve(true)
    pages.addEventListener('message', hear)
    pages.postMessage('is anybody busy?')
    setTimeout(() => {
      pages.removeEventListener('message', hear)
      resolve(false)
    }, answerMs)
  })
}

function reloadWhenFree(): void {
  if (!isBusy()) location.reload()
  else setTimeout(reloadWhenFree, 2_000)
}
