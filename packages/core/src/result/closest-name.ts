/** Edits (insert, delete, replace, swap neighbours) that turn one word into the other. */
export function editDistance(from: string, to: string): number {
  const width = to.length + 1
  let beforeLast: number[] = []
  let last = Array.from({ length: width }, (_, column) => column)
  for (let row = 1; row <= from.length; row++) {
    const line = [row]
    for (let column = 1; column < width; column++) {
      const same = from[row - 1] === to[column - 1] ? 0 : 1
      let least = Math.min(last[column]! + 1, line[column - 1]! + 1, last[column - 1]! + same)
      const swapped =
        row > 1 && column > 1 && from[row - 1] === to[column - 2] && from[row - 2] === to[column - 1]
      if (swapped) least = Math.min(least, beforeLast[column - 2]! + 1)
      line.push(least)
    }
    beforeLast = last
    last = line
  }
  return last[width - 1]!
}

/** The known name nearest to what was typed, if it is near enough to be a slip (a third of its letters). */
export function closestName(typed: string, known: readonly string[]): string | undefined {
  const word = typed.slice(0, 60).toLowerCase()
  const ranked = known
    .map(name => ({ name, distance: editDistance(word, name.toLowerCase()) }))
    .sort((a, b) => a.distance - b.distance)
  const best = ranked[0]
  return best && best.distance <= Math.max(1, Math.floor(Math.max(word.length, best.name.length) / 3))
    ? best.name
    : undefined
}
