/** A wall cut into cells from its left face to its right one, per m² of face. */
export interface CellWall {
  /** Heat a cell takes for one kelvin [J/m²K]. */
  readonly capacities: Float64Array
  /** Between cell i and the next [W/m²K]: concrete, or the cavity. One shorter. */
  readonly conductances: Float64Array
  /** From the middle of the first and of the last cell to its face [W/m²K]. */
  readonly leftHalf: number
  readonly rightHalf: number
}

/** What a face takes in at a surface temperature Ts [W/m²]: gain − loss·Ts. */
export interface FaceLaw {
  readonly gain: number
  readonly loss: number
}

/** Room for one wall's steps, so that a step makes no garbage. */
export interface StepRoom {
  readonly upper: Float64Array
  readonly right: Float64Array
}

export const stepRoom = (cells: number): StepRoom => ({
  upper: new Float64Array(cells),
  right: new Float64Array(cells),
})

/**
 * Heat flowing into a cell through its face [W/m²], the half cell between them counted in.
 *
 *   q = (gain − loss·T) K/(loss + K)
 */
export const faceFlux = ({ gain, loss }: FaceLaw, half: number, cell: number): number =>
  ((gain - loss * cell) * half) / (loss + half)

/** Temperature of the face itself [°C]. */
export const faceTemperature = ({ gain, loss }: FaceLaw, half: number, cell: number): number =>
  (gain + half * cell) / (loss + half)

/**
 * One step of the heat equation through a wall, by the theta method on finite volumes; `temperatures` are overwritten.
 *
 *   C (T′ − T)/Δt = θ·[flows at T′] + (1 − θ)·[flows at T] + heat
 *
 * @param heat       generated in each cell [W/m²]
 * @param left       the law of the left face at the end of the step, and the heat that came in through it at its start [W/m²]
 * @param theta      ½ second order in time; 1 first order, free of ringing after a sudden change
 *
 * Source   [Patankar1980] ch. 4, from memory.
 * Range    any step for θ ≥ ½.
 * Scatter  second order in the cell, and in the step for θ = ½: shown against closed solutions.
 * Assumes  heat flows straight through the wall: no ties, corners or edges.
 */
export function conductionStep(
  wall: CellWall,
  temperatures: Float64Array,
  heat: Float64Array,
  step: number,
  left: readonly [law: FaceLaw, old: number],
  right: readonly [law: FaceLaw, old: number],
  theta: number,
  room: StepRoom,
): void {
  const { capacities, conductances } = wall
  const last = capacities.length - 1
  const keep = 1 - theta
  let before = 0
  let flowIn = keep * left[1]
  // Forward sweep of the tridiagonal system; the old temperature of a cell is read before it is overwritten.
  for (let i = 0; i <= last; i += 1) {
    const below = i > 0 ? theta * conductances[i - 1]! : 0
    const above = i < last ? theta * conductances[i]! : 0
    const flowOut =
      i < last ? keep * conductances[i]! * (temperatures[i]! - temperatures[i + 1]!) : -keep * right[1]
    let diagonal = capacities[i]! / step + below + above
    let known = (capacities[i]! / step) * temperatures[i]! + flowIn - flowOut + heat[i]!
    if (i === 0) {
      const share = wall.leftHalf / (left[0].loss + wall.leftHalf)
      diagonal += theta * left[0].loss * share
      known += theta * left[0].gain * share
    }
    if (i === last) {
      const share = wall.rightHalf / (right[0].loss + wall.rightHalf)
      diagonal += theta * right[0].loss * share
      known += theta * right[0].gain * share
    }
    const pivot = diagonal - below * before
    room.right[i] = (known + (i > 0 ? below * room.right[i - 1]! : 0)) / pivot
    before = above / pivot
    room.upper[i] = before
    flowIn = flowOut
  }
  temperatures[last] = room.right[last]!
  for (let i = last - 1; i >= 0; i -= 1)
    temperatures[i] = room.right[i]! + room.upper[i]! * temperatures[i + 1]!
}

/** A solid slab of equal cells. */
export function slabOf(thickness: number, cells: number, conductivity: number, capacity: number): CellWall {
  const cell = thickness / cells
  return {
    capacities: new Float64Array(cells).fill(capacity * cell),
    conductances: new Float64Array(cells - 1).fill(conductivity / cell),
    leftHalf: (2 * conductivity) / cell,
    rightHalf: (2 * conductivity) / cell,
  }
}

/** Two slabs with a cavity between, seen as one wall. */
export function cavityWall(leaf: CellWall, cavity: number): CellWall {
  const inner = 1 / (1 / leaf.rightHalf + 1 / cavity + 1 / leaf.leftHalf)
  return {
    capacities: Float64Array.of(...leaf.capacities, ...leaf.capacities),
    conductances: Float64Array.of(...leaf.conductances, inner, ...leaf.conductances),
    leftHalf: leaf.leftHalf,
    rightHalf: leaf.rightHalf,
  }
}
