import { ask } from './client.ts'
import type { JournalEntry } from './types.ts'

export type Role = 'reader' | 'operator' | 'keeper' | 'owner'

/** Who is signed in on this device, and how one gets in. */
export interface Session {
  /** Whether accounts are needed here. */
  accounts: boolean
  /** Whether the book waits for its first owner. */
  firstRun: boolean
  by: 'machine' | 'session' | 'token' | 'nobody'
  person: { id: string; name: string } | null
  role: Role | null
  device: { id: string; kind: 'personal' | 'device' | 'shared'; name: string } | null
  /** Whether one-time codes are asked for after the password of who is signed in. */
  secondFactor: boolean
  hasPin: boolean
  /** The name of a provider of OpenID Connect. */
  provider: string | null
}

export interface Account {
  id: string
  name: string
  role: Role
  /** Only owners see the rest. */
  login?: string | null
  closedAt?: string | null
  secondFactor?: boolean
  hasPin?: boolean
}

export interface SessionLine {
  id: string
  since: string
  lastSeen: string
  address: string | null
  browser: string | null
  isThis?: boolean
}

export interface TokenLine {
  id: string
  kind: 'personal' | 'device' | 'shared'
  name: string
  scopes: string[]
  madeAt: string
  expiresAt: string | null
  usedAt: string | null
}

/** A code that lets somebody in once. */
export interface Invitation {
  id: string
  code: string
  expires: string
}

const send = <T>(method: string, path: string, body?: unknown) =>
  ask<T>(path, {
    method,
    ...(body === undefined ? {} : { headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) }),
  })

export const readSession = () => ask<Session>('/session')
export const signIn = (login: string, password: string) =>
  send<{ secondFactor: boolean }>('POST', '/session', { login, password })
export const sendSecondFactor = (code: string) => send<unknown>('POST', '/session/second-factor', { code })
export const firstRun = (chosen: { code: string; name: string; login: string; password: string }) =>
  send<unknown>('POST', '/session/first-run', chosen)
export const join = (chosen: { code: string; login: string; password: string }) =>
  send<unknown>('POST', '/session/join', chosen)
export const signOut = () => send<unknown>('DELETE', '/session')
/** Where the provider's page begins. */
export const providerAddress = '/api/v1/session/provider'

export const readPeople = async () => (await ask<{ people: Account[] }>('/people')).people
export const invite = (name: string, role: Role) => send<Invitation>('POST', '/people', { name, role })
export const changePerson = (id: string, change: { role?: Role; closed?: boolean; name?: string }) =>
  send<Account>('PUT', `/people/${id}`, change)
export const newCode = (id: string) => send<Invitation>('POST', `/people/${id}/code`)

/** Of somebody (their id), or one's own (`null`). */
const whose = (person: string | null) => (person === null ? '/me' : `/people/${person}`)
export const readSessions = async (person: string | null) =>
  (await ask<{ sessions: SessionLine[] }>(`${whose(person)}/sessions`)).sessions
export const endSession = (person: string | null, id: string) =>
  send<unknown>('DELETE', `${whose(person)}/sessions/${id}`)
export const readTokens = async (person: string | null) =>
  (await ask<{ tokens: TokenLine[] }>(`${whose(person)}/tokens`)).tokens
export const endToken = (person: string | null, id: string) => send<unknown>('DELETE', `${whose(person)}/tokens/${id}`)

export const changePassword = (password: string, newPassword: string) =>
  send<unknown>('PUT', '/me/password', { password, newPassword })
export const changePin = (pin: string | null, password: string) => send<unknown>('PUT', '/me/pin', { pin, password })
export const beginSecondFactor = (password: string) =>
  send<{ uri: string; secret: string; spareCodes: string[] }>('POST', '/me/second-factor', { password })
export const confirmSecondFactor = (code: string) => send<unknown>('PUT', '/me/second-factor', { code })
export const endSecondFactor = (password: string) => send<unknown>('DELETE', '/me/second-factor', { password })
export const makeToken = (made: { name: string; scopes: string[]; days: number }) =>
  send<{ id: string; token: string }>('POST', '/me/tokens', made)
export const keepSignedIn = (name: string) => send<unknown>('POST', '/me/devices', { name })

export const readDevices = async () => (await ask<{ devices: TokenLine[] }>('/devices')).devices
export const shareThisDevice = (name: string, role: Role) =>
  send<unknown>('POST', '/devices', { name, role, here: true })
export const endDevice = (id: string) => send<unknown>('DELETE', `/devices/${id}`)
export const readPeopleHere = async () =>
  (await ask<{ people: { id: string; name: string }[] }>('/device/people')).people
export const switchTo = (person: string, pin: string) => send<unknown>('PUT', '/device/person', { person, pin })
export const leaveDevice = () => send<unknown>('DELETE', '/device/person')

/** Everything there is to know of one entry. */
export interface EntryPage extends JournalEntry {
  seq: number | null
  hash: string | null
  receivedAt: string
  writtenAt: string
  envelope: { person: string | null; device: string | null; clockAheadMs: number | null; heldSince?: string } | null
  entry: { [field: string]: unknown; at: string; typed?: Record<string, string>; device?: string; note?: string }
  quarantine: string | null
  voids: { id: string; at: string; by: string | null; reason: string | null }[]
  deviceName: string | null
}

export interface HeldEntry extends JournalEntry {
  receivedAt: string
  why: string
  waitsFor: 'keeper' | 'set-up' | 'newer version'
}

export const readEntry = (id: string) => ask<EntryPage>(`/entries/${encodeURIComponent(id)}`)
export const readQuarantine = async () => (await ask<{ entries: HeldEntry[] }>('/quarantine')).entries
