// Draws the plans of the two demo jobs: node examples/make-drawings.mjs (after a build).
// The houses are ours; edit here, run, and look at the DXF in a drawing program.
import { writeFileSync } from 'node:fs'
import { pathLength, pathNormal, pathPoint, pathTangent } from '../packages/core/dist/geometry/index.js'
import { writeDrawing } from '../packages/formats/dist/dxf/index.js'

const FOOT = 0.3048
const INCH = 0.0254

const line = (...points) => ({ points, bulges: points.slice(1).map(() => 0), closed: false })
const ring = (...points) => ({ points, bulges: points.map(() => 0), closed: true })
const QUARTER = Math.tan(Math.PI / 8)

/** A rectangle round the origin, `width` along the wall and `depth` across it. */
const box = (width, depth) =>
  ring([-width / 2, -depth / 2], [width / 2, -depth / 2], [width / 2, depth / 2], [-width / 2, depth / 2])

/** Plan picture of a door: the leaf open to the left face, and its swing. */
const door = (width, depth) => [
  box(width, depth),
  line([-width / 2, depth / 2], [-width / 2, depth / 2 + width]),
  {
    points: [
      [width / 2, depth / 2],
      [-width / 2, depth / 2 + width],
    ],
    bulges: [QUARTER],
    closed: false,
  },
]
const window = (width, depth) => [box(width, depth), line([-width / 2, 0], [width / 2, 0])]

/** A block on a wall, turned along it; `across` is its distance to the left of the centreline. */
function onWall(walls, { wall, at, across = 0, symbol, layer, attributes }) {
  const { path } = walls.find(each => each.id === wall)
  const [x, y] = pathPoint(path, at)
  const [nx, ny] = pathNormal(path, at)
  const [tx, ty] = pathTangent(path, at)
  const turn = Math.round((Math.atan2(ty, tx) * 180 * 1e9) / Math.PI) / 1e9
  return { layer, symbol, point: [x + nx * across, y + ny * across], turn, attributes }
}

/** The wall’s mark beside it, three tenths along, on its left. */
function mark({ id, name, path }, layer, away, height) {
  const station = pathLength(path) * 0.3
  const [x, y] = pathPoint(path, station)
  const [nx, ny] = pathNormal(path, station)
  return { layer, point: [x + nx * away, y + ny * away], text: `${id}: ${name}`, height }
}

function torrenubia() {
  const walls = [
    { id: 'S', name: 'south', layer: 'A-WALL-OUTER', path: line([0, 0], [15, 0]) },
    {
      id: 'E',
      name: 'east',
      layer: 'A-WALL-OUTER',
      path: {
        points: [
          [15, 0],
          [15, 7.6],
          [12.6, 10],
        ],
        bulges: [0, QUARTER],
        closed: false,
      },
    },
    { id: 'N', name: 'north', layer: 'A-WALL-OUTER', path: line([12.6, 10], [0, 10]) },
    {
      id: 'W',
      name: 'west bow',
      layer: 'A-WALL-OUTER',
      path: {
        points: [
          [0, 10],
          [0, 0],
        ],
        bulges: [0.16],
        closed: false,
      },
    },
    { id: 'PW', name: 'kitchen and bath', layer: 'A-WALL-PLUMBING', path: line([6.2, 10], [6.2, 6.2]) },
    { id: 'C1', name: 'corridor north', layer: 'A-WALL-INNER', path: line([6.2, 6.2], [15, 6.2]) },
    { id: 'C2', name: 'corridor south', layer: 'A-WALL-INNER', path: line([6.2, 4.8], [15, 4.8]) },
    { id: 'L1', name: 'living room', layer: 'A-WALL-INNER', path: line([6.2, 0], [6.2, 4.8]) },
    { id: 'B1', name: 'bath and bedroom 3', layer: 'A-WALL-INNER', path: line([9.4, 6.2], [9.4, 10]) },
    { id: 'B2', name: 'bedrooms 1 and 2', layer: 'A-WALL-INNER', path: line([10.6, 0], [10.6, 4.8]) },
  ]
  const openings = [
    ['D1', 'S', 'patio', 3],
    ['D2', 'N', 'front-door', 7.6],
    ['D3', 'C1', 'bath-door', 1.2],
    ['D4', 'C1', 'inner-door', 4.4],
    ['D5', 'C2', 'inner-door', 3.2],
    ['D6', 'C2', 'inner-door', 5.5],
    ['F1', 'S', 'window-140', 8.4],
    ['F2', 'S', 'window-140', 12.8],
    ['F3', 'E', 'window-120', 2.4],
    ['F4', 'E', 'slot', 5.5],
    ['F5', 'N', 'window-120', 1.6],
    ['F6', 'N', 'bath-window', 4.8],
    ['F7', 'N', 'kitchen', 10.4],
    ['F8', 'W', 'window-120', 3.2],
    ['F9', 'W', 'window-120', 7],
  ]
  const columns = [
    ['K1', 'S', 0.9],
    ['K2', 'S', 5.2],
    ['K3', 'S', 14.3],
    ['K4', 'E', 7.2],
    ['K5', 'N', 3.8],
    ['K6', 'N', 8.8],
    ['K7', 'N', 12.1],
  ]
  const rooms = [
    ['living', 2.6, 3.2],
    ['kitchen', 2.8, 7.6],
    ['bath', 7.6, 8.4],
    ['corridor', 10, 5.5],
    ['bedroom 1', 12.4, 2.2],
    ['bedroom 2', 8, 2.2],
    ['bedroom 3', 11.4, 8],
  ]
  return {
    unit: 'mm',
    paths: walls,
    texts: [
      ...walls.map(wall => mark(wall, 'A-WALL-NAME', 0.3, 0.15)),
      ...rooms.map(([text, x, y]) => ({ layer: 'A-ROOM', point: [x, y], text, height: 0.2 })),
      {
        layer: 'A-ROOM',
        point: [0, -1.6],
        text: 'Casa Torrenubia, ground floor, centrelines of walls, mm',
        height: 0.25,
      },
    ],
    symbols: {
      patio: [box(2.4, 0.25), line([-1.2, 0.03], [0.1, 0.03]), line([-0.1, -0.03], [1.2, -0.03])],
      'front-door': door(1, 0.25),
      'inner-door': door(0.9, 0.2),
      'bath-door': door(0.8, 0.2),
      'window-120': window(1.2, 0.25),
      'window-140': window(1.4, 0.25),
      kitchen: window(1.6, 0.25),
      slot: window(0.6, 0.25),
      'bath-window': window(0.6, 0.25),
      column: [box(0.3, 0.25), line([-0.15, -0.125], [0.15, 0.125]), line([-0.15, 0.125], [0.15, -0.125])],
    },
    blocks: [
      ...openings.map(([id, wall, type, at]) =>
        onWall(walls, { wall, at, symbol: type, layer: 'A-OPENING', attributes: { MARK: id, TYPE: type } }),
      ),
      ...columns.map(([id, wall, at]) =>
        onWall(walls, { wall, at, symbol: 'column', layer: 'S-COLUMN', attributes: { MARK: id } }),
      ),
    ],
  }
}

function ternCottage() {
  const ft = (...feet) => feet.map(each => each * FOOT)
  const walls = [
    {
      id: 'S',
      name: 'seaward',
      layer: 'WALLS OUT',
      path: { points: [ft(0, 0), ft(20, 0), ft(24, 4)], bulges: [0, QUARTER], closed: false },
    },
    { id: 'E', name: 'east', layer: 'WALLS OUT', path: line(ft(24, 4), ft(24, 19.5)) },
    { id: 'N', name: 'hill side', layer: 'WALLS OUT', path: line(ft(24, 19.5), ft(0, 19.5)) },
    { id: 'W', name: 'west', layer: 'WALLS OUT', path: line(ft(0, 19.5), ft(0, 0)) },
    { id: 'P', name: 'bath', layer: 'WALLS IN', path: line(ft(8, 19.5), ft(8, 12)) },
    { id: 'B', name: 'bath and kitchen', layer: 'WALLS IN', path: line(ft(8, 12), ft(0, 12)) },
    { id: 'A', name: 'bed alcove', layer: 'WALLS IN', path: line(ft(14, 19.5), ft(14, 13.5)) },
  ]
  const inside = 5 * INCH
  const inner = 4 * INCH
  const embeds = [
    ['E1', 'S', 'outlet', 3.25, inside, '15 3/4 in'],
    ['E2', 'S', 'outlet', 10, inside, '15 3/4 in'],
    ['E3', 'E', 'outlet', 9.5, inside, '15 3/4 in'],
    ['E4', 'N', 'outlet', 7.5, inside, '15 3/4 in'],
    ['E5', 'W', 'switch', 10, inside, '45 3/4 in'],
    ['E6', 'W', 'outlet', 17, inside, '44 1/4 in'],
    ['E7', 'P', 'switch', 3, inner, '45 3/4 in'],
    ['E8', 'B', 'panel', 6.5, inner, '42 in'],
    ['E9', 'A', 'outlet', 2, inner, '15 3/4 in'],
    ['P1', 'B', 'vent-stack', 4, 0, '0 in'],
    ['P2', 'B', 'supply', 3, -inner, '0 in'],
    ['P3', 'B', 'supply', 2, inner, '0 in'],
    ['H1', 'N', 'fan', 17.5, 0, '84 in'],
    ['N1', 'A', 'shelf', 4, -inner, '30 in'],
    ['T1', 'A', 'shelf-plate', 4, -inner, '41 1/4 in'],
    ['R1', 'S', 'tie-down', 1, 0, '7\' 3"'],
    ['R2', 'S', 'tie-down', 10, 0, '7\' 3"'],
    ['R3', 'E', 'tie-down', 9.5, 0, '7\' 3"'],
    ['R4', 'N', 'tie-down', 12, 0, '7\' 3"'],
    ['R5', 'W', 'tie-down', 6, 0, '7\' 3"'],
    ['R6', 'W', 'tie-down', 18.5, 0, '7\' 3"'],
  ]
  const sizes = {
    outlet: [2.25, 2],
    switch: [2.25, 2],
    panel: [12, 3.5],
    'vent-stack': [3.5, 3.5],
    supply: [2.5, 2.5],
    fan: [6, 10],
    shelf: [16, 3],
    'shelf-plate': [20, 3],
    'tie-down': [2, 8],
  }
  return {
    unit: 'in',
    paths: walls,
    texts: [
      ...walls.map(wall => mark(wall, 'WALL NAMES', 0.35, 0.15)),
      { layer: 'NOTES', point: ft(10.5, 6), text: 'one room', height: 0.25 },
      { layer: 'NOTES', point: ft(2.5, 15.5), text: 'bath', height: 0.2 },
      { layer: 'NOTES', point: ft(17, 16), text: 'bed', height: 0.2 },
      { layer: 'NOTES', point: ft(0, -4), text: 'Tern Cottage, centerlines of walls, inches', height: 0.25 },
    ],
    symbols: Object.fromEntries(
      Object.entries(sizes).map(([name, [width, depth]]) => [name, [box(width * INCH, depth * INCH)]]),
    ),
    blocks: embeds.map(([id, wall, type, at, across, bottom]) =>
      onWall(walls, {
        wall,
        at: at * FOOT,
        across,
        symbol: type,
        layer: 'EMBEDS',
        attributes: { MARK: id, TYPE: type, BOTTOM: bottom },
      }),
    ),
  }
}

for (const [folder, plan] of [
  ['torrenubia', torrenubia()],
  ['tern-cottage', ternCottage()],
]) {
  const file = new URL(`${folder}/plan.dxf`, import.meta.url)
  writeFileSync(file, writeDrawing(plan))
  console.log(`${folder}/plan.dxf: ${plan.paths.length} walls, ${plan.blocks.length} blocks`)
}
