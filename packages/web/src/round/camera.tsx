import { say } from '@sumpbook/fluid'
import { useEffect, useRef, useState } from 'preact/hooks'
import { readCode } from './read-code.ts'

/** Pixels of the picture that is looked at; a label fills it from a hand's breadth away. */
const longSide = 640
/** Milliseconds between looks: a phone has other things to do as well. */
const everyMs = 150

/** The camera's picture, looked at for a code until it is closed. Nothing of it leaves the device. */
export function Camera({ seen }: { seen(code: string): void }) {
  const video = useRef<HTMLVideoElement>(null)
  const latest = useRef(seen)
  latest.current = seen
  const [fault, setFault] = useState<string | null>(null)
  useEffect(() => {
    let stream: MediaStream | null = null
    let isClosed = false
    let timer = 0
    const canvas = document.createElement('canvas')
    const look = () => {
      const code = codeIn(video.current!, canvas)
      if (code !== null) latest.current(code)
    }
    navigator.mediaDevices.getUserMedia({ video: { facingMode: 'environment' }, audio: false }).then(
      async (opened) => {
        if (isClosed) return stop(opened)
        stream = opened
        video.current!.srcObject = opened
        await video.current!.play()
        timer = window.setInterval(look, everyMs)
      },
      (error: unknown) => setFault(sayFault(error)),
    )
    return () => {
      isClosed = true
      clearInterval(timer)
      if (stream !== null) stop(stream)
    }
  }, [])
  if (fault !== null) {
    return (
      <p class="fault" role="alert">
        {fault}
      </p>
    )
  }
  return (
    <video
      ref={video}
      class="camera"
      muted
      playsInline
      aria-label={say('What the camera sees: hold a label before it')}
    />
  )
}

const stop = (stream: MediaStream) => {
  for (const track of stream.getTracks()) track.stop()
}

function codeIn(video: HTMLVideoElement, canvas: HTMLCanvasElement): string | null {
  const { videoWidth, videoHeight } = video
  if (videoWidth === 0) return null
  const scale = Math.min(1, longSide / Math.max(videoWidth, videoHeight))
  canvas.width = Math.round(scale * videoWidth)
  canvas.height = Math.round(scale * videoHeight)
  const drawing = canvas.getContext('2d', { willReadFrequently: true })!
  drawing.drawImage(video, 0, 0, canvas.width, canvas.height)
  return readCode(drawing.getImageData(0, 0, canvas.width, canvas.height), everyMs / 2)
}

function sayFault(error: unknown): string {
  const name = error instanceof DOMException ? error.name : ''
  if (name === 'NotAllowedError')
    return say('The camera may not be used: allow it for this page in the browser, or type the code.')
  if (name === 'NotFoundError') return say('No camera was found on this device: type the code.')
  return say('The camera did not open: another app may hold it. Type the code.')
}
