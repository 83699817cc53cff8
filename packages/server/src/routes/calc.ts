import { BookError, calculations, runCalculation } from '@sumpbook/book'
import type { FastifyInstance } from 'fastify'

/** The computations by name. */
export function calcRoutes(api: FastifyInstance): void {
  for (const [name, calculation] of calculations) {
    api.post<{ Body: unknown }>(
      `/calc/${name}`,
      {
        schema: { summary: calculation.summary, tags: ['calc'], body: calculation.input },
        validatorCompiler: () => (body) => ({ value: body }),
      },
      ({ body }) => runCalculation(calculation, body).output,
    )
  }
  api.post<{ Params: { name: string } }>('/calc/:name', { schema: { hide: true } }, ({ params: { name } }) => {
    throw new BookError(
      'not-found',
      `There is no calculation "${name}"; there are ${[...calculations.keys()].join(', ')}.`,
    )
  })
}
