import { createReadStream } from 'node:fs'
import { join, resolve } from 'node:path'
import { attachmentsIn, isWhole, putAttachment } from './folder.ts'

/** What became of the attachments of a book that moved. */
export interface AttachmentsCopied {
  copied: number
  /** They are no longer what their name says, and stay behind. */
  damaged: string[]
}

/** Copies attachments into another folder; those there already stay, and so do the ones copied. */
export async function copyAttachments(from: string, to: string): Promise<AttachmentsCopied> {
  const report: AttachmentsCopied = { copied: 0, damaged: [] }
  if (resolve(from) === resolve(to)) return report
  for (const name of await attachmentsIn(from)) {
    if (!(await isWhole(from, name))) report.damaged.push(name)
    else {
      await putAttachment(to, name, createReadStream(join(from, name)))
      report.copied += 1
    }
  }
  return report
}
