// A thread that takes one file into a book, answers, and ends.
import { parentPort, workerData } from 'node:worker_threads'
import { type Catalogue, type Language, learn, speakAs } from '@sumpbook/fluid'
import { BookError } from '../errors.ts'
import { openStore } from '../store/open.ts'
import { importFile } from './import-file.ts'
import type { ImportAnswer, ImportOrder } from './import-in-worker.ts'
import { fileSource, sourceOf } from './sheet/sheet-source.ts'

const catalogues: Record<Exclude<Language, 'en'>, () => Promise<{ catalogue: Catalogue }>> = {
  de: () => import('../words/de.ts'),
  es: () => import('../words/es.ts'),
}

async function answer({ place, source, options, now }: ImportOrder): Promise<ImportAnswer> {
  const store = await openStore(place)
  try {
    const from = 'path' in source ? fileSource(source.path, source.name) : sourceOf(source.name, source.bytes)
    return { report: await importFile(store, from, new Date(now), options) }
  } catch (error) {
    if (!(error instanceof BookError)) return { failure: error instanceof Error ? error.message : String(error) }
    const { code, message, faults } = error
    return { refusal: { code, message, faults } }
  } finally {
    await store.close()
  }
}

/** A thread knows nothing of what its parent said: the language goes along with the order. */
async function speakAsOrdered({ speech }: ImportOrder): Promise<void> {
  if (speech.language !== 'en') learn(speech.language, (await catalogues[speech.language]()).catalogue)
  speakAs(() => speech)
}

await speakAsOrdered(workerData as ImportOrder)
parentPort!.postMessage(await answer(workerData as ImportOrder))
