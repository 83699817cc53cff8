import fc from 'fast-check'
import { expect, test } from 'vitest'
import { outcomeOf } from './mix.ts'
import type { PourableWater, Recipe, SumpToPour } from './recipe.ts'
import { topUp } from './top-up.ts'

const sump: SumpToPour = { volume: 150, concentration: 6.5, fillVolume: 200, target: 6, band: { low: 5, high: 7 } }
const of = (more: Partial<SumpToPour>, pourable = {}) => topUp({ ...sump, ...more }, pourable)
const poured = ({ action, add, drawOff, result }: Recipe) => ({
  action,
  volume: add?.volume ?? null,
  strength: add?.strength ?? null,
  drawOff,
  reached: result?.concentration ?? null,
})

// 150 L at 6.5 % hold 9.75 L of concentrate; 200 L at 6 % hold 12: 2.25 L in 50 L is 4.5 %.
test('a sump below its mark is filled at the strength that meets the target', () => {
  expect(poured(of({}))).toEqual({ action: 'top-up', volume: 50, strength: 4.5, drawOff: 0, reached: 6 })
})

// 100 L at 4 % hold 4 L; 200 L at 6 % hold 12: 8 L in 100 L is 8 %; a mixer that ends at 7 % gives 11 L, 5.5 %.
test('a weak mixer pours its strongest where that lands in the band', () => {
  const recipe = of({ volume: 100, concentration: 4 }, { maxStrength: 7 })
  expect(poured(recipe)).toEqual({ action: 'top-up', volume: 100, strength: 7, drawOff: 0, reached: 5.5 })
  expect(recipe.because).toContain('held-at-strongest')
})

// 160 L at 3 % hold 4.8 L; 40 L at 10 % bring 8.8 in 200 L, 4.4 %, under 5. Drawing d: 3(160−d) + 10(40+d) = 1200, d = 320/7.
test('where no pour reaches the band, the smallest draw-off is made that reaches the target', () => {
  const recipe = of({ volume: 160, concentration: 3 }, { maxStrength: 10 })
  expect(recipe.action).toBe('draw-off')
  expect(recipe.drawOff).toBeCloseTo(320 / 7, 10)
  expect(recipe.add?.strength).toBe(10)
  expect(recipe.result?.concentration).toBeCloseTo(6, 10)
  expect(recipe.result?.volume).toBeCloseTo(200, 10)
})

// 150 L at 7.5 % hold 11.25 L; 200 L at 6 % hold 12: 0.75 L in 50 L is 1.5 %.
test('a rich sump with room is thinned on its way to the mark', () => {
  expect(poured(of({ concentration: 7.5 }))).toMatchObject({ action: 'top-up', strength: 1.5 })
})

// 150 × 8 = 200 × 6: plain water is exactly right.
test('plain water is named as water only, at the edge and beyond it', () => {
  expect(poured(of({ concentration: 8 }))).toEqual({
    action: 'water-only',
    volume: 50,
    strength: 0,
    drawOff: 0,
    reached: 6,
  })
  expect(of({ concentration: 7.99 }).action).toBe('top-up')
  expect(poured(of({ concentration: 9 }))).toMatchObject({ action: 'water-only', strength: 0, reached: 6.75 })
})

// 150 L at 10 % in 200 L are 7.5 %, above 7. Drawing d: 10(150−d) = 1200, d = 30.
test('too rich for water alone: the smallest draw-off, then the leanest mix', () => {
  const recipe = of({ concentration: 10 })
  expect(recipe).toMatchObject({ action: 'draw-off', add: { strength: 0 } })
  expect(recipe.drawOff).toBeCloseTo(30, 10)
  expect(recipe.add?.volume).toBeCloseTo(80, 10)
})

test('the leanest mix the fluid allows is held to', () => {
  const recipe = of({ concentration: 8 }, { minStrength: 2 })
  expect(poured(recipe)).toEqual({ action: 'water-only', volume: 50, strength: 2, drawOff: 0, reached: 6.5 })
  expect(recipe.because).toContain('held-at-leanest')
})

test.each([
  ['at the mark', 200],
  ['between mark and brim', 230],
  ['at the brim', 250],
])('%s and in its band there is nothing to pour', (_, volume) => {
  expect(of({ volume })).toMatchObject({ action: 'none', add: null, drawOff: 0, result: { volume } })
})

test('just below the mark a little is poured', () => {
  expect(of({ volume: 199, concentration: 6 }).action).toBe('top-up')
})

// 200 L at 4 %: 4(200−d) + 20 d = 1200, d = 25.
test('full and lean: drawn off, then filled with the strongest', () => {
  const recipe = of({ volume: 200, concentration: 4 })
  expect(recipe).toMatchObject({ action: 'draw-off', drawOff: 25, add: { volume: 25, strength: 20 } })
})

// To the brim there are 50 L: 200 L from 4 % to 6 % with 20 % takes 2 × 200 / 14 = 28.6 L, no waste.
test('full and lean: the room above the mark is offered as another way', () => {
  const [other] = of({ volume: 200, concentration: 4 }).alternatives
  expect(other?.drawOff).toBe(0)
  expect(other?.add?.volume).toBeCloseTo(400 / 14, 10)
  expect(other?.result.concentration).toBeCloseTo(6, 10)
})

test('a draw-off of the whole sump is a change of the charge', () => {
  const recipe = of({ volume: 200, concentration: 2, target: 6 }, { maxStrength: 6 })
  expect(recipe).toMatchObject({ action: 'change', drawOff: 200, add: { volume: 200, strength: 6 } })
})

test('over the brim and in its band it is drawn down to the mark', () => {
  expect(of({ volume: 255 })).toMatchObject({ action: 'draw-off', drawOff: 55, add: null, result: { volume: 200 } })
})

test('below the suction level comes first, even where the band is not reached', () => {
  const recipe = of({ volume: 60, concentration: 30, minVolume: 80, band: { low: 5, high: 7 } })
  expect(recipe).toMatchObject({ action: 'water-only', add: { volume: 140, strength: 0 }, drawOff: 0 })
  expect(recipe.because).toEqual(expect.arrayContaining(['below-suction', 'still-rich']))
  expect(of({ volume: 80, concentration: 30, minVolume: 80 }).action).toBe('draw-off')
})

// 130 L seen and 20 L in the lines are 150 L.
test('while the pumps run, what is out in the lines counts', () => {
  expect(poured(of({ volume: 130, holdUp: 20, pumps: 'running' }))).toMatchObject({ volume: 50, strength: 4.5 })
  expect(of({ volume: 130, holdUp: 20, pumps: 'stopped' }).add?.volume).toBe(70)
})

test('a doubt is measured first', () => {
  expect(of({ doubt: true })).toMatchObject({ action: 'measure-first', add: null, result: null, because: ['doubt'] })
})

// The band is 2 wide: ± 1.6449 sd is as wide at sd = 0.60796.
test('an interval wider than the band is measured first, one as wide is not', () => {
  expect(of({ concentrationSd: 0.6081 }).action).toBe('measure-first')
  expect(of({ concentrationSd: 0.6079 }).action).toBe('top-up')
  const { band: _, ...unbounded } = sump
  expect(topUp({ ...unbounded, concentrationSd: 5 }).action).toBe('top-up')
})

test('a straight oil is refused', () => {
  expect(of({ class: 'straight-oil' })).toMatchObject({ action: 'refuse', add: null })
})

// sd 20 L: the upper bound of the volume is 1.6449 × 20 = 32.9 L above the mean, the brim at 210: the fill ends at 177.1.
test('the fill ends lower where the upper bound of the volume comes to the brim', () => {
  const recipe = of({ volumeSd: 20, capacity: 210 })
  expect(recipe.result?.volume).toBeCloseTo(210 - 1.6448536269514722 * 20, 10)
  expect(recipe.because).toContain('kept-below-brim')
})

test('a volume so uncertain that nothing may be poured is measured first', () => {
  expect(of({ volumeSd: 60, capacity: 210 })).toMatchObject({
    action: 'measure-first',
    because: ['volume-too-uncertain'],
  })
})

test('without a band every concentration counts as inside it', () => {
  const { band: _, ...unbounded } = sump
  expect(topUp({ ...unbounded, volume: 200, concentration: 15 }).action).toBe('none')
})

test('the doubt of the strength shrinks with what is poured', () => {
  const { result } = of({ concentrationSd: 0.4 })
  expect(result!.high90 - result!.low90).toBeCloseTo(2 * 1.6448536269514722 * 0.4 * 0.75, 10)
})

test('an empty sump is filled at its target', () => {
  expect(poured(of({ volume: 0 }))).toMatchObject({ action: 'top-up', volume: 200, strength: 6, reached: 6 })
})

test('the softest water that is not softened is poured', () => {
  const waters = [
    { id: 'tap', kind: 'tap', hardness: 260 },
    { id: 'soft', kind: 'softened', hardness: 2 },
    { id: 'di', kind: 'deionised', hardness: 5 },
  ] as const
  expect(of({}, { waters }).add?.waters).toEqual([{ id: 'di', volume: 47.75 }])
  expect(of({}, { waters: [waters[1]] })).toMatchObject({
    add: { waters: [] },
    because: expect.arrayContaining(['only-softened-water']),
  })
})

test.each<[string, Partial<SumpToPour>, object, string[]]>([
  ['a straight oil', { class: 'straight-oil' }, {}, ['straight-oil']],
  ['in its band and below the mark', {}, {}, ['in-band']],
  ['at the lower edge of its band', { concentration: 5 }, {}, ['in-band']],
  ['at the upper edge of its band', { concentration: 7 }, {}, ['in-band']],
  ['under its band', { concentration: 4.9 }, {}, ['lean']],
  ['above its band', { concentration: 7.1 }, {}, ['rich']],
  ['lean with a weak mixer', { volume: 100, concentration: 4 }, { maxStrength: 7 }, ['lean', 'held-at-strongest']],
  ['the strongest mix exactly right', { volume: 100, concentration: 4 }, { maxStrength: 8 }, ['lean']],
  ['rich, and water stays above the target', { concentration: 9 }, {}, ['rich', 'held-at-leanest']],
  ['plain water exactly right', { concentration: 8 }, {}, ['rich']],
  ['at the mark', { volume: 200 }, {}, ['in-band']],
  ['between mark and brim', { volume: 201 }, {}, ['in-band', 'above-mark']],
  ['over the brim, in its band', { volume: 251 }, {}, ['above-brim']],
  ['over the brim, lean', { volume: 251, concentration: 4 }, {}, ['above-brim', 'lean']],
  ['under the suction', { volume: 60, minVolume: 80 }, {}, ['below-suction', 'in-band']],
  [
    'under the suction, still lean after',
    { volume: 60, minVolume: 80, concentration: 0 },
    { maxStrength: 6 },
    ['below-suction', 'lean', 'held-at-strongest', 'still-lean'],
  ],
  [
    'under the suction, still rich after',
    { volume: 60, minVolume: 80, concentration: 30 },
    {},
    ['below-suction', 'rich', 'held-at-leanest', 'still-rich'],
  ],
  ['under the suction, with a doubt', { volume: 60, minVolume: 80, doubt: true }, {}, ['doubt', 'below-suction']],
  ['an interval wider than the band', { concentrationSd: 1 }, {}, ['interval-wider-than-band']],
  [
    'under the suction, the strength hardly known',
    { volume: 60, minVolume: 80, concentrationSd: 1 },
    {},
    ['below-suction', 'interval-wider-than-band', 'in-band'],
  ],
  ['a volume without any certainty', { volumeSd: 200 }, {}, ['volume-too-uncertain']],
  ['too uncertain to pour', { volumeSd: 70 }, {}, ['volume-too-uncertain']],
  [
    'under the suction, too uncertain to pour',
    { volume: 60, minVolume: 80, volumeSd: 130 },
    {},
    ['below-suction', 'volume-too-uncertain'],
  ],
  ['kept below the brim', { volumeSd: 40 }, {}, ['in-band', 'kept-below-brim']],
  [
    'neat concentrate',
    { target: 20, concentration: 6, volume: 180, band: { low: 0, high: 50 } },
    { maxStrength: 100, minStrength: 100 * 0 },
    ['in-band', 'held-at-strongest', 'neat-concentrate'],
  ],
])('%s says why', (_, more, pourable, because) => {
  expect(of(more, pourable).because).toEqual(because)
})

test('the brim is kept with a doubt about the volume that just reaches it', () => {
  // 1.6449 × 30.4 = 50.0: the brim at 250 and the mark at 200 lie 50 apart.
  expect(of({ volumeSd: 50 / 1.6448536269514722 }).because).toEqual(['in-band'])
})

test('over the brim and lean: what is drawn off makes room for the strongest mix', () => {
  // 4 × (251 − d) + 20 × (d − 51) = 1200, d = 1216 / 16 = 76.
  const recipe = of({ volume: 251, concentration: 4 })
  expect(recipe).toMatchObject({ action: 'draw-off', drawOff: 76, add: { volume: 25, strength: 20 }, alternatives: [] })
})

test('the room above the mark is no way where it does not reach the band', () => {
  // 225 L at 1 %: 25 L more at 20 % reach 2.9 %.
  expect(of({ volume: 225, concentration: 1 }).alternatives).toEqual([])
})

test('the room above the mark is a way exactly to the edge of the band', () => {
  const [other] = of({ volume: 200, concentration: 4, target: 6 }, { maxStrength: 9 }).alternatives
  // To the brim 50 L at 9 %: (800 + 450) / 250 = 5 %.
  expect(other).toMatchObject({ action: 'top-up', because: ['above-mark'], result: { volume: 250 } })
  expect(other!.result.concentration).toBeCloseTo(5, 10)
})

test('full and rich: water above the mark is a way without waste', () => {
  // 200 L at 7.2 % to 6 %: 7.2 × 200 / 6 = 240 L, 40 L of water.
  const [other] = of({ volume: 200, concentration: 7.2 }).alternatives
  expect(other).toMatchObject({ action: 'water-only', drawOff: 0, add: { strength: 0 } })
  expect(other!.add!.volume).toBeCloseTo(40, 9)
})

test('water not analysed is judged by its kind', () => {
  const chosen = (...waters: PourableWater[]) => of({}, { waters }).add?.waters[0]?.id
  const tap: PourableWater = { id: 'tap', kind: 'tap' }
  const ro: PourableWater = { id: 'ro', kind: 'reverse-osmosis' }
  const di: PourableWater = { id: 'di', kind: 'deionised' }
  expect(chosen(tap, ro, di)).toBe('di')
  expect(chosen(tap, ro)).toBe('ro')
  expect(chosen(tap, { id: 'rain', hardness: 20 })).toBe('rain')
  expect(chosen({ id: 'spring', hardness: 5 }, ro)).toBe('spring')
  expect(chosen(ro, { id: 'hard', hardness: 400 })).toBe('ro')
  expect(chosen({ id: 'first', hardness: 7 }, { id: 'second', hardness: 7 })).toBe('first')
  expect(chosen(di, tap)).toBe('di')
})

// 150 L ± 20 at 9 % and 50 L of water: 6.75 %; by volume (9 − 6.75) / 200 × 20 = 0.225 %.
test('the doubt of the volume is carried into the result', () => {
  const { result } = of({ concentration: 9, volumeSd: 20 })
  expect(result!.high90 - result!.low90).toBeCloseTo(2 * 1.6448536269514722 * 0.225, 10)
})

test('an empty sump that is left empty keeps its figures finite', () => {
  const result = outcomeOf(
    { volume: 10, concentration: 5, volumeSd: 1, concentrationSd: 0.5, hardness: null },
    10,
    null,
  )
  expect(result).toMatchObject({ volume: 0, concentration: 5 })
  expect(result.high90 - result.low90).toBeCloseTo(2 * 1.6448536269514722 * 0.5, 10)
})

test.each([
  ['volume', { volume: -1 }],
  ['volume', { volume: Number.NaN }],
  ['volume', { volume: 263 }],
  ['concentration', { concentration: 101 }],
  ['fillVolume', { fillVolume: 0 }],
  ['fillVolume', { capacity: 199 }],
  ['minVolume', { minVolume: 201 }],
  ['holdUp', { holdUp: -1 }],
  ['target', { target: 21 }],
  ['target', { target: 4 }],
  ['band.high', { band: { low: 8, high: 7 } }],
  ['band.low', { band: { low: -1, high: 7 } }],
  ['band.low', { band: { low: 101, high: 102 } }],
  ['concentrationSd', { concentrationSd: -1 }],
  ['volumeSd', { volumeSd: Number.NaN }],
  ['minVolume', { minVolume: -1 }],
])('%s out of its range is refused by name', (name, more) => {
  expect(() => of(more)).toThrow(new RegExp(`^${name.replace('.', '\\.')}\\b`))
})

test.each([
  ['maxStrength', { maxStrength: 0 }],
  ['maxStrength', { maxStrength: 101 }],
  ['minStrength', { minStrength: -1 }],
  ['minStrength', { minStrength: 21 }],
  ['target', { minStrength: 7 }],
])('%s of what is poured out of its range is refused by name', (name, pourable) => {
  expect(() => of({}, pourable)).toThrow(new RegExp(`^${name}\\b`))
})

test('5 % above the brim is accepted, more is not', () => {
  expect(of({ volume: 262.5 }).action).toBe('draw-off')
})

const anySump = fc
  .record({
    mark: fc.double({ min: 20, max: 5000, noNaN: true }),
    level: fc.double({ min: 0, max: 1.25, noNaN: true }),
    concentration: fc.double({ min: 0, max: 30, noNaN: true }),
    leanest: fc.constantFrom(0, 1, 2),
    strongest: fc.double({ min: 6, max: 30, noNaN: true }),
    aim: fc.double({ min: 0, max: 1, noNaN: true }),
    half: fc.double({ min: 0.2, max: 3, noNaN: true }),
    volumeSd: fc.double({ min: 0, max: 0.1, noNaN: true }),
    suction: fc.double({ min: 0, max: 0.6, noNaN: true }),
    hardness: fc.double({ min: 0, max: 2000, noNaN: true }),
    waterHardness: fc.double({ min: 0, max: 600, noNaN: true }),
  })
  .map((r) => {
    const target = r.leanest + r.aim * (r.strongest - r.leanest)
    const wanted: SumpToPour = {
      volume: r.level * r.mark,
      concentration: r.concentration,
      fillVolume: r.mark,
      target,
      band: { low: Math.max(0, target - r.half), high: Math.min(100, target + r.half) },
      volumeSd: r.volumeSd * r.mark,
      minVolume: r.suction * r.mark,
      hardness: r.hardness,
    }
    const waters = [{ id: 'w', kind: 'tap' as const, hardness: r.waterHardness }]
    return { wanted, pourable: { minStrength: r.leanest, maxStrength: r.strongest, waters }, ...r }
  })

// 150 L at 400 ppm and 50 L of which 95.5 % are water of 100 ppm: (60000 + 4775) / 200 = 323.9 ppm.
test('the minerals of sump and water are mixed too, where both are known', () => {
  const waters = [{ id: 'tap', hardness: 100 }]
  expect(of({ hardness: 400 }, { waters }).result?.hardness).toBeCloseTo(323.875, 10)
  expect(of({ hardness: 400 }).result?.hardness).toBeNull()
  expect(of({}, { waters }).result?.hardness).toBeNull()
  expect(of({ volume: 0 }, { waters }).result?.hardness).toBeCloseTo(94, 10)
  expect(of({ volume: 200, hardness: 400 }).result?.hardness).toBe(400)
  expect(() => of({ hardness: -1 })).toThrow(/^hardness/)
})

test('whatever the sump: concentrate and minerals are conserved, nothing runs over, the mixer is kept to, the result lies between', () => {
  fc.assert(
    fc.property(anySump, ({ wanted, pourable, hardness, waterHardness }) => {
      const { action, add, drawOff, result, alternatives } = topUp(wanted, pourable)
      for (const way of [{ action, add, drawOff, result }, ...alternatives]) {
        if (way.result === null) continue
        const pour = way.add?.volume ?? 0
        const strength = way.add?.strength ?? wanted.concentration
        const kept = wanted.volume - way.drawOff
        expect(pour).toBeGreaterThanOrEqual(0)
        expect(kept).toBeGreaterThanOrEqual(0)
        expect(way.result.volume).toBeCloseTo(kept + pour, 8)
        const mixed = wanted.concentration * kept + strength * pour
        expect(Math.abs(way.result.concentration * way.result.volume - mixed)).toBeLessThanOrEqual(
          1e-9 * Math.max(1, mixed),
        )
        const minerals = hardness * kept + waterHardness * (way.add?.water ?? 0)
        expect(Math.abs(way.result.hardness! * way.result.volume - minerals)).toBeLessThanOrEqual(
          1e-9 * Math.max(1, minerals),
        )
        if (way.add !== null) {
          expect(way.add.concentrate + way.add.water).toBeCloseTo(pour, 9)
          expect(strength).toBeGreaterThanOrEqual(pourable.minStrength)
          expect(strength).toBeLessThanOrEqual(pourable.maxStrength)
        }
        expect(way.result.volume).toBeLessThanOrEqual(1.25 * wanted.fillVolume * (1 + 1e-12))
        const [least, most] = [Math.min(wanted.concentration, strength), Math.max(wanted.concentration, strength)]
        expect(way.result.concentration).toBeGreaterThanOrEqual(least - 1e-9)
        expect(way.result.concentration).toBeLessThanOrEqual(most + 1e-9)
      }
    }),
    { numRuns: 10_000 },
  )
})
