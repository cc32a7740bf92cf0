import { dryInland, summerSite } from '../weather/fixtures/summer-site.js'
import { hoursFromNormals } from '../weather/index.js'
import { wallHeat } from './wall-heat.js'
import { wallWeather } from './wall-weather.js'

/** A campaign of 25 lifts, one a day, each followed for seven days in steps of five minutes. */
export function bench(): { readonly name: string; readonly run: () => void }[] {
  const hours = hoursFromNormals(dryInland, summerSite.site, '2026-07-01', 40)
  const weather = wallWeather(summerSite.site, hours, { leftBearing: Math.PI, height: 0.5 })
  const lift = (day: number) => {
    const start = weather.first + day * 86400 + 9 * 3600
    return wallHeat({
      build: { kind: 'double', beadWidth: 0.05, thickness: 0.25 },
      mix: summerSite.mix,
      weather,
      start,
      mixTemperature: 28,
      covers: [{ from: start + 5400, cover: 'wet-burlap' }],
      duration: 7 * 86400,
      step: 300,
    })
  }
  const campaign = () => {
    for (let day = 0; day < 25; day += 1) lift(day)
  }
  return [
    { name: 'heat of the walls of a campaign (25 lifts, 7 days, 5 minutes)', run: campaign },
    { name: 'heat of one lift (7 days, 5 minutes)', run: () => void lift(3) },
  ]
}
