import { say } from '@sumpbook/fluid'
import type { Fault } from '../fields/read.ts'

export type LabelAddress = { origin: string } | { fault: Fault }

/** Where the codes on labels lead: "https://coolant.example", "192.168.0.9:7340". Without a scheme it is plain http, as the server speaks it. */
export function readLabelAddress(text: string): LabelAddress {
  const found = text.trim()
  const full = /^[a-z]+:\/\//i.test(found) ? found : `http://${found}`
  const fault = {
    found: found === '' ? say('nothing') : found,
    expected: say('the address of the book without a page, such as http://192.168.0.9:7340'),
  }
  if (!URL.canParse(full)) return { fault }
  const { protocol, origin, pathname, search, hash, username } = new URL(full)
  const isBare = pathname === '/' && search === '' && hash === '' && username === ''
  return isBare && /^https?:$/.test(protocol) ? { origin } : { fault }
}

/** Whether an address names the machine that asks: a phone that follows it looks for the book on itself. */
export function isLoopback(origin: string): boolean {
  const { hostname } = new URL(origin)
  return /^(localhost|.*\.localhost|127(\.\d+){3}|\[::1\]|0\.0\.0\.0)$/.test(hostname)
}
