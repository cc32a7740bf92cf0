import { distance, type Path, reversePath } from '@dawnlift/core/geometry'
import { endOf, pointKey as key } from './join-ends.js'
import type { WallLine } from './wall-line.js'

/** Lines that meet end to end, two at a point and of one type and name, become one wall each. */
export function chainLines(lines: readonly WallLine[]): readonly WallLine[] {
  const nodes = new Map<string, number[]>()
  for (const [index, { path }] of lines.entries())
    if (!path.closed)
      for (const end of ['start', 'end'] as const) {
        const at = key(endOf(path, end))
        nodes.set(at, [...(nodes.get(at) ?? []), index])
      }
  const done = new Set<number>()
  const chains: WallLine[] = []
  for (const [index, line] of lines.entries()) {
    if (done.has(index)) continue
    done.add(index)
    chains.push(line.path.closed ? line : grown(line, lines, nodes, done))
  }
  return chains
}

function grown(
  first: WallLine,
  lines: readonly WallLine[],
  nodes: ReadonlyMap<string, readonly number[]>,
  done: Set<number>,
): WallLine {
  const onward = follow(first, lines, nodes, done)
  const whole = closedIfLoop(onward)
  if (whole.path.closed) return whole
  // The drawn direction of the first line is the wall's; only the search runs backwards.
  const turned = follow({ ...onward, path: reversePath(onward.path) }, lines, nodes, done)
  return closedIfLoop({ ...turned, path: reversePath(turned.path) })
}

function follow(
  from: WallLine,
  lines: readonly WallLine[],
  nodes: ReadonlyMap<string, readonly number[]>,
  done: Set<number>,
): WallLine {
  let chain = from
  for (;;) {
    const end = endOf(chain.path, 'end')
    const meeting = nodes.get(key(end)) ?? []
    const next = meeting.find(index => !done.has(index))
    const line = next === undefined ? undefined : lines[next]
    if (next === undefined || !line || meeting.length !== 2 || !fit(chain, line)) return chain
    done.add(next)
    const path = key(endOf(line.path, 'start')) === key(end) ? line.path : reversePath(line.path)
    const name = chain.name ?? line.name
    chain = { ...chain, path: appended(chain.path, path), ...(name === undefined ? {} : { name }) }
  }
}

const fit = (a: WallLine, b: WallLine): boolean =>
  a.typeName === b.typeName && (a.name === undefined || b.name === undefined || a.name === b.name)

const appended = (a: Path, b: Path): Path => ({
  points: [...a.points, ...b.points.slice(1)],
  bulges: [...a.bulges, ...b.bulges],
  closed: false,
})

function closedIfLoop(line: WallLine): WallLine {
  const { points, bulges } = line.path
  const encloses = points.length > 3 || (points.length === 3 && bulges.some(bulge => bulge !== 0))
  if (!encloses || distance(points[0]!, points.at(-1)!) > 1e-7) return line
  return { ...line, path: { points: points.slice(0, -1), bulges, closed: true } }
}
