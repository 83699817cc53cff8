import { spawn } from 'node:child_process'
import { existsSync } from 'node:fs'
import { type Browser, type BrowserContext, chromium } from 'playwright-core'

/** Where systems keep a Chromium, in the order of trying. */
const systemPlaces = [
  process.env.CHROMIUM_PATH,
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/usr/bin/google-chrome-stable',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
]

/** What a browser in a test must not do: call home, keep a profile, want a graphics card. */
const flags = [
  '--headless',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
]

/** The system's, else the one that a package brings on Linux. A test without a browser fails, it is never left out. */
const chromiumPlace = async (): Promise<string> =>
  systemPlaces.find((path) => path !== undefined && existsSync(path)) ?? (await packagedChromium())

/** A real Chromium, with no profile. */
export async function openChromium(...more: string[]): Promise<Browser> {
  return chromium.launch({ executablePath: await chromiumPlace(), args: [...flags, ...more], headless: true })
}

/** A browser with a profile that outlives it. */
export interface ProfileBrowser {
  browser: Browser
  /** The one context there is, that of the profile. */
  context: BrowserContext
  /** Ends it as a phone ends what it needs the memory of: at once, nothing said. */
  kill(): Promise<void>
  close(): Promise<void>
}

/** A Chromium on a profile in a folder, in a process of its own, which can be killed and opened again on the same profile. */
export async function openProfile(folder: string, ...more: string[]): Promise<ProfileBrowser> {
  const args = [...flags, ...more, `--user-data-dir=${folder}`, '--remote-debugging-port=0', 'about:blank']
  const running = spawn(await chromiumPlace(), args, { stdio: ['ignore', 'ignore', 'pipe'], detached: true })
  const ended = new Promise<void>((resolve) => running.once('exit', () => resolve()))
  const { promise: door, resolve, reject } = Promise.withResolvers<string>()
  let said = ''
  running.stderr!.on('data', (chunk: Buffer) => {
    said += chunk.toString()
    const address = /DevTools listening on (ws:\S+)/.exec(said)?.[1]
    if (address !== undefined) resolve(address)
  })
  running.once('exit', (code) => reject(new Error(`the browser ended with ${code}: ${said}`)))
  const browser = await chromium.connectOverCDP(await door)
  const kill = async () => {
    // All its processes are of one group, so that none of them writes on.
    if (running.exitCode === null && running.signalCode === null) process.kill(-running.pid!, 'SIGKILL')
    await ended
  }
  return {
    browser,
    context: browser.contexts()[0]!,
    kill,
    close: async () => {
      await browser.close().catch(() => {})
      await kill()
    },
  }
}

async function packagedChromium(): Promise<string> {
  if (process.platform !== 'linux' || process.arch !== 'x64') {
    throw new Error('No Chromium was found. Install Chromium or Google Chrome, or name one in CHROMIUM_PATH.')
  }
  const { default: packaged } = await import('@sparticuz/chromium')
  return packaged.executablePath()
}
