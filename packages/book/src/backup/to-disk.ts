import { open } from 'node:fs/promises'

/** Waits until what was renamed in a folder is on its disk, where the system lets a folder be asked for that. */
export async function toDisk(folder: string): Promise<void> {
  if (process.platform === 'win32') return
  const handle = await open(folder, 'r')
  try {
    await handle.sync()
  } finally {
    await handle.close()
  }
}
