import { say, sayNumber } from '@sumpbook/fluid'
import { useEffect, useRef, useState } from 'preact/hooks'
import { dropPhoto, photoOf, takePhoto } from '../photo/waiting-photos.ts'

/** A picture of what was found; made smaller here, and kept on the device until the book has it. */
export function PhotoRow({ photo, change }: { photo: string | null; change(name: string | null): void }) {
  const [says, setSays] = useState('')
  const [isBusy, setBusy] = useState(false)
  const input = useRef<HTMLInputElement>(null)
  const take = async (file: File) => {
    setBusy(true)
    setSays('')
    try {
      change((await takePhoto(file)).name)
    } catch (error) {
      setSays(sayFault(error))
    } finally {
      setBusy(false)
      if (input.current !== null) input.current.value = ''
    }
  }
  return (
    <div class="photo-row">
      <input
        ref={input}
        class="only-read"
        type="file"
        accept="image/*"
        capture="environment"
        tabIndex={-1}
        aria-label={say('A photo of what was found')}
        onChange={({ currentTarget }) => {
          const file = currentTarget.files?.[0]
          if (file !== undefined) void take(file)
        }}
      />
      {photo === null ? (
        <button type="button" class="plain" disabled={isBusy} onClick={() => input.current?.click()}>
          {isBusy ? say('Making it smaller …') : say('Add a photo')}
        </button>
      ) : (
        <>
          <Picture name={photo} />
          <button
            type="button"
            class="plain"
            onClick={() => {
              void dropPhoto(photo)
              change(null)
            }}
          >
            {say('Leave the photo out')}
          </button>
        </>
      )}
      {says !== '' && (
        <p class="fault" role="alert">
          {says}
        </p>
      )}
    </div>
  )
}

/** Drawn, since the page may show no address but its own. */
function Picture({ name }: { name: string }) {
  const canvas = useRef<HTMLCanvasElement>(null)
  const [kilobytes, setKilobytes] = useState<number | null>(null)
  useEffect(() => {
    let isGone = false
    const show = async () => {
      const photo = await photoOf(name)
      if (photo === undefined || isGone) return
      const picture = await createImageBitmap(new Blob([photo.bytes], { type: 'image/jpeg' }))
      const at = canvas.current
      if (at === null || isGone) return
      at.width = Math.round((at.height * picture.width) / picture.height)
      at.getContext('2d')?.drawImage(picture, 0, 0, at.width, at.height)
      picture.close()
      setKilobytes(Math.max(1, Math.round(photo.bytes.length / 1000)))
    }
    void show().catch(() => {})
    return () => {
      isGone = true
    }
  }, [name])
  return (
    <>
      <canvas ref={canvas} height={64} width={64} role="img" aria-label={say('The photo taken')} />
      <span class="quiet">
        {kilobytes === null
          ? say('Photo')
          : say('Photo, {size} KB, kept here until it is sent', { size: sayNumber(kilobytes, 0) })}
      </span>
    </>
  )
}

function sayFault(error: unknown): string {
  if (error instanceof DOMException) return say('This device does not keep the picture: it was not taken.')
  return error instanceof Error ? error.message : say('The picture was not taken.')
}
