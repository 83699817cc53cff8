import { sayNumber, sayPercent, sayVolume, trueMarks } from '@sumpbook/fluid'
import { Link } from 'wouter-preact'
import type { Book, SumpPage } from '../api/types.ts'
import { readerOf, sayBand } from '../say/units.ts'
import { isOtherMark } from '../standing/true-litres.ts'

/** How it is set up: its fluid, scale, band and volumes. */
export function Known({ sump, book }: { sump: SumpPage; book: Book }) {
  const { bench, fluid } = sump
  const reader = readerOf(book.shop.units)
  const marks = trueMarks(bench, sump.mark)
  const volume = (litres: number | null) => (litres === null ? 'not known' : sayVolume(litres, reader))
  const scale =
    bench.brixChart !== null
      ? 'by its chart'
      : bench.brixFactor === null
        ? 'not known'
        : `${sayNumber(bench.brixFactor, 2)} % per °Brix`
  return (
    <>
      <dl class="pairs">
        <dt>Fluid</dt>
        <dd>{fluid.name}</dd>
        <dt>Strength from °Brix</dt>
        <dd>{scale}</dd>
        <dt>Band</dt>
        <dd>{bench.band === null ? 'not known' : sayBand(bench.band)}</dd>
        <dt>Target</dt>
        <dd>{bench.target === null ? 'not known' : sayPercent(bench.target, reader)}</dd>
        <dt>Full mark</dt>
        <dd>
          {volume(bench.fillVolume)}
          {isOtherMark(bench.fillVolume, marks.fillVolume) && `, reckoned as ${volume(marks.fillVolume)}`}
        </dd>
        <dt>Brim</dt>
        <dd>{volume(bench.capacity)}</dd>
        <dt>Pumps’ suction</dt>
        <dd>{volume(bench.minVolume)}</dd>
        <dt>Level by dip</dt>
        <dd>{bench.dipTable === null ? 'no dip table' : `table of ${bench.dipTable.length} points`}</dd>
      </dl>
      <Link class="button plain no-print" href={`/shop#sump-${encodeURIComponent(sump.sump)}`}>
        Change it under Shop
      </Link>
    </>
  )
}
