/** The tables of a book, the same on every database. Times are fixed-width UTC text, bodies canonical JSON. */
export interface Tables {
  /** What the book says of itself: its id, unknown fields of an imported file. */
  meta: { key: string; value: string }
  /** The things of the shop as they first came in; what changed since stands in `setup` entries. */
  thing: { kind: string; id: string; position: number; body: string }
  /** The journal, append-only, in order of arrival. */
  entry: EntryRow
  /** One row: the last arrival, locked by whoever writes next. */
  head: HeadRow
  /** What follows from the journal and may be thrown away. */
  projection: { name: string; day: number; key: string; body: string }
  /** Entries that wait for a keeper before the journal takes them. */
  held: HeldRow
  /** Accounts, in the form the authentication library keeps them. */
  person: PersonRow
  person_session: {
    id: string
    token: string
    userId: string
    createdAt: string | Date
    updatedAt: string | Date
    expiresAt: string | Date
    ipAddress: string | null
    userAgent: string | null
  }
  person_account: { id: string; userId: string; providerId: string; accountId: string; password: string | null }
  person_two_factor: { id: string; userId: string }
  /** Codes that let somebody in once. */
  person_code: {
    hash: string
    purpose: string
    person: string | null
    made_at: string
    expires_at: string
    used_at: string | null
  }
  /** Tokens of people and of devices. */
  person_token: TokenRow
  /** Who switched in on which shared device, and when. */
  person_switch: { token: string; person: string; at: string }
  /** How often something was tried since when. */
  person_try: { key: string; since: string; count: number }
  person_secret: { name: string; value: string }
}

export interface HeldRow {
  id: string
  body: string
  envelope: string
  received_at: string
  reason: string
  /** The verdict that let it in, or the void that set it aside; null while it waits. */
  answered_by: string | null
  answer: string | null
}

export interface PersonRow {
  id: string
  name: string
  /** What a person signs in with. */
  email: string
  role: string
  createdAt: string | Date
  twoFactorEnabled: boolean | number | null
  closed_at: string | null
  /** Of the quick switch on a shared device, hashed. */
  pin: string | null
}

export interface TokenRow {
  id: string
  hash: string
  /** `personal`, `device` or `shared`. */
  kind: string
  name: string
  person: string | null
  /** What can be done with it at most. */
  role: string
  scopes: string
  acting: string | null
  acting_until: string | null
  made_at: string
  made_by: string | null
  expires_at: string | null
  used_at: string | null
  ended_at: string | null
}

export interface HeadRow {
  one: number
  seq: number
  hash: string
  setup_seq: number
  /** The hash at `setup_seq`: it stands for every change of a thing. */
  setup_hash: string
  /** Seals of what the chain leaves out. */
  things_seal: string
  arrivals_seal: string
  meta_seal: string
}

export interface EntryRow {
  /** Order of arrival, without gaps from 1. */
  seq: number
  id: string
  at: string
  /** Order among entries of one instant. */
  rank: number
  kind: string
  /** The kind again where the entry says what others mean (`setup`, `void`, `charge`, `transfer`), else null. */
  governs: string | null
  sump: string | null
  about_kind: string | null
  about_id: string | null
  body: string
  hash: string
  received_at: string
  /** What the server knows of how it came, canonical JSON; null where it came without accounts. */
  envelope: string | null
}
