/** Who has said that they do something, so that nobody else begins it as well. */
export interface Claim {
  /** What is claimed: `pour:mill3`, a duty's key, `job:<id>`. */
  key: string
  /** The entry. */
  entry: string
  by: string | null
  device: string | null
  /** RFC 3339, UTC. */
  at: string
  /** When it ends by itself. */
  until: string
  /** Claims that came while it stood: whoever made them should know who was first. */
  lost: LostClaim[]
}

export interface LostClaim {
  entry: string
  by: string | null
  device: string | null
  at: string
}

/** Something on Today's list, with who has said that they do it. */
export type Claimed<Line> = Line & {
  /** Null where nobody has. */
  claimedBy: Claim | null
}

/** A pour of Today's list, with the job that is under way at its sump: while one is, nothing else is poured there. */
export type ClaimedPour<Line> = Claimed<Line> & { job: { id: string; title: string; next: string | null } | null }
