import { createHash } from 'node:crypto'
import { createReadStream, createWriteStream, existsSync } from 'node:fs'
import { mkdir, open, readdir, rename, rm } from 'node:fs/promises'
import { join } from 'node:path'
import { pipeline } from 'node:stream/promises'

/** An attachment is a file that is called by the SHA-256 of its content. */
const isName = (name: string) => /^[0-9a-f]{64}$/.test(name)

/** The attachments in a folder, by name; none where there is no folder. */
export async function attachmentsIn(folder: string): Promise<string[]> {
  if (!existsSync(folder)) return []
  return (await readdir(folder)).filter(isName).sort()
}

/** Whether an attachment is what its name says. */
export async function isWhole(folder: string, name: string): Promise<boolean> {
  const hash = createHash('sha256')
  for await (const chunk of createReadStream(join(folder, name))) hash.update(chunk as Buffer)
  return hash.digest('hex') === name
}

/** Puts an attachment into a folder, whole or not at all; one that is there already is left as it is. */
export async function putAttachment(folder: string, name: string, bytes: AsyncIterable<Buffer>): Promise<void> {
  const path = join(folder, name)
  if (existsSync(path)) return
  await mkdir(folder, { recursive: true })
  try {
    await pipeline(bytes, createWriteStream(`${path}.part`))
    const file = await open(`${path}.part`, 'r+')
    await file.sync()
    await file.close()
    await rename(`${path}.part`, path)
  } finally {
    await rm(`${path}.part`, { force: true })
  }
}
