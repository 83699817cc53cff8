import { say } from '@sumpbook/fluid'
import { short } from '../say/units.ts'

/** A sheet of labels as it is bought: paper, and where its labels lie. All lengths in millimetres. */
export interface LabelSheet {
  id: string
  paper: 'A4' | 'letter'
  columns: number
  rows: number
  /** Of one label. */
  width: number
  height: number
  /** From the paper's edge to the first label. */
  left: number
  top: number
  /** From one label's beginning to that of the next. */
  across: number
  down: number
}

/** A whole-page label a sheet, for a door or a cabinet. */
const plain = (paper: LabelSheet['paper'], width: number, height: number): LabelSheet => ({
  id: `${paper}-1`,
  paper,
  columns: 1,
  rows: 2,
  width: width - 30,
  height: height / 2 - 30,
  left: 15,
  top: 15,
  across: width,
  down: height / 2,
})

/** Common grids of office labels (common practice, no source: the packet has the measures; margins are half of what is left). */
export const labelSheets: readonly LabelSheet[] = [
  plain('A4', 210, 297),
  grid({ paper: 'A4', columns: 2, rows: 4, width: 99.1, height: 67.7, gapAcross: 2.5, gapDown: 0 }),
  grid({ paper: 'A4', columns: 2, rows: 5, width: 105, height: 57, gapAcross: 0, gapDown: 0 }),
  plain('letter', 215.9, 279.4),
  grid({ paper: 'letter', columns: 2, rows: 5, width: 101.6, height: 50.8, gapAcross: 4.8, gapDown: 0 }),
  grid({ paper: 'letter', columns: 2, rows: 3, width: 101.6, height: 84.7, gapAcross: 4.8, gapDown: 0 }),
]

/** A sheet as on its packet: how many labels, and how large. */
export function sayLabelSheet({ paper, columns, rows, width, height }: LabelSheet): string {
  const name = paper === 'A4' ? 'A4' : say('Letter')
  return columns === 1
    ? say('{paper}, two large ones to cut apart', { paper: name })
    : say('{paper}, {count} labels of {width} × {height} mm', {
        paper: name,
        count: short(columns * rows),
        width: short(width),
        height: short(height),
      })
}

interface Grid {
  paper: LabelSheet['paper']
  columns: number
  rows: number
  width: number
  height: number
  gapAcross: number
  gapDown: number
}

function grid({ paper, columns, rows, width, height, gapAcross, gapDown }: Grid): LabelSheet {
  const [wide, high] = paper === 'A4' ? [210, 297] : [215.9, 279.4]
  const [across, down] = [width + gapAcross, height + gapDown]
  return {
    id: `${paper}-${columns}x${rows}`,
    paper,
    columns,
    rows,
    width,
    height,
    left: (wide - (columns * across - gapAcross)) / 2,
    top: (high - (rows * down - gapDown)) / 2,
    across,
    down,
  }
}

/** Where one label lies on its page, millimetres from the paper's edge. */
export interface LabelPlace<Item> {
  item: Item
  left: number
  top: number
}

/**
 * Labels on their pages, row by row, the first `skipped` places of the first sheet left free: they are used up already.
 *
 * @param skipped a whole number from 0; more than a sheet has is a sheet begun anew
 */
export function placeLabels<Item>(
  items: readonly Item[],
  { columns, rows, left, top, across, down }: LabelSheet,
  skipped = 0,
): LabelPlace<Item>[][] {
  const perPage = columns * rows
  const pages: LabelPlace<Item>[][] = []
  items.forEach((item, n) => {
    const place = (skipped % perPage) + n
    const page = Math.floor(place / perPage)
    const [row, column] = [Math.floor((place % perPage) / columns), place % columns]
    pages[page] = [...(pages[page] ?? []), { item, left: left + column * across, top: top + row * down }]
  })
  return pages
}
