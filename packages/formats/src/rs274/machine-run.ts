/** A point of a machine file in metres; an axis nobody has given yet is not known. */
export interface RunPoint {
  readonly x: number | undefined
  readonly y: number | undefined
  readonly z: number | undefined
}

/** What every move tells. Speeds and times are those of the feed words; `turn` is the heading axis [rad]. */
interface MoveFacts {
  readonly line: number
  readonly from: RunPoint
  readonly to: RunPoint
  readonly length: number
  readonly turn: number
  /** Heading axis at the end of the move [rad]. */
  readonly heading: number | undefined
}

export interface RapidMove extends MoveFacts {
  readonly kind: 'rapid'
}

export interface FeedMove extends MoveFacts {
  readonly kind: 'line' | 'arc'
  /** Plan angle turned through, positive left; 0 for lines and arcs outside the XY plane. */
  readonly sweep: number
  /** Direction of travel in plan at start and end; none for a move without plan length. */
  readonly directions: readonly [number, number] | undefined
  /** Smallest and greatest x, y, z on the move. */
  readonly box: readonly [number, number, number, number, number, number]
  readonly speed: number
  readonly time: number
  readonly pump: boolean
  /** S word in force, if any was given. */
  readonly setting: number | undefined
}

/** What a machine file does, in order. */
export type RunStep =
  | RapidMove
  | FeedMove
  | { readonly kind: 'dwell'; readonly line: number; readonly seconds: number }
  | { readonly kind: 'pump'; readonly line: number; readonly on: boolean }
  | { readonly kind: 'stop'; readonly line: number; readonly message: string | undefined }

/** A machine file read back: its steps, its comments, and what a person should know about it. */
export interface MachineRun {
  readonly units: 'mm' | 'in'
  readonly steps: readonly RunStep[]
  readonly comments: readonly { readonly line: number; readonly text: string }[]
  readonly notes: readonly { readonly line: number; readonly say: string }[]
  readonly lines: number
}
