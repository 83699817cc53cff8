import { sha256 } from '@noble/hashes/sha2.js'
import { bytesToHex } from '@noble/hashes/utils.js'

/** The name that an entry's `photo` holds. A page on a plain-http address has no `crypto.subtle`, so the hash is worked out here. */
export const photoName = (bytes: Uint8Array): string => bytesToHex(sha256(bytes))

/** What of a refusal another try can change: nobody is signed in, too many ask, the server or its disk is not well. */
const mayChange = (status: number) =>
  status === 401 || status === 403 || status === 408 || status === 429 || status >= 500

/** Sends a photo that is ready; again it changes nothing. */
export async function putPhoto({
  name,
  bytes,
}: {
  name: string
  bytes: Uint8Array<ArrayBuffer>
}): Promise<'taken' | 'no-answer' | 'refused'> {
  const headers = { 'content-type': 'image/jpeg' }
  const answer = await fetch(`/api/v1/attachments/${name}`, {
    method: 'PUT',
    headers,
    body: bytes,
    signal: AbortSignal.timeout(60_000),
  })
  if (answer.ok) return 'taken'
  return mayChange(answer.status) ? 'no-answer' : 'refused'
}
