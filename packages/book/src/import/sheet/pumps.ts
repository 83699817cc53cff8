import { plain } from './words.ts'

const running = new Set(
  'running on run yes y true an lauft laufen ein ja j encendida encendidas marcha si s'
    .split(' ')
    .concat('in betrieb', 'en marcha'),
)
const stopped = new Set(
  'stopped off stop no n false aus steht stehen nein ruht parada paradas apagada apagadas detenida'.split(' '),
)

/** "on", "läuft", "stopped", "aus" …: what the pumps did when the level was read; null where the word is none of these. */
export function readPumps(text: string): 'running' | 'stopped' | null {
  const word = plain(text)
  if (running.has(word)) return 'running'
  return stopped.has(word) ? 'stopped' : null
}
