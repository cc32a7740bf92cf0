/**
 * The part of clipper2-wasm 0.4.0 that `engine.ts` uses. The package's own `types` field names a file it does not
 * ship. Coordinates travel as triples x, y, z in one typed array.
 */
declare module 'clipper2-wasm/dist/es/clipper2z.js' {
  export interface Handle {
    delete(): void
  }
  export interface EnginePath extends Handle {
    assign(coordinates: Float64Array): void
    view(): Float64Array
  }
  export interface EnginePaths extends Handle {
    push_back(path: EnginePath): void
    size(): number
    get(index: number): EnginePath
  }
  export interface EngineClipper extends Handle {
    AddSubject(paths: EnginePaths): void
    AddOpenSubject(paths: EnginePaths): void
    AddClip(paths: EnginePaths): void
    ExecutePath(clip: unknown, fill: unknown, closed: EnginePaths, open: EnginePaths): boolean
  }
  export interface Engine {
    readonly PathD: new () => EnginePath
    readonly PathsD: new () => EnginePaths
    readonly ClipperD: new (precision: number) => EngineClipper
    readonly ClipType: Readonly<Record<'Intersection' | 'Union' | 'Difference', unknown>>
    readonly FillRule: Readonly<Record<'NonZero' | 'Positive', unknown>>
    readonly JoinType: Readonly<Record<'Square' | 'Round' | 'Miter', unknown>>
    readonly EndType: Readonly<Record<'Polygon' | 'Butt' | 'Square' | 'Round', unknown>>
    BooleanOpD(
      clip: unknown,
      fill: unknown,
      subjects: EnginePaths,
      clips: EnginePaths,
      precision: number,
    ): EnginePaths
    InflatePathsD(
      paths: EnginePaths,
      delta: number,
      join: unknown,
      end: unknown,
      mitreLimit: number,
      precision: number,
      arcTolerance: number,
    ): EnginePaths
  }
  export interface EngineOptions {
    wasmBinary?: ArrayBuffer | Uint8Array
    locateFile?: (path: string, directory: string) => string
  }
  export default function createEngine(options?: EngineOptions): Promise<Engine>
}
