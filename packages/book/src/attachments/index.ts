/** Pictures and papers that entries name, each a file called by its SHA-256. */
export { type AttachmentsCopied, copyAttachments } from './copy-attachments.ts'
export { keepAttachment, keptAttachment, largestAttachment } from './keep-attachment.ts'
export { withAttachments } from './verify-attachments.ts'
