import { say, sayNumber, sayPercent, sayVolume, trueMarks } from '@sumpbook/fluid'
import { Link } from 'wouter-preact'
import type { Book, SumpPage } from '../api/types.ts'
import { readerOf, sayBand } from '../say/units.ts'
import { isOtherMark } from '../standing/true-litres.ts'

/** How it is set up: its fluid, scale, band and volumes. */
export function Known({ sump, book }: { sump: SumpPage; book: Book }) {
  const { bench, fluid } = sump
  const reader = readerOf(book.shop.units)
  const marks = trueMarks(bench, sump.mark)
  const volume = (litres: number | null) => (litres === null ? say('not known') : sayVolume(litres, reader))
  const scale =
    bench.brixChart !== null
      ? say('by its chart')
      : bench.brixFactor === null
        ? say('not known')
        : say('{factor} % per °Brix', { factor: sayNumber(bench.brixFactor, 2) })
  return (
    <>
      <dl class="pairs">
        <dt>{say('Fluid')}</dt>
        <dd>{fluid.name}</dd>
        <dt>{say('Strength from °Brix')}</dt>
        <dd>{scale}</dd>
        <dt>{say('Band')}</dt>
        <dd>{bench.band === null ? say('not known') : sayBand(bench.band)}</dd>
        <dt>{say('Target')}</dt>
        <dd>{bench.target === null ? say('not known') : sayPercent(bench.target, reader)}</dd>
        <dt>{say('Full mark')}</dt>
        <dd>
          {isOtherMark(bench.fillVolume, marks.fillVolume)
            ? say('{plate}, reckoned as {mark}', {
                plate: volume(bench.fillVolume),
                mark: volume(marks.fillVolume),
              })
            : volume(bench.fillVolume)}
        </dd>
        <dt>{say('Brim')}</dt>
        <dd>{volume(bench.capacity)}</dd>
        <dt>{say('Pumps’ suction')}</dt>
        <dd>{volume(bench.minVolume)}</dd>
        <dt>{say('Level by dip')}</dt>
        <dd>
          {bench.dipTable === null
            ? say('no dip table')
            : say('{count, plural, one {table of # point} other {table of # points}}', {
                count: bench.dipTable.length,
              })}
        </dd>
      </dl>
      <Link class="button plain no-print" href={`/shop#sump-${encodeURIComponent(sump.sump)}`}>
        {say('Change it under Shop')}
      </Link>
    </>
  )
}
