import type { Observation } from '@dawnlift/core/weather'

export type WeatherQuantity = Exclude<keyof Observation, 'start'>
type Units = Readonly<Record<string, (value: number) => number>>

const times = (factor: number) => (value: number) => value * factor
const same = times(1)
const temperature: Units = {
  '°C': same,
  C: same,
  '°F': f => (f - 32) / 1.8,
  F: f => (f - 32) / 1.8,
  K: k => k - 273.15,
}
const speed: Units = {
  'm/s': same,
  'km/h': times(1 / 3.6),
  mph: times(0.44704),
  kn: times(1852 / 3600),
  kt: times(1852 / 3600),
}
const sun: Units = {
  'W/m²': same,
  'W/m2': same,
  'kJ/m²': times(1 / 3.6),
  'kJ/m2': times(1 / 3.6),
  'J/cm²': times(1 / 0.36),
  'kWh/m²': times(1000),
  'BTU/ft²': times(3.154591),
}

/** Units a weather column may be in, each with its way to ours. Sums of sun are over the hour. */
export const weatherUnits: Readonly<Record<WeatherQuantity, Units>> = {
  air: temperature,
  dewPoint: temperature,
  humidity: { '%': times(0.01), '1': same },
  wind: speed,
  gust: speed,
  rain: { mm: same, 'mm/h': same, cm: times(10), in: times(25.4), 'kg/m²': same },
  global: sun,
  beam: sun,
  diffuse: sun,
  pressure: {
    Pa: same,
    hPa: times(100),
    mbar: times(100),
    kPa: times(1000),
    mmHg: times(133.322387),
    inHg: times(3386.389),
    psi: times(6894.757),
  },
}

/** How to bring a column in this unit to ours; undefined where the unit is none of the quantity's. */
export const readUnit = (quantity: WeatherQuantity, unit: string): ((value: number) => number) | undefined =>
  Object.hasOwn(weatherUnits[quantity], unit) ? weatherUnits[quantity][unit] : undefined
