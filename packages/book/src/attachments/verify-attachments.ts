import type { StoreFault } from '../integrity/fault-list.ts'
import type { StoreReport } from '../integrity/verify-store.ts'
import type { Store } from '../store/store.ts'
import { attachmentsIn, isWhole } from './folder.ts'
import { namedAttachments } from './named-attachments.ts'

/**
 * The report of a book with what its attachments are: a damaged one is a fault; one that an entry names and that is not there is a remark,
 * since the entry may have come before its picture.
 *
 * @param folder of the attachments; it need not exist
 */
export async function withAttachments(report: StoreReport, store: Store, folder: string): Promise<StoreReport> {
  const there = await attachmentsIn(folder)
  const faults: StoreFault[] = []
  for (const name of there) {
    if (await isWhole(folder, name)) continue
    faults.push({ seq: null, id: `attachment ${name}`, fault: 'its content is not what its name says' })
  }
  const named = await store.snapshot(namedAttachments)
  const missing = [...named].filter(([name]) => !there.includes(name))
  return {
    ...report,
    sound: report.sound && faults.length === 0,
    faults: [...report.faults, ...faults],
    remarks: [
      ...report.remarks,
      ...missing.map(([name, id]) => `The entry ${id} names the attachment ${name}, which has not arrived.`),
    ],
  }
}
