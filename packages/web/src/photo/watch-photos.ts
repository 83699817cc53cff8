import { reach, staysOffLine } from '../offline/reach.ts'
import { sendWaitingPhotos } from './waiting-photos.ts'

/** Sends pictures that wait, now and whenever the book is in reach again. */
export function watchPhotos(): void {
  const again = () => {
    if (reach.now().state === 'in-reach') void sendWaitingPhotos()
  }
  reach.subscribe(again)
  staysOffLine.subscribe(again)
  addEventListener('online', () => void sendWaitingPhotos())
  void sendWaitingPhotos()
}
