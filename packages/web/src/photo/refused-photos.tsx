import { say } from '@sumpbook/fluid'
import { useObserved } from '../offline/observed.ts'
import { refusedPhotos } from './waiting-count.ts'
import { dropRefused, photoOf } from './waiting-photos.ts'

/** Pictures that the book did not take: nobody else has them, so they stay until somebody has seen to them. */
export function RefusedPhotos() {
  const names = useObserved(refusedPhotos)
  if (names.length === 0) return null
  return (
    <ul>
      {names.map((name) => (
        <li key={name}>
          <div class="fault">{say('The book did not take this photo. It is only on this device.')}</div>
          <div class="buttons">
            <button type="button" onClick={() => void save(name)}>
              {say('Save the photo')}
            </button>
            <button type="button" class="plain" onClick={() => void dropRefused(name)}>
              {say('Drop it')}
            </button>
          </div>
        </li>
      ))}
    </ul>
  )
}

/** Hands it to the device as any other picture. */
async function save(name: string): Promise<void> {
  const photo = await photoOf(name)
  if (photo === undefined) return
  const link = document.createElement('a')
  link.href = URL.createObjectURL(new Blob([photo.bytes], { type: 'image/jpeg' }))
  link.download = `${name.slice(0, 12)}.jpg`
  link.click()
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000)
}
