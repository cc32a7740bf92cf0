/** `1.35` with the unit once on the sheet is too easy to misread on site: every length carries its unit. */
export function lengthText(metres: number, units: 'metric' | 'imperial'): string {
  if (units === 'imperial') return feetText(metres)
  return metres >= 100
    ? `${metres.toFixed(0)} m`
    : `${metres < 10 ? metres.toFixed(3).replace(/0$/, '') : metres.toFixed(2)} m`
}

/** Feet and inches to the nearest eighth, as on a tape: `4′ 5 1/8″`. */
function feetText(metres: number): string {
  const eighths = Math.round((Math.abs(metres) / 0.0254) * 8)
  const feet = Math.floor(eighths / 96)
  const inches = Math.floor((eighths % 96) / 8)
  const part = eighths % 8
  const fraction = part === 0 ? '' : ` ${reduced(part)}`
  const sign = metres < 0 && eighths > 0 ? '−' : ''
  if (feet >= 1000) return `${sign}${Math.round(Math.abs(metres) / 0.3048)} ft`
  return feet === 0 ? `${sign}${inches}${fraction}″` : `${sign}${feet}′ ${inches}${fraction}″`
}

const reduced = (part: number): string =>
  part % 4 === 0 ? `${part / 4}/2` : part % 2 === 0 ? `${part / 2}/4` : `${part}/8`

export const temperatureText = (celsius: number, units: 'metric' | 'imperial'): string =>
  units === 'metric' ? `${celsius.toFixed(0)} °C` : `${(celsius * 1.8 + 32).toFixed(0)} °F`
