import { describe, expect, it } from 'vitest'
import { isBeyond, marginOf } from './beyond.js'
import type { Limit, LimitKind } from './limit.js'
import { sayLimit, sayQuantity } from './limit-words.js'

const limit = (kind: LimitKind, demand: number, capacity: number, unit: string, at?: number): Limit => ({
  kind,
  demand,
  capacity,
  unit,
  source: 'the job',
  ...(at === undefined ? {} : { at }),
})
// 2026-07-14 07:40 UTC is 09:40 in Madrid.
const morning = Date.UTC(2026, 6, 14, 7, 40) / 1000

describe('sayLimit', () => {
  it.each([
    [limit('mix-hot', 33.1, 32, '°C', morning), 'mix passes 32 °C at 09:40'],
    [limit('mix-cold', 5, 3.2, '°C'), 'mix at 3.2 °C, at least 5 °C is needed'],
    [limit('air-cold', 5, 2, '°C'), 'air at 2 °C, 5 °C is the least'],
    [limit('wind', 12.5, 10, 'm/s'), 'wind 45 km/h, limit 36 km/h'],
    [limit('buckling', 0.78, 0.76, 'm'), 'the fresh wall would lean over: 0.78 m tall, 0.76 m is safe'],
    [limit('resting-time', 1140, 840, 's'), 'a layer would lie bare for 19 min, bond allows 14 min'],
    [limit('resting-time', 682, 670, 's'), 'a layer would lie bare for 11.4 min, bond allows 11.2 min'],
    [limit('buckling', 0.7642, 0.7618, 'm'), 'the fresh wall would lean over: 0.764 m tall, 0.762 m is safe'],
    [limit('wind', 10, 10, 'm/s'), 'wind 36 km/h, limit 36 km/h'],
    [limit('daylight', 1, 0, ''), 'too dark to print'],
    [limit('overnight-cure', 43200, 36000, 's'), 'the lift below has cured 10.0 h, 12.0 h is needed'],
  ])('%o', (one, words) => expect(sayLimit(one, 'metric', 'Europe/Madrid')).toBe(words))
  it('speaks imperial where the site does', () =>
    expect(sayLimit(limit('lift-height', 1.02, 1, 'm'), 'imperial', 'UTC')).toBe(
      'a lift may be 3\' 3.375" tall by rule',
    ))
})

describe('sayQuantity', () => {
  // Hand: 10 m/s = 22.4 mph; 32 °C = 89.6 °F; 25.4 mm/h = 1 in/h; 6.895 kPa = 1 psi; 0.7646 m³ = 1 yd³.
  it.each([
    [10, 'm/s', '22 mph'],
    [32, '°C', '90 °F'],
    [25.4, 'mm/h', '1.00 in/h'],
    [6894.76, 'Pa', '1.00 psi'],
    [0.764555, 'm³', '1.00 yd³'],
    [0.3048, 'm', '1\' 0"'],
    [-0.0127, 'm', '-0\' 0.5"'],
    // Hand: 1 in = 25.4 mm; 1 mi = 1.609344 km; 1 lb = 0.45359237 kg, so 25 kg = 55.1 lb; 1 US gal = 3.785412 L;
    // 1 lb/ft³ = 0.45359237 / 0.3048³ = 16.01846 kg/m³; 1 lb/ft² = 0.45359237 × 9.80665 / 0.3048² = 47.88026 Pa;
    // 1 ft² = 0.09290304 m²; 1 MPa = 1e6 / 6894.757 = 145 psi; 10 K = 18 °F apart; 1 in/s = 25.4 mm/s.
    [25.4, 'mm', '1.00 in'],
    [1.609344, 'km', '1 mi'],
    [25, 'kg', '55 lb'],
    [3.785412, 'L', '1 gal'],
    [37.85412, 'L/min', '10.0 gal/min'],
    [2242.584, 'kg/m³', '140.0 lb/ft³'],
    [478.8026, 'N/m²', '10.0 lb/ft²'],
    [9.290304, 'm²', '100 ft²'],
    [645.16, 'mm²', '1.0 in²'],
    [64.516, 'cm²', '10 in²'],
    [1, 'MPa', '145 psi'],
    [20, 'bar', '290 psi'],
    [10, 'K', '18 °F'],
    [25.4, 'mm/s', '1.0 in/s'],
  ])('%d %s is %s', (value, unit, words) => expect(sayQuantity(value, unit, 'imperial')).toBe(words))
  it.each([
    [8, 'mm', '8 mm'],
    [2.54, 'mm', '2.5 mm'],
    [478.8, 'N/m²', '479 Pa'],
    [2200, 'kg/m³', '2200 kg/m³'],
    [12.34, 'L/min', '12.3 L/min'],
    [4.55, 'K', '4.5 K'],
  ])('%d %s is %s where metres are read', (value, unit, words) =>
    expect(sayQuantity(value, unit, 'metric')).toBe(words),
  )
  it('shows a unit it does not know as it is', () =>
    expect(sayQuantity(2.34567, 'layers', 'metric')).toBe('2.35 layers'))
})

describe('a limit met exactly', () => {
  it('is not exceeded', () => expect(isBeyond(limit('wind', 10, 10, 'm/s'))).toBe(false))
  it('has no margin left', () => expect(marginOf(limit('wind', 10, 10, 'm/s'))).toBe(0))
})
