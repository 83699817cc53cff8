import type { SheetField } from '../sheet-types.ts'
import { plain } from './words.ts'

/**
 * What shops write above their columns, in English, German and Spanish; common practice, gathered by hand. Case, accents
 * and punctuation do not count, and words of {@link fillers} may stand beside them.
 */
const words: Record<SheetField, string> = {
  at: `date, day, date time, datetime, date and time, timestamp, time stamp, when, date taken, date checked, check date, test date,
    reading date, sample date, datum, datum uhrzeit, datum und uhrzeit, datum zeit, zeitpunkt, zeitstempel, prüfdatum, messdatum,
    geprüft am, gemessen am, fecha, día, fecha y hora, fecha hora, fecha de medición, fecha de lectura`,
  time: 'time, time of day, clock, uhrzeit, zeit, hora',
  sump: `machine, machine name, machine no, machine number, machine id, mach, mc, sump, sump name, sump id, sump no, tank, machine tool, asset,
    equipment, maschine, maschinenname, maschinennummer, maschinen nr, maschinen nummer, masch, masch nr, anlage, behälter, tank name, becken, kss behälter,
    máquina, nombre de máquina, maq, máq, equipo, depósito, tanque`,
  by: `by, operator, who, name, initials, checked by, tested by, taken by, measured by, recorded by, entered by, tech, technician, employee, person, user, op, signature,
    von, wer, prüfer, bediener, mitarbeiter, kürzel, geprüft von, gemessen von, durchgeführt von, bearbeiter, unterschrift, zeichen,
    operario, operador, por, quién, responsable, técnico, medido por, iniciales, firma`,
  note: `note, notes, comment, comments, remark, remarks, observation, observations, action, action taken, actions, notiz, notizen, bemerkung, bemerkungen,
    kommentar, kommentare, anmerkung, anmerkungen, maßnahme, maßnahmen, nota, notas, comentario, comentarios, observación, observaciones`,
  brix: 'brix, °brix, degrees brix, deg brix, °bx, bx, refractometer, refract, refr, refraktometer, refraktometerwert, grad brix, refractómetro, refractometro, grados brix, lectura brix, índice brix',
  titration:
    'titration, titrated concentration, concentration titration, concentration by titration, titrated, titer, titrationswert, titration konzentration, konzentration titration, titriert, titulación, valoración, concentración por titulación',
  ph: 'ph, ph value, ph level, ph wert, valor ph, valor de ph',
  hardness:
    'hardness, total hardness, water hardness, hard, härte, gesamthärte, wasserhärte, härtegrad, dureza, dureza total, dureza del agua',
  chloride: 'chloride, chlorides, cl, chlorid, chloride ion, cloruro, cloruros',
  conductivity: 'conductivity, cond, leitfähigkeit, leitwert, lf, conductividad',
  sulfate: 'sulfate, sulphate, sulfates, sulphates, so4, sulfat, sulfato, sulfatos',
  nitrate: 'nitrate, nitrates, no3, nitrat, nitrato, nitratos',
  nitrite: 'nitrite, nitrites, no2, nitrit, nitrito, nitritos',
  temperature: 'temperature, temp, fluid temperature, fluid temp, temperatur, temperatura',
  bacteria:
    'bacteria, bacterial count, bacteria count, dip slide, dipslide, cfu, cfu ml, total count, bakterien, keimzahl, gesamtkeimzahl, kbe, kbe ml, bacterias, recuento, recuento bacteriano, ufc, ufc ml',
  fungi:
    'fungi, fungus, mold, mould, yeast, yeast and mold, yeast and mould, pilze, hefen, hefen und pilze, hongos, levaduras',
  trampOil:
    'tramp oil, tramp, free oil, fremdöl, fremdölanteil, leckageöl, aceite extraño, aceite ajeno, aceite libre, aceite vagabundo',
  dissolvedOxygen: 'dissolved oxygen, oxygen, do, o2, sauerstoff, gelöster sauerstoff, oxígeno, oxígeno disuelto',
  machineHours:
    'machine hours, hours, run hours, running hours, hour meter, spindle hours, betriebsstunden, maschinenstunden, laufstunden, horas, horas de máquina, horas máquina',
  level:
    'level, sump level, tank level, coolant level, fluid level, dipstick, dip, stand, füllstand, pegel, füllhöhe, peilstab, kss stand, niveau, nivel, nivel de líquido, nivel del tanque',
  volume:
    'volume, vol, volume in sump, sump volume, tank volume, fluid volume, volumen, füllmenge, füllvolumen, inhalt, volumen en depósito, contenido',
  pumps: 'pumps, pump, pump state, pumps running, pumpe, pumpen, pumpenzustand, bomba, bombas, estado de bomba',
  added: `added, add, mix added, amount added, volume added, vol added, quantity added, qty added, coolant added, fluid added, addition, additions, top up, topup, topped up, top off, topped off, make up, makeup, make up added, premix added, refill,
    refilled, nachgefüllt, nachfüllung, nachfüllmenge, aufgefüllt, auffüllung, zugabe, zugegeben, emulsion nachgefüllt, kss nachgefüllt, menge nachgefüllt, nachgefüllte menge, mischung zugegeben,
    añadido, agregado, relleno, rellenado, mezcla añadida, volumen añadido, cantidad añadida, volumen agregado, refrigerante añadido, reposición`,
  addedStrength: `added strength, strength added, strength of addition, strength of mix added, top up strength, topup strength, makeup strength, make up strength, mix ratio, added at, addition strength, premix strength, added concentration, addition concentration,
    nachfüllkonzentration, nachfüllstärke, konzentration nachfüllung, konzentration zugabe, konzentration nachgefüllt, mischungsverhältnis, ansatzkonzentration, zugabe konzentration,
    concentración añadida, concentración de relleno, concentración añadido, proporción de mezcla`,
  addedConcentrate: `concentrate added, added concentrate, conc added, neat added, neat concentrate added, concentrate used, konzentrat zugegeben, konzentrat nachgefüllt, konzentratzugabe, konzentratmenge, zugabe konzentrat,
    concentrado añadido, concentrado agregado`,
  addedWater: `water added, added water, plain water added, water added only, wasser zugegeben, wasser nachgefüllt, wasserzugabe, wassermenge, zugabe wasser, nachgefülltes wasser, agua añadida, agua agregada`,
  water:
    'water, which water, water source, water type, water used, type of water, wasser, wasserart, welches wasser, agua, tipo de agua',
  drawoff: `drawn off, draw off, drawoff, removed, pumped out, taken out, drained, volume removed, abgelassen, abgesaugt, entnommen, entnahme, abgepumpt, extraído, retirado, drenado, vaciado`,
  skimmed: `skimmed, oil skimmed, tramp oil skimmed, tramp oil removed, skimmed oil, abgeskimmt, öl abgeskimmt, fremdöl entfernt, fremdöl abgezogen, abgeschöpft, aceite retirado, aceite desnatado, desnatado`,
}

/** Headings of what a sheet counts for itself: never a machine, however many numbers stand beneath. */
const bookkeeping = new Set(
  'week|calendar week|cw|wk|kw|kalenderwoche|woche|semana|month|monat|mes|year|jahr|ano|shift|schicht|turno|no|nr|num|number|nummer|numero|row|zeile|line|linea|id|lfd nr|total|sum|summe|average|avg|mittelwert|promedio'.split(
    '|',
  ),
)

/** Whether a heading counts rows, weeks or shifts, or sums others up. */
export const isBookkeeping = (heading: string): boolean => bookkeeping.has(plain(heading))

/** Words that say nothing of what a column holds. */
export const fillers = new Set(
  (
    'reading readings value values measured measurement result results check test tested coolant cutting fluid current actual todays the of in as ' +
    'wert werte messwert gemessen gemessene gemessener aktuell aktueller istwert ist kss kuhlschmierstoff im in ' +
    'lectura valor medido medida actual del de la el en refrigerante taladrina'
  ).split(' '),
)

/** What is poured neat, where a unit of volume stands beside it. */
const concentrates = new Set(['concentrate', 'konzentrat', 'concentrado'])

/** Whether a phrase names the concentrate itself and not what was done with it. */
export const isConcentrate = (phrase: string): boolean => concentrates.has(withoutFillers(plain(phrase)))

/** A concentration that does not say how it came about: worked out, or titrated? */
const concentrations = new Set(
  'concentration|conc|strength|strength %|mix strength|mix %|mix percent|concentration %|conc %|coolant concentration|concentration percent|percent|%|konzentration|konz|konzentration %|emulsionskonzentration|concentracion|concentracion %|conc vol %|% conc|% concentration|refractometer %|refraktometer %|refractometro %|concentrate|konzentrat|concentrado|concentrate %|konzentrat %|concentrado %'.split(
    '|',
  ),
)

const byPhrase = new Map<string, SheetField>()
for (const [field, phrases] of Object.entries(words) as [SheetField, string][]) {
  for (const phrase of phrases.split(',')) {
    for (const key of new Set([plain(phrase), withoutFillers(plain(phrase))])) {
      if (key !== '' && !byPhrase.has(key)) byPhrase.set(key, field)
    }
  }
}

/** The field that a phrase names word for word, or null. */
export const fieldNamedExactly = (phrase: string): SheetField | null => byPhrase.get(plain(phrase)) ?? null

/** The field that a phrase names, or null. Fillers count where the phrase needs them ("in", "of"), else they do not. */
export const fieldNamed = (phrase: string): SheetField | null =>
  fieldNamedExactly(phrase) ?? byPhrase.get(withoutFillers(plain(phrase))) ?? null

/** Whether a heading is a concentration that says neither °Brix nor titration. */
export const isBareConcentration = (heading: string): boolean => {
  const whole = plain(heading)
  return concentrations.has(whole) || concentrations.has(withoutFillers(whole))
}

function withoutFillers(phrase: string): string {
  return phrase
    .split(' ')
    .filter((word) => !fillers.has(word))
    .join(' ')
}
