/** G words by modal group, NISTIR 6556 table 4; tenths are written out. */
const gGroups: Readonly<Record<string, readonly number[]>> = {
  motion: [0, 1, 2, 3, 38.2, 80, 81, 82, 83, 84, 85, 86, 87, 88, 89],
  plane: [17, 18, 19],
  distance: [90, 91],
  feed: [93, 94],
  units: [20, 21],
  'cutter radius': [40, 41, 42],
  'tool length': [43, 49],
  return: [98, 99],
  system: [54, 55, 56, 57, 58, 59, 59.1, 59.2, 59.3],
  path: [61, 61.1, 64],
  'once only': [4, 10, 28, 30, 53, 92, 92.1, 92.2, 92.3],
}

/** M words by modal group, same table. */
const mGroups: Readonly<Record<string, readonly number[]>> = {
  stop: [0, 1, 2, 30, 60],
  tool: [6],
  spindle: [3, 4, 5],
  coolant: [7, 8, 9],
  override: [48, 49],
}

const byNumber = (groups: Readonly<Record<string, readonly number[]>>): ReadonlyMap<number, string> =>
  new Map(
    Object.entries(groups).flatMap(([group, numbers]) => numbers.map(number => [number, group] as const)),
  )

export const gGroup: ReadonlyMap<number, string> = byNumber(gGroups)
export const mGroup: ReadonlyMap<number, string> = byNumber(mGroups)

/** Letters of RS-274 words, table 3. */
export const letters = 'ABCDFGHIJKLMNPQRSTXYZ'

/** G words of the standard that move a tool in ways no print nozzle does; read as words, not followed. */
export const notFollowed: ReadonlySet<number> = new Set([38.2, 41, 42, 81, 82, 83, 84, 85, 86, 87, 88, 89])
