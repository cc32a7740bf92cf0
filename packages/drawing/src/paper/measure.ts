import { feetInches } from '@dawnlift/core/quantity'

/** `1.35` with the unit once on the sheet is too easy to misread on site: every length carries its unit. */
export function lengthText(metres: number, units: 'metric' | 'imperial'): string {
  if (units === 'imperial') return feetText(metres)
  return metres >= 100
    ? `${metres.toFixed(0)} m`
    : `${metres < 10 ? metres.toFixed(3).replace(/0$/, '') : metres.toFixed(2)} m`
}

/** Feet and inches to the nearest eighth, as on a tape; long runs of bead in whole feet. */
const feetText = (metres: number): string =>
  Math.abs(metres) >= 304.8 ? `${Math.round(metres / 0.3048)} ft` : feetInches(metres, 8)

export const temperatureText = (celsius: number, units: 'metric' | 'imperial'): string =>
  units === 'metric' ? `${celsius.toFixed(0)} °C` : `${(celsius * 1.8 + 32).toFixed(0)} °F`

export const areaText = (squareMetres: number, units: 'metric' | 'imperial'): string =>
  units === 'metric' ? `${squareMetres.toFixed(1)} m²` : `${(squareMetres / 0.3048 ** 2).toFixed(0)} ft²`

export const volumeText = (cubicMetres: number, units: 'metric' | 'imperial'): string =>
  units === 'metric' ? `${cubicMetres.toFixed(2)} m³` : `${(cubicMetres / 0.9144 ** 3).toFixed(2)} yd³`
