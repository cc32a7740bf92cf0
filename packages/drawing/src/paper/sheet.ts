/** What is written on the sheet besides the drawing. Date and revision come in; nothing here reads a clock. */
export interface SheetWords {
  readonly job: string
  readonly revision: string
  /** As it shall be printed, e.g. `14 July 2026`. */
  readonly date: string
  readonly number?: string
  /** Further lines in small print, e.g. a caution with its source. */
  readonly notes?: readonly string[]
}

/** Paper size and words; `frame: false` for a bare figure to be set into another page. */
export interface Sheet {
  /** mm */
  readonly width: number
  readonly height: number
  readonly words: SheetWords
  readonly frame: boolean
}

const sizes = { A4: [210, 297], A3: [297, 420], A2: [420, 594] } as const

export function paperSheet(
  size: keyof typeof sizes,
  way: 'portrait' | 'landscape',
  words: SheetWords,
): Sheet {
  const [short, long] = sizes[size]
  return way === 'portrait'
    ? { width: short, height: long, words, frame: true }
    : { width: long, height: short, words, frame: true }
}

/** A figure without frame and title block. */
export const figure = (width: number, height: number, words: SheetWords): Sheet => ({
  width,
  height,
  words,
  frame: false,
})

/** Room on paper: lower left corner and size [mm]. */
export interface Room {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

const margin = 10
export const titleHeight = 16

/** What the frame and the title block leave. */
export function drawingRoom(sheet: Sheet): Room {
  if (!sheet.frame) return { x: 1, y: 1, width: sheet.width - 2, height: sheet.height - 2 }
  const inner = margin + 4
  const foot = margin + titleHeight + 4 + 3 * (sheet.words.notes?.length ?? 0)
  return {
    x: inner,
    y: foot,
    width: sheet.width - 2 * inner,
    height: sheet.height - foot - inner,
  }
}

export const frameMargin = margin
