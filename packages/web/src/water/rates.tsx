import { carryOffFromCycles, cyclesFromTracer, evaporationFrom, say, sayNumber } from '@sumpbook/fluid'
import { useState } from 'preact/hooks'
import type { Units } from '../api/types.ts'
import { Figures } from '../fields/figures.tsx'
import { readDissolved, readPercent, readPlain, readTemperature } from '../fields/read.ts'
import { readTexts } from '../fields/read-texts.ts'
import { fieldFigure, sayPerDay } from '../say/units.ts'

type RateKey = 'area' | 'fluid' | 'air' | 'humidity' | 'speed' | 'inSump' | 'inWater' | 'strength'

/** Two first notions: evaporation from the open surface, carry-off from how rich in chloride the sump has become. */
export function Rates({
  units,
  area,
  evaporation,
  take,
}: {
  units: Units
  area: number | null
  evaporation: number | null
  take(key: 'evaporation' | 'carryOff', litres: number): void
}) {
  const [typed, setTyped] = useState<Partial<Record<RateKey, string>>>({})
  const known: Record<RateKey, string> = {
    area: area === null ? '' : fieldFigure(area),
    fluid: '',
    air: '',
    humidity: '50',
    speed: '0.1',
    inSump: '',
    inWater: '',
    strength: '0',
  }
  const texts = { ...known, ...typed }
  const { values, faults } = readTexts(texts, {
    area: (text) => readPlain(text, { above: 0, max: 1000 }),
    fluid: (text) => readTemperature(text, units),
    air: (text) => readTemperature(text, units),
    humidity: (text) => readPercent(text),
    speed: (text) => readPlain(text, { min: 0, max: 5 }),
    inSump: (text) => readDissolved(text),
    inWater: (text) => readDissolved(text, { above: 0 }),
    strength: (text) => readPercent(text, { min: 0, max: 90 }),
  })
  const change = (key: RateKey, text: string) => setTyped({ ...typed, [key]: text })
  const degree = units === 'us' ? '°F' : '°C'
  return (
    <div class="tool-fields">
      <Figures
        fields={[
          { key: 'area', label: say('Open surface, m²'), hint: say('Tank, and what runs wet') },
          { key: 'fluid', label: say('Fluid at its surface, {degree}', { degree }) },
          { key: 'air', label: say('Air in the hall, {degree}', { degree }) },
          { key: 'humidity', label: say('Humidity of the air, %') },
          {
            key: 'speed',
            label: say('Air over it, m/s'),
            hint: say('{speed} is still air', { speed: sayNumber(0.1, 1) }),
          },
        ]}
        texts={texts}
        faults={faults}
        change={change}
      />
      <EvaporationWords values={values} units={units} take={(litres) => take('evaporation', litres)} />
      <Figures
        fields={[
          { key: 'inSump', label: say('Chloride in the sump, mg/L') },
          { key: 'inWater', label: say('Chloride of its top-up water, mg/L') },
          { key: 'strength', label: say('Its top-ups were at, %') },
        ]}
        texts={texts}
        faults={faults}
        change={change}
      />
      <CarryOffWords
        values={values}
        evaporation={evaporation}
        units={units}
        take={(litres) => take('carryOff', litres)}
      />
    </div>
  )
}

interface RateWordsProps {
  values: Record<RateKey, number | null>
  units: Units
  take(litres: number): void
}

function EvaporationWords({ values: { area, fluid, air, humidity, speed }, units, take }: RateWordsProps) {
  if (area === null || fluid === null || air === null || humidity === null || speed === null) return null
  const { low, high, condensing } = evaporationFrom({
    area,
    waterTemperature: fluid,
    airTemperature: air,
    humidity,
    airSpeed: speed,
  })
  if (condensing) return <p role="status">{say('The air is damper than the surface: water settles on it.')}</p>
  return (
    <p role="status">
      {say('{low} to {high}, by formulas made for pools; splash and hot chips come on top.', {
        low: sayPerDay(low, units),
        high: sayPerDay(high, units),
      })}{' '}
      <button type="button" onClick={() => take((low + high) / 2)}>
        {say('Take the middle')}
      </button>
    </p>
  )
}

function CarryOffWords({
  values: { inSump, inWater, strength },
  evaporation,
  units,
  take,
}: RateWordsProps & { evaporation: number | null }) {
  if (inSump === null || inWater === null) return null
  const cycles = cyclesFromTracer({ sump: inSump, water: inWater, strength: strength ?? 0 })
  if (cycles <= 1) {
    return <p role="status">{say('The sump is no richer than its water: this says nothing of the carry-off.')}</p>
  }
  if (evaporation === null) {
    return (
      <p role="status">
        {say('{cycles} times as rich as its top-ups; with the evaporation the carry-off follows.', {
          cycles: sayNumber(cycles, 1),
        })}
      </p>
    )
  }
  const carryOff = carryOffFromCycles({ evaporation, cycles })
  return (
    <p role="status">
      {say('{cycles} times as rich as its top-ups: {volume} carried off, less if it has not come to rest.', {
        cycles: sayNumber(cycles, 1),
        volume: sayPerDay(carryOff, units),
      })}{' '}
      <button type="button" onClick={() => take(carryOff)}>
        {say('Take it')}
      </button>
    </p>
  )
}
