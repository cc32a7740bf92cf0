import { CIVIL_DEGREES } from './daylight.js'
import { evaporationPerHour, windAtHeight } from './evaporation.js'
import { dryInland, summerSite } from './fixtures/summer-site.js'
import { wbgtOutdoors } from './heat-stress.js'
import { hourColumns, supplyOf } from './hour-columns.js'
import { nozzleLine, sunOnCylinder } from './mix-temperature.js'
import { hoursFromNormals } from './normals-hours.js'
import { printHours } from './print-hour.js'
import type { WeatherHour } from './site-hour.js'
import { hourAngle, sunTrack } from './sun.js'

/** Thirty years of hours, made once from one year: 262,800. */
function thirtyYears(): readonly WeatherHour[] {
  const year = hoursFromNormals(dryInland, summerSite.site, '2026-01-01', 365)
  return Array.from({ length: 30 }, (_, index) =>
    year.map(hour => ({ ...hour, start: hour.start + index * 365 * 86400 })),
  ).flat()
}

const names = ['air', 'humidity', 'wind', 'gust', 'rain', 'global', 'beam', 'diffuse', 'pressure'] as const

/**
 * The same arithmetic in one loop, from figures that lie in typed arrays already, with the nine margins of each hour as the outcome: what
 * it costs at the least. `hourColumns` reads hours as objects, checks them, and keeps the figures and whether the hour is open; the nine
 * limits as objects come on top for whoever reads every hour.
 */
function plainLoop(hours: readonly WeatherHour[]): () => Float64Array {
  const start = Float64Array.from(hours, hour => hour.start)
  const columns = names.map(name => Float64Array.from(hours, hour => hour[name]))
  const [airs, humidities, winds, gusts, rains, globals, beams, diffuses, pressures] = columns as [
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
  ]
  const { rules, batching, site } = summerSite
  const supply = supplyOf(summerSite)
  const [sinLatitude, cosLatitude] = [
    Math.sin((site.latitude * Math.PI) / 180),
    Math.cos((site.latitude * Math.PI) / 180),
  ]
  const [bead, crew, civil] = [windAtHeight(1), windAtHeight(1, 2), Math.sin((CIVIL_DEGREES * Math.PI) / 180)]
  const margins = new Float64Array(9 * hours.length)
  return () => {
    const sunAt = sunTrack()
    let sum = 0
    for (let i = 0; i < 24; i += 1) sum += airs[i]!
    for (let i = 0; i < start.length; i += 1) {
      if (i >= 24) sum += airs[i]! - airs[i - 24]!
      const [air, humidity, global, beam, diffuse] = [
        airs[i]!,
        humidities[i]!,
        globals[i]!,
        beams[i]!,
        diffuses[i]!,
      ]
      const sun = sunAt(start[i]! + 1800)
      const H = hourAngle(start[i]! + 1800, site.longitude, sun.equationOfTimeMinutes)
      const sinAltitude = sinLatitude * sun.sinDeclination + cosLatitude * sun.cosDeclination * Math.cos(H)
      const wind = winds[i]! * bead
      const around = {
        dry: sum / 24 + (batching.siloGain ?? 0),
        air,
        wind,
        cylinderSun: sunOnCylinder({ global, beam, diffuse }),
      }
      const line = nozzleLine(supply, around, 0)
      const tap = line.rest + line.slope * batching.waterTemperature
      const inUse = Math.min(tap, rules.mixTemperatureMost.value)
      const beamShare = global > 0 ? Math.max(0, 1 - diffuse / global) : 0
      const wbgt = wbgtOutdoors({
        air,
        humidity,
        pressure: pressures[i]!,
        wind: winds[i]! * crew,
        global,
        beamShare,
        sinAltitude,
      })
      margins[9 * i] = rules.mixTemperatureMost.value - tap
      margins[9 * i + 1] = tap - rules.mixTemperatureLeast.value
      margins[9 * i + 2] = air - rules.airTemperatureLeast.value
      margins[9 * i + 3] = rules.evaporationMost.value - evaporationPerHour({ air, humidity, wind }, inUse)
      margins[9 * i + 4] = rules.windMost.value - winds[i]!
      margins[9 * i + 5] = rules.gustMost.value - gusts[i]!
      margins[9 * i + 6] = rules.rainMost.value - rains[i]!
      margins[9 * i + 7] = rules.wbgtMost.value - wbgt
      margins[9 * i + 8] = (sinAltitude > civil ? 1 : 0) - rules.daylightNeeded.value
    }
    return margins
  }
}

export function bench(): { readonly name: string; readonly run: () => void }[] {
  const hours = thirtyYears()
  const plain = plainLoop(hours)
  return [
    { name: 'the same arithmetic as a plain loop on typed arrays', run: () => void plain() },
    { name: 'verdicts of 30 years of hours (262,800)', run: () => void hourColumns(summerSite, hours) },
    { name: 'the same, each hour with its nine limits', run: () => void printHours(summerSite, hours) },
    {
      name: 'hours of one year from climate normals',
      run: () => void hoursFromNormals(dryInland, summerSite.site, '2026-01-01', 365),
    },
  ]
}
