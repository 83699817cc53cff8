import { say } from '@sumpbook/fluid'
import { useQuery } from '@tanstack/preact-query'
import { useState } from 'preact/hooks'
import { archiveAddress, Refusal, readBackups, runDrill } from '../api/client.ts'
import type { Book } from '../api/types.ts'
import { isOverdue, sayMade, sayTried } from './say-backup.ts'

/** When the book was last backed up, a fresh backup to take away, and a trial of it. For who may not, it is not there. */
export function BackupPart({ book }: { book: Book }) {
  const backups = useQuery({ queryKey: ['backups'], queryFn: readBackups })
  const [isTrying, setTrying] = useState(false)
  const [fault, setFault] = useState<string | null>(null)
  if (backups.data === undefined) return null
  const reader = { timeZone: book.shop.timeZone, now: new Date().toISOString() }
  const tryIt = async () => {
    setTrying(true)
    setFault(null)
    try {
      await runDrill()
    } catch (error) {
      // What the book itself says of it stands in the sentence above, once that is fetched again.
      setFault(error instanceof Refusal ? error.message : say('The drill did not come to its end.'))
    }
    await backups.refetch()
    setTrying(false)
  }
  const { tried } = backups.data
  return (
    <section class="part" aria-labelledby="backups">
      <h2 id="backups">{say('Backup')}</h2>
      <p class={isOverdue(backups.data, reader) ? 'fault' : 'quiet'}>{sayMade(backups.data, reader)}</p>
      <p class={tried?.good === false ? 'fault' : 'quiet'}>{sayTried(backups.data, reader)}</p>
      {fault !== null && tried?.good !== false && (
        <p class="fault" role="alert">
          {fault}
        </p>
      )}
      <div class="buttons">
        <a class="button" href={archiveAddress} download onClick={() => setTimeout(() => void backups.refetch(), 5000)}>
          {say('Fetch a fresh backup')}
        </a>
        <button type="button" disabled={isTrying} onClick={() => void tryIt()}>
          {isTrying ? say('Trying …') : say('Try whether it can be restored')}
        </button>
      </div>
      <p class="quiet">{say('Keep it on another machine: it holds every entry and the people’s accounts.')}</p>
    </section>
  )
}
