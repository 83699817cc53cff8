/** What people may do, each with all that the one before may. */
export const roles = ['reader', 'operator', 'keeper', 'owner'] as const
export type Role = (typeof roles)[number]

/** What a token may be used for, beside what its person may do. */
export const scopes = ['read', 'write', 'manage'] as const
export type Scope = (typeof scopes)[number]

export const isRole = (text: string): text is Role => (roles as readonly string[]).includes(text)

/** Whether somebody with a role may do what another role is needed for. */
export const reaches = (role: Role, needed: Role): boolean => roles.indexOf(role) >= roles.indexOf(needed)

/** The lesser of two roles. */
export const lesser = (one: Role, other: Role): Role => (reaches(one, other) ? other : one)
