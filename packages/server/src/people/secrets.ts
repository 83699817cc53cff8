import { createHash, randomBytes, randomInt } from 'node:crypto'

/** What is kept of a secret that is long and made by chance: nothing can be guessed from it. */
export const digest = (secret: string): string => createHash('sha256').update(secret).digest('hex')

/** Letters and digits that are not taken for one another when read aloud or from paper. */
const legible = '23456789ABCDEFGHJKMNPQRSTVWXYZ'

/** A code to be typed once: `7K3M-Q2XR-9TWD`, 12 of 30 signs, 58 bits. */
export function newCode(): string {
  const signs = Array.from({ length: 12 }, () => legible[randomInt(legible.length)]!)
  return [0, 4, 8].map((from) => signs.slice(from, from + 4).join('')).join('-')
}

/** A code as it was meant, however it was typed. */
export const plainCode = (typed: string): string => typed.toUpperCase().replaceAll(/[^0-9A-Z]/g, '')

/** A token that no person types: 256 bits. */
export const newToken = (): string => `sumpbook_${randomBytes(32).toString('base64url')}`
