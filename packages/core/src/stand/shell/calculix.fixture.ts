import { type PlanMesh, ringMesh, straightMesh } from './plan-mesh.js'
import type { Shell } from './shell-model.js'

/**
 * Lowest buckling factors under self-weight from an outside general finite-element program.
 *
 * Program  CalculiX ccx 2.20 (Debian), *BUCKLE under GRAV at a thousandth of 9.81 m/s², first eigenvalue / 1000, 2026-11-25.
 * Input    nodes at 2·rows + 1 heights over every plan position and at rows + 1 heights over every middle of an edge; foot
 *          clamped; one *ELASTIC material per row with the modulus at the row's middle.
 *          `S8R`: the very same eight-node shells. `C3D20R`: bricks, two across the thickness, on arcs where the plan is round;
 *          bricks because S8R expands to one brick across, which is 1.5 % stiff in shear on these thick walls
 *          (straight leaf: S8R 0.13401, one brick 0.13400, two 0.13239, two and twice as fine 0.13198).
 *          Plates held at both sides: all nodes of both side faces held across the plate and free otherwise; bricks of 25 mm, two
 *          across (0.3 × 1.0 m: 37 mm 0.11450, 28 and 25 mm 0.11448; 0.5 × 0.5 m: 42 mm 0.14065, 25 mm 0.14068).
 */
export interface CalculixCase {
  readonly name: string
  readonly element: 'S8R' | 'C3D20R'
  readonly shell: Shell
  readonly factor: number
}

/** Constant in every row: the value of a straight line from foot to top at the row's middle. */
const stepped = (height: number, rows: number, top: number, foot: number) => (at: number) =>
  foot + ((top - foot) * (Math.floor((at / height) * rows) + 0.5)) / rows

const cornerPlan: PlanMesh = {
  positions: [
    ...Array.from({ length: 9 }, (_, i) => [0.1 * i, 0] as const),
    ...Array.from({ length: 6 }, (_, j) => [0.8, 0.1 * (j + 1)] as const),
  ],
  edges: Array.from({ length: 14 }, (_, i) => ({ from: i, to: i + 1, thickness: 0.05 })),
}

const arcPlan: PlanMesh = {
  positions: Array.from(
    { length: 13 },
    (_, i) => [Math.cos((Math.PI * i) / 24), Math.sin((Math.PI * i) / 24)] as const,
  ),
  edges: Array.from({ length: 12 }, (_, i) => ({ from: i, to: i + 1, thickness: 0.05 })),
}

/** Two wythes 1.2 m long, 0.2 m apart, a zigzag of pitch 0.6 m between them, closed at both ends. */
function doublePlan(): PlanMesh {
  const wythe = (y: number) => Array.from({ length: 9 }, (_, i) => [0.15 * i, y] as const)
  const legs = [
    [0, 11],
    [11, 4],
    [4, 15],
    [15, 8],
  ] as const
  const ends = [...wythe(-0.1), ...wythe(0.1)]
  const middles = legs.map(
    ([a, b]) => [(ends[a]![0] + ends[b]![0]) / 2, (ends[a]![1] + ends[b]![1]) / 2] as const,
  )
  const links = [
    ...Array.from({ length: 8 }, (_, i) => [i, i + 1] as const),
    ...Array.from({ length: 8 }, (_, i) => [9 + i, 10 + i] as const),
    ...legs.flatMap(([a, b], i) => [[a, 18 + i] as const, [18 + i, b] as const]),
    [0, 9] as const,
    [8, 17] as const,
  ]
  return {
    positions: [...ends, ...middles],
    edges: links.map(([from, to]) => ({ from, to, thickness: 0.05 })),
  }
}

const fresh = { poisson: 0.3, density: 2100, gravity: 9.81 }

export const calculixCases: readonly CalculixCase[] = [
  {
    name: 'a straight leaf, 1.0 × 0.4 × 0.05 m, one stiffness',
    element: 'C3D20R',
    shell: { ...fresh, mesh: straightMesh(1, 8, 0.05), height: 0.4, rows: 8, modulusAt: () => 1e5 },
    factor: 0.1319803,
  },
  ...[
    [0.3, 1, 16, 0.1144812],
    [0.5, 0.5, 8, 0.1406785],
    [0.3, 0.6, 16, 0.2277193],
  ].map(
    ([length, height, rows, factor]): CalculixCase => ({
      name: `a plate of 20 mm held at both sides, ${length!.toFixed(1)} × ${height!.toFixed(1)} m, one stiffness`,
      element: 'C3D20R',
      shell: {
        ...fresh,
        mesh: straightMesh(length!, 8, 0.02),
        height: height!,
        rows: rows!,
        modulusAt: () => 1e5,
        held: [0, 8].map(position => ({ position, unknowns: [1] })),
      },
      factor: factor!,
    }),
  ),
  {
    name: 'a corner of 0.8 and 0.6 m, 0.6 m high, stiffening to its foot',
    element: 'S8R',
    shell: { ...fresh, mesh: cornerPlan, height: 0.6, rows: 8, modulusAt: stepped(0.6, 8, 80e3, 240e3) },
    factor: 0.1267552,
  },
  {
    name: 'two wythes on a zigzag, 0.8 m high, stiffening to their foot',
    element: 'S8R',
    shell: { ...fresh, mesh: doublePlan(), height: 0.8, rows: 8, modulusAt: stepped(0.8, 8, 200e3, 1000e3) },
    factor: 1.755485,
  },
  {
    name: 'a quarter circle of 1 m, 0.6 m high, stiffening to its foot',
    element: 'C3D20R',
    shell: { ...fresh, mesh: arcPlan, height: 0.6, rows: 8, modulusAt: stepped(0.6, 8, 80e3, 240e3) },
    factor: 0.2371393,
  },
  {
    name: 'a printed cylinder of 250 mm radius and 46 layers, stiffening to its foot',
    element: 'C3D20R',
    shell: {
      ...fresh,
      density: 2070,
      mesh: ringMesh(0.25, 24, 0.04),
      height: 0.46,
      rows: 10,
      // 0.0781 MPa + 0.0012 MPa/min, 18.85 s per layer of 10 mm, at the row's middle [Wolfs2018]
      modulusAt: at => 78100 + 20 * (((0.46 - 0.046 * (Math.floor(at / 0.046) + 0.5)) / 0.01) * 18.85),
    },
    factor: 1.083412,
  },
]
