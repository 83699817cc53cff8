import { sha256 } from '@noble/hashes/sha2.js'
import { bytesToHex } from '@noble/hashes/utils.js'
import { shrinkPhoto } from './shrink-photo.ts'

/** The name that an entry's `photo` holds. A page on a plain-http address has no `crypto.subtle`, so the hash is worked out here. */
export const photoName = (bytes: Uint8Array): string => bytesToHex(sha256(bytes))

/**
 * Makes a photo ready and sends it; again it changes nothing.
 *
 * @returns the name for the entry's `photo`
 * @throws {NoPhoto} a picture that cannot be sent
 * @throws {Error} where the server did not take it
 */
export async function sendPhoto(file: Blob): Promise<string> {
  const bytes = await shrinkPhoto(file)
  const name = photoName(bytes)
  const headers = { 'content-type': 'image/jpeg' }
  const answer = await fetch(`/api/v1/attachments/${name}`, { method: 'PUT', headers, body: bytes })
  if (!answer.ok) throw new Error(`The photo was not taken: the server answered ${answer.status}.`)
  return name
}
