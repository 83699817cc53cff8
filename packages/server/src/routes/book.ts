import type { Book } from '@sumpbook/book'
import type { FastifyInstance } from 'fastify'

/** The shop, its things, and how far the book has come. */
export function bookRoutes(api: FastifyInstance, book: Book, version: string): void {
  api.get('/book', { schema: { summary: 'The shop and its things as they are now', tags: ['book'] } }, async () => {
    const [things, head, example] = await Promise.all([book.present(), book.store.head(), book.isExample()])
    const { shop, fluid, water, sump, container, mixer, instrument, meter, waste } = things
    return {
      empty: head.seq === 0 && sump.size === 0,
      demo: example,
      shop,
      sumps: sump.size,
      fluids: [...fluid.values()],
      waters: [...water.values()],
      sumpList: [...sump.values()],
      containers: [...container.values()],
      mixers: [...mixer.values()],
      instruments: [...instrument.values()],
      meters: [...meter.values()],
      wasteContainers: [...waste.values()],
      head,
      version,
    }
  })
}
