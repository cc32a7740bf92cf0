type Point = readonly [number, number]

/** A ring with the points left out that lie within a tolerance of the line through their neighbours. */
export function thinned(ring: readonly Point[], within: number): readonly Point[] {
  if (ring.length < 5) return ring
  const far = farthestFrom(ring, ring[0]!)
  const there = ring.slice(0, far + 1)
  const back = [...ring.slice(far), ring[0]!]
  return [...lineThinned(there, within).slice(0, -1), ...lineThinned(back, within).slice(0, -1)]
}

function lineThinned(line: readonly Point[], within: number): readonly Point[] {
  const [first, last] = [line[0]!, line.at(-1)!]
  let [worst, off] = [0, within]
  for (let i = 1; i < line.length - 1; i++) {
    const distance = distanceToChord(line[i]!, first, last)
    if (distance > off) [worst, off] = [i, distance]
  }
  if (worst === 0) return [first, last]
  return [
    ...lineThinned(line.slice(0, worst + 1), within).slice(0, -1),
    ...lineThinned(line.slice(worst), within),
  ]
}

function farthestFrom(ring: readonly Point[], [x, y]: Point): number {
  let [far, most] = [0, 0]
  ring.forEach((point, index) => {
    const distance = Math.hypot(point[0] - x, point[1] - y)
    if (distance > most) [far, most] = [index, distance]
  })
  return far
}

function distanceToChord([px, py]: Point, [ax, ay]: Point, [bx, by]: Point): number {
  const [dx, dy] = [bx - ax, by - ay]
  const length = dx * dx + dy * dy
  const at = length === 0 ? 0 : Math.min(1, Math.max(0, ((px - ax) * dx + (py - ay) * dy) / length))
  return Math.hypot(px - ax - at * dx, py - ay - at * dy)
}
