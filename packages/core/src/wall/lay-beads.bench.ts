import createEngine, { type Engine, type EnginePaths } from 'clipper2-wasm/dist/es/clipper2z.js'
import { flattenPath, initGeometry, type Point, regionRings } from '../geometry/index.js'
import type { Metres } from '../quantity/index.js'
import type { Band } from './bead.js'
import { house } from './fixtures/house.js'
import { type BandCache, layAllBeads } from './lay-beads.js'
import { tieSetback } from './parts.js'

/**
 * The invented house from nothing, and after one box was moved, against the polygon library alone: the first row is what
 * it takes to do the booleans and offsets of every band once, paths ready in its own memory and answers left there.
 */
export async function bench(): Promise<readonly { name: string; run: () => void }[]> {
  await initGeometry()
  const kept: BandCache = new Map()
  const laid = layAllBeads(house.parts, house.sections, kept)
  const engine = await createEngine()
  const calls = laid.flatMap(({ bands }) => bands.flatMap(band => libraryCalls(engine, band)))
  const { embeds } = house.parts
  let moves = 0
  return [
    {
      name: `polygon library alone: ${calls.length} booleans and offsets`,
      run: () => {
        for (const call of calls) call()
      },
    },
    { name: 'lay all beads of a house', run: () => void layAllBeads(fresh(), house.sections) },
    {
      name: 'lay all beads after moving one box',
      run: () => {
        moves += 1
        const parts = fresh()
        const moved = parts.embeds.map((embed, i) =>
          i === moves % embeds.length ? { ...embed, at: embed.at + 0.001 * (moves % 50) } : embed,
        )
        layAllBeads({ ...parts, embeds: moved }, house.sections, kept)
      },
    },
  ]
}

/** What is remembered of a wall goes with it. */
const fresh = () => structuredClone(house.parts)

/**
 * For a band: its body made of its pieces; the wythes' and the cavity's inset; both openings that tell thin and doubled
 * places; the ties within the cavity.
 */
function libraryCalls(engine: Engine, { body, beads }: Band): readonly (() => void)[] {
  const { BooleanOpD, ClipType, ClipperD, EndType, FillRule, InflatePathsD, JoinType, PathsD } = engine
  const { print } = house.parts
  const width = print.beadWidth
  const [outline, none] = [pathsOf(engine, regionRings(body)), new PathsD()]
  const grown = (paths: EnginePaths, by: Metres, join: unknown) =>
    InflatePathsD(paths, by * nanometres, join, EndType.Polygon, 4, 0, 5e-5 * nanometres)
  const inset = (by: Metres, join: unknown) => () => grown(outline, -by, join).delete()
  const opened = (by: Metres) => {
    const shrunk = grown(outline, -by, JoinType.Miter)
    return [inset(by, JoinType.Miter), () => grown(shrunk, by, JoinType.Miter).delete()]
  }
  const room = grown(outline, -tieSetback(print), JoinType.Square)
  const ties = beads.filter(({ role }) => role === 'web').map(({ path }) => flattenPath(path))
  const lines = pathsOf(engine, ties)
  const clip = () => {
    const [clipper, closed, open] = [new ClipperD(0), new PathsD(), new PathsD()]
    clipper.AddOpenSubject(lines)
    clipper.AddClip(room)
    clipper.ExecutePath(ClipType.Intersection, FillRule.NonZero, closed, open)
    for (const handle of [clipper, closed, open]) handle.delete()
  }
  return [
    () => BooleanOpD(ClipType.Difference, FillRule.NonZero, outline, none, 0).delete(),
    inset(width / 2, JoinType.Miter),
    inset(tieSetback(print), JoinType.Square),
    ...opened(0.4975 * width),
    ...opened(0.995 * width),
    ...(ties.length > 0 ? [clip] : []),
  ]
}

const nanometres = 1e9

function pathsOf({ PathD, PathsD }: Engine, lines: readonly (readonly Point[])[]): EnginePaths {
  const paths = new PathsD()
  for (const line of lines) {
    const path = new PathD()
    path.assign(
      Float64Array.from(line.flatMap(([x, y]) => [x * nanometres, y * nanometres, 0]).map(Math.round)),
    )
    paths.push_back(path)
    path.delete()
  }
  return paths
}
