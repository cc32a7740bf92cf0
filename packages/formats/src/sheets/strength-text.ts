import type { Pascals } from '@dawnlift/core/quantity'

/** A strength as cylinders and cubes give it. */
export const strengthText = (strength: Pascals, units: 'metric' | 'imperial'): string =>
  units === 'metric' ? `${(strength / 1e6).toFixed(1)} MPa` : `${(strength * 1.450377e-4).toFixed(0)} psi`
