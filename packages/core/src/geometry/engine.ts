import createEngine, {
  type Engine,
  type EngineOptions,
  type EnginePaths,
  type Handle,
} from 'clipper2-wasm/dist/es/clipper2z.js'
import { assert } from '../result/index.js'
import type { Point } from './path.js'

/** Where the polygon engine finds its binary; by default beside its own module, in Node and in a bundle alike. */
export interface GeometryOptions {
  readonly wasmBinary?: ArrayBuffer | Uint8Array
  readonly locateFile?: (path: string, directory: string) => string
}

/** Coordinates are whole nanometres inside the engine: areas of a house plan then agree to a square millimetre. */
const unitsPerMetre = 1e9

let engine: Engine | undefined
let starting: Promise<Engine> | undefined

/** Loads the polygon engine, once; later calls wait for the same load. Everything after it is synchronous. */
export async function initGeometry(options: GeometryOptions = {}): Promise<void> {
  starting ??= createEngine({ ...options } as EngineOptions)
  try {
    engine = await starting
  } catch (reason) {
    starting = undefined
    throw reason
  }
}

export function polygonEngine(): Engine {
  assert(engine, 'initGeometry has run before any polygon is computed')
  return engine
}

export const toEngine = (metres: number): number => metres * unitsPerMetre

/** Keeps every handle made inside and frees them all, whatever happens. */
export function withHandles<T>(work: (keep: <H extends Handle>(handle: H) => H) => T): T {
  const handles: Handle[] = []
  try {
    return work(handle => {
      handles.push(handle)
      return handle
    })
  } finally {
    for (const handle of handles) handle.delete()
  }
}

export function writePaths(lines: readonly (readonly Point[])[]): EnginePaths {
  const { PathD, PathsD } = polygonEngine()
  const paths = new PathsD()
  for (const line of lines) {
    const flat = new Float64Array(line.length * 3)
    line.forEach(([x, y], i) => {
      assert(Number.isFinite(x) && Number.isFinite(y), 'coordinates are finite')
      flat[3 * i] = Math.round(x * unitsPerMetre)
      flat[3 * i + 1] = Math.round(y * unitsPerMetre)
    })
    const path = new PathD()
    path.assign(flat)
    paths.push_back(path)
    path.delete()
  }
  return paths
}

export function readPaths(paths: EnginePaths): Point[][] {
  return Array.from({ length: paths.size() }, (_, i) => {
    const path = paths.get(i)
    const flat = path.view()
    const points: Point[] = []
    for (let k = 0; k < flat.length; k += 3)
      points.push([flat[k]! / unitsPerMetre, flat[k + 1]! / unitsPerMetre])
    path.delete()
    return points
  })
}
