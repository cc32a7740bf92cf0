/** Where one looks at the house from: round the middle of what is looked at, z up. */
export interface Orbit {
  /** Turned about the house [rad]; 0 looks along +y. */
  readonly turn: number
  /** Above the ground [rad]. */
  readonly rise: number
  readonly away: number
  readonly middle: readonly [number, number, number]
}

const [leastRise, mostRise] = [0.02, Math.PI / 2 - 0.01]
const [nearest, farthest] = [0.5, 250]

/** Far enough that the whole slab fits a narrow picture too. */
export function firstOrbit(middle: Orbit['middle'], size: number, aspect: number): Orbit {
  return { turn: -0.42, rise: 0.6, away: size * Math.max(1.6, 2.4 / aspect), middle }
}

export const eyeOf = ({ turn, rise, away, middle: [x, y, z] }: Orbit): readonly [number, number, number] => [
  x + away * Math.cos(rise) * Math.sin(turn),
  y - away * Math.cos(rise) * Math.cos(turn),
  z + away * Math.sin(rise),
]

/** Turned with the hand: the house follows it. */
export const turned = (orbit: Orbit, right: number, up: number): Orbit => ({
  ...orbit,
  turn: orbit.turn - right,
  rise: Math.min(mostRise, Math.max(leastRise, orbit.rise - up)),
})

export const nearer = (orbit: Orbit, factor: number): Orbit => ({
  ...orbit,
  away: Math.min(farthest, Math.max(nearest, orbit.away / factor)),
})

/** Shifted along the ground as one sees it [m]. */
export function shifted(orbit: Orbit, right: number, onward: number): Orbit {
  const [x, y, z] = orbit.middle
  const [cosine, sine] = [Math.cos(orbit.turn), Math.sin(orbit.turn)]
  return {
    ...orbit,
    middle: [x + right * cosine - onward * sine, y + right * sine + onward * cosine, z],
  }
}

/** What a key does to the way one looks; nothing for keys that mean nothing here. */
export function keyed(orbit: Orbit, key: string, shift: boolean, home: Orbit): Orbit | undefined {
  const step = 0.1
  const pace = orbit.away * 0.05
  switch (key) {
    case 'ArrowLeft':
      return shift ? shifted(orbit, -pace, 0) : turned(orbit, step, 0)
    case 'ArrowRight':
      return shift ? shifted(orbit, pace, 0) : turned(orbit, -step, 0)
    case 'ArrowUp':
      return shift ? shifted(orbit, 0, pace) : turned(orbit, 0, -step)
    case 'ArrowDown':
      return shift ? shifted(orbit, 0, -pace) : turned(orbit, 0, step)
    case '+':
    case '=':
      return nearer(orbit, 1.2)
    case '-':
      return nearer(orbit, 1 / 1.2)
    case '0':
    case 'Home':
      return home
    default:
      return undefined
  }
}
