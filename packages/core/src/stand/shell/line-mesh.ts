import {
  type Bounds,
  nearestOnPath,
  type Path,
  type Point,
  pathBounds,
  pathLength,
  pathPoint,
  pointStations,
} from '../../geometry/index.js'
import type { Metres } from '../../quantity/index.js'
import type { PlanEdge, PlanMesh } from './plan-mesh.js'

/** One printed line: its middle and how thick it stands. */
export interface ShellLine {
  readonly path: Path
  readonly thickness: Metres
  /** See `PlanEdge`. */
  readonly hangs?: boolean
  /** A solid wall: loops beside it are set onto it, too. */
  readonly solid?: boolean
}

/** A key of a line: where it turns, ends or touches another. Nodes that touch become one: the guest's follows its host. */
interface LineNode {
  station: Metres
  point: Point
  host: LineNode | undefined
  /** The stretch back to the node before lies against a host: it makes no edge of its own. */
  backing?: boolean
}

interface WorkLine extends ShellLine {
  readonly index: number
  readonly length: Metres
  readonly bounds: Bounds
  readonly nodes: LineNode[]
  /** Stretches along which a guest lies against this line: it is thicker there. */
  readonly backed: { readonly from: Metres; readonly to: Metres; readonly thickness: Metres }[]
}

interface Touch {
  readonly guest: LineNode
  readonly host: WorkLine
  readonly at: Metres
}

/**
 * Middle lines cut into pieces of about `piece` and joined where beads touch: an end or a turn of one line that lies
 * within half of both thicknesses of another is set onto it. A line that runs along another makes it thicker there.
 * `corners`: straight runs stay whole between the points where something turns, ends or touches.
 */
export function lineMesh(
  lines: readonly ShellLine[],
  piece: Metres,
  cut: 'pieces' | 'corners' = 'pieces',
): PlanMesh {
  const work = joined(lines)
  const positions: Point[] = []
  const indexOf = new Map<LineNode, number>()
  const position = (node: LineNode): number => {
    const root = rootOf(node)
    const known = indexOf.get(root)
    if (known !== undefined) return known
    indexOf.set(root, positions.length)
    positions.push(root.point)
    return positions.length - 1
  }
  const edges = work.flatMap(line => edgesOf(line, piece, cut, positions, position))
  return { positions, edges: edges.filter(({ from, to }) => from !== to) }
}

function joined(lines: readonly ShellLine[]): readonly WorkLine[] {
  const work = lines.map(workLine)
  for (const guest of work) joinGuest(guest, work)
  return work
}

/** Stations of a line at which others are set onto it, in order. */
export function touchedStations(lines: readonly ShellLine[]): readonly (readonly Metres[])[] {
  const work = joined(lines)
  const hosts = new Set(work.flatMap(({ nodes }) => nodes.flatMap(({ host }) => (host ? [host] : []))))
  return work.map(({ nodes }) => nodes.filter(node => hosts.has(node)).map(({ station }) => station))
}

function workLine({ path, thickness, hangs = false, solid = false }: ShellLine, index: number): WorkLine {
  const length = pathLength(path)
  const stations = pointStations(path).filter(station => !path.closed || station < length - 1e-9)
  const nodes: LineNode[] = []
  for (const station of stations) {
    const last = nodes[nodes.length - 1]
    const isEnd = !path.closed && station > length - 1e-9
    if (last && station - last.station < thickness / 3) {
      if (!isEnd || nodes.length === 1) continue
      nodes.pop()
    }
    nodes.push({ station, point: pathPoint(path, station), host: undefined })
  }
  return { path, thickness, hangs, solid, index, length, bounds: pathBounds(path), nodes, backed: [] }
}

function rootOf(node: LineNode): LineNode {
  let root = node
  while (root.host) root = root.host
  return root
}

function joinGuest(guest: WorkLine, work: readonly WorkLine[]): void {
  if (!guest.path.closed) addPeaks(guest)
  const touches = new Map<LineNode, Touch>()
  for (const host of work) {
    const reach = 1.05 * ((guest.thickness + host.thickness) / 2)
    if (host === guest || !comeNear(guest.bounds, host.bounds, reach) || !mayBear(host, guest)) continue
    const near = guest.nodes.map(node => ({ node, ...nearestOnPath(host.path, node.point) }))
    const closest = Math.min(...near.map(({ distance }) => distance))
    near.forEach(({ node, station, distance }, i) => {
      const limit = i === 0 || i === near.length - 1 ? reach : Math.min(reach, closest + guest.thickness / 5)
      if (distance <= limit && !touches.has(node)) touches.set(node, { guest: node, host, at: station })
    })
  }
  for (const touch of touches.values()) attach(touch)
  if (!guest.path.closed) backHosts(guest, touches)
}

/** A loop is what other beads are set onto; it is itself set onto a solid wall alone. */
const mayBear = (host: WorkLine, guest: WorkLine): boolean => !guest.path.closed || host.solid === true

/** Whether two boxes are within a reach of each other: most lines of a section are nowhere near most others. */
const comeNear = (a: Bounds, b: Bounds, reach: Metres): boolean =>
  [0, 1].every(k => a.least[k]! <= b.most[k]! + reach && b.least[k]! <= a.most[k]! + reach)

/** Arcs of a wave touch in their middle. */
function addPeaks(guest: WorkLine): void {
  const peaks: LineNode[] = []
  const stations = pointStations(guest.path)
  guest.path.bulges.forEach((bulge, i) => {
    if (Math.abs(bulge) < 1e-9) return
    const station = (stations[i]! + stations[i + 1]!) / 2
    peaks.push({ station, point: pathPoint(guest.path, station), host: undefined })
  })
  guest.nodes.push(...peaks)
  guest.nodes.sort((a, b) => a.station - b.station)
}

/** Sets a guest's node onto its host, at a node of the host if one is near. */
function attach({ guest, host, at }: Touch): void {
  const near = host.nodes.find(node => apart(host, node.station, at) < host.thickness / 2)
  const onto = near ?? { station: at, point: pathPoint(host.path, at), host: undefined }
  if (!near) {
    host.nodes.push(onto)
    host.nodes.sort((a, b) => a.station - b.station)
  }
  if (rootOf(onto) !== guest) guest.host = onto
}

function apart(line: WorkLine, a: Metres, b: Metres): Metres {
  const straight = Math.abs(a - b)
  return line.path.closed ? Math.min(straight, line.length - straight) : straight
}

function backHosts(guest: WorkLine, touches: ReadonlyMap<LineNode, Touch>): void {
  guest.nodes.slice(1).forEach((node, i) => {
    const [a, b] = [touches.get(guest.nodes[i]!), touches.get(node)]
    if (!a || !b || a.host !== b.host) return
    const run = node.station - guest.nodes[i]!.station
    if (Math.abs(apart(a.host, a.at, b.at) - run) > 0.1 * run + 0.01) return
    const forward = Math.abs(a.at - b.at) <= a.host.length / 2 || !a.host.path.closed
    const [low, high] = [Math.min(a.at, b.at), Math.max(a.at, b.at)]
    a.host.backed.push({
      from: forward ? low : high,
      to: forward ? high : low + a.host.length,
      thickness: guest.thickness,
    })
    node.backing = true
  })
}

function edgesOf(
  line: WorkLine,
  piece: Metres,
  cut: 'pieces' | 'corners',
  positions: Point[],
  position: (node: LineNode) => number,
): PlanEdge[] {
  const edges: PlanEdge[] = []
  const { nodes, path, length } = line
  const spans = path.closed ? nodes.length : nodes.length - 1
  const hanging = line.hangs ? { hangs: true } : {}
  for (let i = 0; i < spans; i++) {
    const [start, next] = [nodes[i]!, nodes[(i + 1) % nodes.length]!]
    if (next.backing && !path.closed) continue
    const end = i + 1 < nodes.length ? next.station : next.station + length
    const count = Math.max(
      path.closed && nodes.length < 3 ? 3 : 1,
      cut === 'corners' && isStraight(line, start.station, end)
        ? 1
        : Math.ceil((end - start.station) / piece - 1e-9),
    )
    let from = position(start)
    for (let k = 1; k <= count; k++) {
      const station = start.station + ((end - start.station) * k) / count
      const to = k === count ? position(next) : positions.push(pathPoint(path, station % length)) - 1
      const middle = start.station + ((end - start.station) * (k - 0.5)) / count
      edges.push({ from, to, thickness: line.thickness + backing(line, middle), ...hanging })
      from = to
    }
  }
  return edges
}

/** Between two keys of a line, which has a key wherever it turns: as long as its chord. */
function isStraight({ path, length }: WorkLine, from: Metres, to: Metres): boolean {
  const [a, b] = [pathPoint(path, from), pathPoint(path, to % length || to)]
  return to - from < Math.hypot(b[0] - a[0], b[1] - a[1]) + 1e-6
}

function backing(line: WorkLine, station: Metres): Metres {
  const lies = ({ from, to }: { from: Metres; to: Metres }) =>
    [0, line.length].some(lap => station + lap > from && station + lap < to)
  return Math.max(0, ...line.backed.filter(lies).map(({ thickness }) => thickness))
}
