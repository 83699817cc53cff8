import { staysOffLine } from '../offline/reach.ts'
import { devicePhotos, type KeptPhoto, type PhotoKeep } from './photo-keep.ts'
import { photoName, putPhoto } from './send-photo.ts'
import { shrinkPhoto } from './shrink-photo.ts'
import { refusedPhotos, waitingPhotos } from './waiting-count.ts'

const photos = devicePhotos()

/** A picture that nobody wrote down in so long was only looked at. */
const strayMs = 24 * 3_600_000

/**
 * Makes a picture ready and keeps it on the device until an entry names it.
 *
 * @throws {NoPhoto} a picture that cannot be sent
 * @throws {DOMException} a device that does not keep it
 */
export async function takePhoto(file: Blob): Promise<KeptPhoto> {
  const bytes = await shrinkPhoto(file)
  const photo = { name: photoName(bytes), bytes, takenAt: Date.now(), isNamed: false }
  await photos.put(photo)
  return photo
}

export const photoOf = (name: string): Promise<KeptPhoto | undefined> => photos.one(name)
export const dropPhoto = (name: string): Promise<void> => photos.drop(name)

/** An entry names it from now on: it is sent, now or when the book is in reach. */
export async function photoWritten(name: string): Promise<void> {
  const photo = await photos.one(name)
  if (photo !== undefined) await photos.put({ ...photo, isNamed: true })
  void sendWaitingPhotos()
}

/** Counts them anew: another open page may have taken or sent some. */
export async function lookAtWaitingPhotos(): Promise<void> {
  const all = await photos.list().catch(() => [])
  waitingPhotos.set(all.filter(isToSend).length)
  refusedPhotos.set(all.filter(({ isRefused }) => isRefused === true).map(({ name }) => name))
}

const isToSend = ({ isNamed, isRefused }: KeptPhoto) => isNamed && isRefused !== true

/** Somebody has seen that the book does not take it, and lets it go. */
export async function dropRefused(name: string): Promise<void> {
  await photos.drop(name)
  await lookAtWaitingPhotos()
}

let running: Promise<void> | null = null

/** Sends what waits, one after the other; again it changes nothing, so what was cut off is simply sent again. */
export function sendWaitingPhotos(): Promise<void> {
  running ??= sendFrom(photos, {
    send: putPhoto,
    isOffLine: () => staysOffLine.now(),
    now: Date.now(),
    count: (left) => waitingPhotos.set(left),
  })
    .catch(() => {
      // Storage is forbidden here: nothing waits.
    })
    .finally(() => {
      running = null
      void lookAtWaitingPhotos()
    })
  return running
}

export interface SendingParts {
  send(photo: Pick<KeptPhoto, 'name' | 'bytes'>): Promise<'taken' | 'no-answer' | 'refused'>
  isOffLine(): boolean
  /** ms since 1970. */
  now: number
  count(left: number): void
}

export async function sendFrom(keep: PhotoKeep, { send, isOffLine, now, count }: SendingParts): Promise<void> {
  const all = await keep.list()
  for (const { name } of all.filter(({ isNamed, takenAt }) => !isNamed && now - takenAt > strayMs))
    await keep.drop(name)
  let left = all.filter(isToSend)
  count(left.length)
  for (const photo of left) {
    if (isOffLine()) return
    const fate = await send(photo).catch(() => 'no-answer' as const)
    if (fate === 'no-answer') return
    // What the book refuses as it is would be refused for ever; the entry still names it, and the picture is the only one there is.
    if (fate === 'refused') await keep.put({ ...photo, isRefused: true })
    else await keep.drop(photo.name)
    left = left.filter((one) => one !== photo)
    count(left.length)
  }
}
