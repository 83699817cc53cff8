import { say } from '@sumpbook/fluid'

/** Names browsers and systems give themselves, the telling one before what many others also say. */
const browsers = { Firefox: 'Firefox', Edg: 'Edge', OPR: 'Opera', Chrome: 'Chrome', Safari: 'Safari' }
const systems = {
  iPhone: 'iPhone',
  iPad: 'iPad',
  Android: 'Android',
  Windows: 'Windows',
  Macintosh: 'Mac',
  CrOS: 'Chromebook',
  Linux: 'Linux',
}

/** Which browser on what somebody is signed in with, by what it says of itself: "Firefox on Windows". */
export function sayBrowser(browser: string | null): string {
  if (browser === null) return say('A program')
  const named = (names: Record<string, string>) => Object.entries(names).find(([name]) => browser.includes(name))?.[1]
  const system = named(systems)
  const name = named(browsers) ?? browser.slice(0, 30)
  return system === undefined ? name : say('{browser} on {system}', { browser: name, system })
}
