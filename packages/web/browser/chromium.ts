import { existsSync } from 'node:fs'
import { type Browser, chromium } from 'playwright-core'

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

/** A real Chromium: the system's, else the one that a package brings on Linux. A test without a browser fails, it is never left out. */
export async function openChromium(): Promise<Browser> {
  const executablePath =
    systemPlaces.find((path) => path !== undefined && existsSync(path)) ?? (await packagedChromium())
  return chromium.launch({ executablePath, args: flags, headless: true })
}

async function packagedChromium(): Promise<string> {
  if (process.platform !== 'linux' || process.arch !== 'x64') {
    throw new Error('No Chromium was found. Install Chromium or Google Chrome, or name one in CHROMIUM_PATH.')
  }
  const { default: packaged } = await import('@sparticuz/chromium')
  return packaged.executablePath()
}
