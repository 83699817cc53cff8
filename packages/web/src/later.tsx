import { say } from '@sumpbook/fluid'
import type { ComponentType } from 'preact'
import { useEffect, useState } from 'preact/hooks'
import { Said } from './say/said.tsx'
import { withItsWords } from './speech/this-reading.ts'

const loads: (() => Promise<unknown>)[] = []

/** Fetches the code of all pages, one after the other: what is not on the device cannot be opened out of reach. */
export async function fetchAllPages(): Promise<void> {
  for (const load of loads) await load()
}

/** What is fetched when somebody goes there can be asked for before. */
export interface FetchedAhead {
  fetchAhead(): void
}

/** A page whose code is fetched when somebody first goes there. */
export function later<Props extends object>(
  fetchCode: () => Promise<ComponentType<Props>>,
): ComponentType<Props> & FetchedAhead {
  const load = () => withItsWords(fetchCode())
  let loaded: ComponentType<Props> | null = null
  loads.push(load)
  function Later(props: Props) {
    const [Page, setPage] = useState<ComponentType<Props> | null>(() => loaded)
    const [failed, setFailed] = useState(false)
    useEffect(() => {
      if (loaded !== null) {
        // Fetched for somebody else between this page's first drawing and now.
        setPage(() => loaded)
        return
      }
      load().then(
        (page) => {
          loaded = page
          setPage(() => page)
        },
        (error: unknown) => {
          console.error(error)
          setFailed(true)
        },
      )
    }, [])
    if (failed) {
      return (
        <p class="fault">
          <Said
            text="This page could not be fetched. Look at the network, then <again>open the app anew</again>"
            parts={{
              again: (inside) => (
                <button type="button" class="plain" onClick={() => location.reload()}>
                  {inside}
                </button>
              ),
            }}
          />
        </p>
      )
    }
    return Page === null ? <p class="quiet">{say('One moment …')}</p> : <Page {...props} />
  }
  // What fails is asked for again when the page opens, and said there.
  return Object.assign(Later, { fetchAhead: () => void load().catch(() => {}) })
}
