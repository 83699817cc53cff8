import { type DBSchema, type IDBPDatabase, openDB } from 'idb'

/** A picture on its way to the book. */
export interface KeptPhoto {
  /** SHA-256 of its bytes, as entries name it. */
  name: string
  bytes: Uint8Array<ArrayBuffer>
  /** This device's clock, ms since 1970. */
  takenAt: number
  /** Whether an entry names it: before, it is only looked at. */
  isNamed: boolean
  /** Whether the book has said that it does not take it: it is sent no more, and goes when somebody says so. */
  isRefused?: boolean
}

interface PhotoTables extends DBSchema {
  photos: { key: string; value: KeptPhoto }
}

/** Where pictures wait; a store of its own, since entries are small and never wait for one. */
export interface PhotoKeep {
  put(photo: KeptPhoto): Promise<void>
  list(): Promise<KeptPhoto[]>
  one(name: string): Promise<KeptPhoto | undefined>
  drop(name: string): Promise<void>
}

export function devicePhotos(database = 'sumpbook-photos'): PhotoKeep {
  let opening: Promise<IDBPDatabase<PhotoTables>> | null = null
  const open = () => {
    opening ??= openDB<PhotoTables>(database, 1, {
      upgrade: (fresh) => void fresh.createObjectStore('photos', { keyPath: 'name' }),
      terminated: () => {
        opening = null
      },
    })
    opening.catch(() => {
      opening = null
    })
    return opening
  }
  return {
    async put(photo) {
      const transaction = (await open()).transaction('photos', 'readwrite', { durability: 'strict' })
      await transaction.store.put(photo)
      await transaction.done
    },
    list: async () => (await open()).getAll('photos'),
    one: async (name) => (await open()).get('photos', name),
    drop: async (name) => (await open()).delete('photos', name),
  }
}
