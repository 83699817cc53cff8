import { type Stamp, withOffset } from './stamp.ts'
import { newId } from './uuid.ts'

const deviceKey = 'sumpbook.device'
const byKey = 'sumpbook.by'

/** Who writes on this device: initials or a name, as they typed it; empty until somebody did. */
export const whoWrites = (): string => read(byKey) ?? ''

const personKey = 'sumpbook.person'

/** Who is signed in here, by id; null: nobody, or the book asks for no accounts. */
export function setSignedIn(person: string | null): void {
  write(personKey, person ?? '')
}

/** Whether somebody was signed in here when the server was last asked. */
export const isSignedIn = (): boolean => (read(personKey) ?? '') !== ''

export function setWhoWrites(by: string): void {
  write(byKey, by.trim())
}

/** A stamp for entries written now. */
export function stampNow(now = new Date()): Stamp {
  const at = withOffset(now)
  const by = read(personKey) || whoWrites()
  const device = read(deviceKey) ?? newDevice()
  return { at, recordedAt: at, newId, device, ...(by === '' ? {} : { by }) }
}

function newDevice(): string {
  const device = `web-${newId().slice(-12)}`
  write(deviceKey, device)
  return device
}

/** Some browsers forbid storage; the app then forgets between visits, and works. */
function read(key: string): string | null {
  try {
    return localStorage.getItem(key)
  } catch {
    return null
  }
}

function write(key: string, value: string): void {
  try {
    localStorage.setItem(key, value)
  } catch {
    // Nothing to do: see read.
  }
}
