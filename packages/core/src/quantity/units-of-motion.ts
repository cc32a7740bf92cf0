import type { Dimension, DimensionUnits } from './dimension.js'
import { DEGREE, FOOT, GALLON, GRAVITY, INCH, inFamily, MILE, unit } from './unit-scale.js'

const speeds = [
  unit(1, 'm/s'),
  unit(0.001, 'mm/s'),
  unit(0.01, 'cm/s'),
  unit(1 / 60, 'm/min'),
  unit(0.001 / 60, 'mm/min'),
  unit(1 / 3.6, 'km/h', 'kph', 'kmh'),
  unit(1 / 3600, 'm/h'),
  unit(MILE / 3600, 'mph', 'mi/h'),
  unit(FOOT, 'ft/s'),
  unit(FOOT / 60, 'ft/min', 'fpm'),
  unit(FOOT / 3600, 'ft/h'),
  unit(INCH, 'in/s'),
  unit(INCH / 60, 'in/min'),
  unit(1852 / 3600, 'kn', 'knots'),
] as const

export type MotionDimension = Extract<
  Dimension,
  | 'length'
  | 'area'
  | 'volume'
  | 'time'
  | 'speed'
  | 'windSpeed'
  | 'acceleration'
  | 'flow'
  | 'angle'
  | 'turnRate'
  | 'turnAcceleration'
  | 'share'
  | 'rain'
  | 'rateConstant'
>

/** Space, time and what comes of the two; shares and rates. */
export const unitsOfMotion: Readonly<Record<MotionDimension, DimensionUnits>> = {
  length: {
    inside: 'm',
    shown: { metric: 'm', imperial: 'ft' },
    step: { metric: 0.001, imperial: 1 / 192 },
    example: '2.46 m',
    units: [
      unit(1, 'm', 'metre', 'metres', 'meter', 'meters'),
      unit(0.001, 'mm'),
      unit(0.01, 'cm'),
      unit(1000, 'km'),
      unit(1e-6, 'µm', 'μm', 'um'),
      inFamily('foot', 3 * FOOT, 'yd'),
      inFamily('foot', FOOT, 'ft', "'", 'foot', 'feet'),
      inFamily('foot', INCH, 'in', '"', 'inch', 'inches'),
      unit(MILE, 'mi'),
    ],
  },
  area: {
    inside: 'm²',
    shown: { metric: 'm²', imperial: 'ft²' },
    step: { metric: 0.01, imperial: 0.1 },
    example: '12 m²',
    units: [
      unit(1, 'm²', 'sq m'),
      unit(1e-6, 'mm²'),
      unit(1e-4, 'cm²'),
      unit(FOOT ** 2, 'ft²', 'sq ft', 'sqft'),
      unit(INCH ** 2, 'in²', 'sq in'),
      unit((3 * FOOT) ** 2, 'yd²', 'sq yd'),
    ],
  },
  volume: {
    inside: 'm³',
    shown: { metric: 'm³', imperial: 'yd³' },
    step: { metric: 0.001, imperial: 0.001 },
    example: '0.5 m³',
    units: [
      unit(1, 'm³', 'cu m'),
      unit(0.001, 'L', 'l', 'litre', 'litres', 'liter', 'liters', 'dm³'),
      unit(1e-6, 'mL', 'ml', 'cm³'),
      unit(1e-9, 'mm³'),
      unit(FOOT ** 3, 'ft³', 'cu ft'),
      unit((3 * FOOT) ** 3, 'yd³', 'cu yd'),
      unit(INCH ** 3, 'in³', 'cu in'),
      unit(GALLON, 'gal'),
    ],
  },
  time: {
    inside: 's',
    shown: { metric: 'min', imperial: 'min' },
    step: { metric: 0.1, imperial: 0.1 },
    example: '7 min',
    units: [
      inFamily('clock', 604800, 'wk', 'week', 'weeks'),
      inFamily('clock', 86400, 'd', 'day', 'days'),
      inFamily('clock', 3600, 'h', 'hr', 'hour', 'hours'),
      inFamily('clock', 60, 'min', 'minute', 'minutes'),
      inFamily('clock', 1, 's', 'sec', 'second', 'seconds'),
      unit(0.001, 'ms'),
    ],
  },
  speed: {
    inside: 'm/s',
    shown: { metric: 'mm/s', imperial: 'in/s' },
    step: { metric: 0.1, imperial: 0.01 },
    example: '150 mm/s',
    units: speeds,
  },
  windSpeed: {
    inside: 'm/s',
    shown: { metric: 'km/h', imperial: 'mph' },
    step: { metric: 0.1, imperial: 0.1 },
    example: '25 km/h',
    units: speeds,
  },
  acceleration: {
    inside: 'm/s²',
    shown: { metric: 'mm/s²', imperial: 'in/s²' },
    step: { metric: 1, imperial: 0.1 },
    example: '500 mm/s²',
    units: [
      unit(1, 'm/s²'),
      unit(0.001, 'mm/s²'),
      unit(INCH, 'in/s²'),
      unit(FOOT, 'ft/s²'),
      unit(GRAVITY, 'g0'),
    ],
  },
  flow: {
    inside: 'm³/s',
    shown: { metric: 'L/min', imperial: 'gal/min' },
    step: { metric: 0.01, imperial: 0.01 },
    example: '8 L/min',
    units: [
      unit(1, 'm³/s'),
      unit(1 / 3600, 'm³/h'),
      unit(0.001, 'L/s', 'l/s'),
      unit(0.001 / 60, 'L/min', 'l/min'),
      unit(1e-9, 'mm³/s'),
      unit(GALLON / 60, 'gal/min', 'gpm'),
      unit(FOOT ** 3 / 60, 'ft³/min', 'cfm'),
      unit((3 * FOOT) ** 3 / 3600, 'yd³/h'),
    ],
  },
  angle: {
    inside: 'rad',
    shown: { metric: '°', imperial: '°' },
    step: { metric: 0.01, imperial: 0.01 },
    example: '30°',
    units: [
      unit(DEGREE, '°', 'deg', 'degree', 'degrees', 'º'),
      unit(1, 'rad'),
      unit(2 * Math.PI, 'turn', 'turns'),
      unit(0.9 * DEGREE, 'gon'),
    ],
  },
  turnRate: {
    inside: 'rad/s',
    shown: { metric: '°/s', imperial: '°/s' },
    step: { metric: 0.1, imperial: 0.1 },
    example: '90 °/s',
    units: [
      unit(DEGREE, '°/s', 'deg/s', 'º/s'),
      unit(1, 'rad/s'),
      unit((2 * Math.PI) / 60, 'rpm', 'turn/min'),
    ],
  },
  turnAcceleration: {
    inside: 'rad/s²',
    shown: { metric: '°/s²', imperial: '°/s²' },
    step: { metric: 0.1, imperial: 0.1 },
    example: '180 °/s²',
    units: [unit(DEGREE, '°/s²', 'deg/s²', 'º/s²'), unit(1, 'rad/s²')],
  },
  share: {
    inside: '',
    shown: { metric: '%', imperial: '%' },
    step: { metric: 0.1, imperial: 0.1 },
    example: '12 %',
    units: [unit(0.01, '%', 'percent'), unit(0.001, '‰'), unit(1, '', '1', '–', '-')],
  },
  rain: {
    inside: 'mm/h',
    shown: { metric: 'mm/h', imperial: 'in/h' },
    step: { metric: 0.1, imperial: 0.01 },
    example: '0.5 mm/h',
    units: [unit(1, 'mm/h'), unit(25.4, 'in/h')],
  },
  rateConstant: {
    inside: '1/s',
    shown: { metric: '1/d', imperial: '1/d' },
    step: { metric: 0.001, imperial: 0.001 },
    example: '0.5 1/d',
    units: [
      unit(1, '1/s', '/s'),
      unit(1 / 60, '1/min', '/min'),
      unit(1 / 3600, '1/h', '/h'),
      unit(1 / 86400, '1/d', '/d'),
    ],
  },
}
