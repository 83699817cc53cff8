import { bookDays, hourStart } from './calendar.ts'
import { portion, together } from './contents.ts'
import { drawOff, fill, leaveOut, pour, pourAndWrite } from './fill.ts'
import { renew } from './renew.ts'
import { dayOf, type Moment, msOf, type Place, runsAt, type Scene, shortOf } from './scene.ts'
import { toStep } from './stores.ts'

/** Share of the mark that is missing when the operator fills up without waiting for the walk. */
const lowLight = 0.2

/** What happens at a sump beside the walk, once in every working day at noon. */
export function happenAtNoon(place: Place, scene: Scene, moment: Moment): void {
  const { machine, due, chance } = place
  const day = dayOf(moment)
  writeStandstill(place, scene, moment)
  if (day === machine.habits.chargedOn) renew(place, scene, moment, place.product)
  if (!runsAt(place, moment.hour)) return
  // The machine's own light comes on long before the pumps draw air, whatever day it is.
  if (shortOf(place) > lowLight * machine.mark) fill(place, scene, moment)
  const { change, skimEvery, drawsOffEvery } = machine.habits
  if (day === change?.on) {
    renew(place, scene, moment, change.otherProduct ? 1 - place.product : place.product)
    return
  }
  if (place.wandering.newJobs.includes(day) && chance.happens(0.5)) {
    const material = chance.pick(['steel', 'aluminium', 'brass', 'grey iron'])
    scene.notebook.write(msOf(scene, moment), { kind: 'job', sump: machine.id, material })
  }
  if (skimEvery !== null && day >= due.skim) {
    due.skim = day + skimEvery
    place.oil *= chance.between(0.3, 0.6)
    scene.notebook.write(msOf(scene, moment), {
      kind: 'skim',
      sump: machine.id,
      litres: toStep(machine.mark * 0.01, 0.5),
    })
  }
  if (drawsOffEvery !== null && day >= due.drawOff) {
    due.drawOff = day + drawsOffEvery
    thin(place, scene, moment)
  }
  if (chance.happens(0.3 / bookDays)) actUnseen(place, scene, { ...moment, minute: moment.minute + 25 })
  if (chance.happens(0.05 / bookDays)) moveOver(place, scene, moment)
}

/** Draws some off against minerals and fills up again, a few minutes later. */
function thin(place: Place, scene: Scene, moment: Moment): void {
  const { machine, chance, contents } = place
  const litres = toStep(contents.litres * chance.between(0.08, 0.15), 1)
  drawOff(place, litres * chance.factor(0.05))
  scene.notebook.write(msOf(scene, moment), { kind: 'drawoff', sump: machine.id, volume: litres })
  const { target } = scene.stores.products[place.product]!
  pourAndWrite(place, scene, { ...moment, minute: moment.minute + 10 }, Math.max(shortOf(place), 1), target)
}

/** A helping hand from another shift: 8 to 30 % of the sump, of which nobody writes. */
function actUnseen(place: Place, scene: Scene, moment: Moment): void {
  const { contents, machine, chance } = place
  const litres = contents.litres * chance.between(0.08, 0.3)
  const kind = chance.pick(['unlogged-water', 'unlogged-addition', 'unlogged-concentrate', 'unlogged-drawoff'] as const)
  if (kind === 'unlogged-drawoff') {
    drawOff(place, litres)
    leaveOut(place, scene, moment, kind, litres)
    return
  }
  // Concentrate goes in neat: a tenth of the litres is as strange as the whole of a mix.
  const poured = kind === 'unlogged-concentrate' ? litres / 10 : litres
  if (contents.litres + poured > machine.mark * 1.2) return
  const percent = { 'unlogged-water': 0, 'unlogged-addition': chance.between(3, 9), 'unlogged-concentrate': 100 }[kind]
  pour(place, scene, moment, poured, percent, 'tap')
  leaveOut(place, scene, moment, kind, poured)
}

/** Good fluid goes to a neighbour of the same product that is short of some. */
function moveOver(from: Place, scene: Scene, moment: Moment): void {
  const to = scene.places.find(
    (one) => one !== from && one.product === from.product && shortOf(one) > 0.08 * one.machine.mark,
  )
  if (to === undefined) return
  const litres = Math.min(shortOf(to), from.contents.litres * 0.2)
  if (litres < 5) return
  to.contents = together(to.contents, portion(from.contents, litres))
  drawOff(from, litres)
  const fields = { kind: 'transfer', sump: from.machine.id, volume: toStep(litres, 1), to: { sump: to.machine.id } }
  scene.notebook.write(msOf(scene, moment), fields)
}

/** Five in six standstills are written down, half of them when they begin. */
function writeStandstill({ machine, chance }: Place, scene: Scene, moment: Moment): void {
  for (const { from, to } of machine.down) {
    if (dayOf(moment) !== (from % 2 === 0 ? from : to) || chance.happens(1 / 6)) continue
    const midnight = (day: number) => new Date(hourStart(scene.calendar, day * 24)).toISOString()
    const spell = { from: midnight(from), to: midnight(to + 1) }
    scene.notebook.write(msOf(scene, moment), { kind: 'idle', sump: machine.id, ...spell })
  }
}
