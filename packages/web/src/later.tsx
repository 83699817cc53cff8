import type { ComponentType } from 'preact'
import { useEffect, useState } from 'preact/hooks'

/** A page whose code is fetched when somebody first goes there. */
export function later<Props extends object>(load: () => Promise<ComponentType<Props>>): ComponentType<Props> {
  let loaded: ComponentType<Props> | null = null
  return function Later(props: Props) {
    const [Page, setPage] = useState<ComponentType<Props> | null>(() => loaded)
    const [failed, setFailed] = useState(false)
    useEffect(() => {
      if (loaded !== null) return
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
    if (failed) return <p class="fault">This page could not be fetched. Look at the network, then open it again.</p>
    return Page === null ? <p class="quiet">One moment …</p> : <Page {...props} />
  }
}
