/** Line weights and colours by name; nothing else may say a width or a colour. */
export type Pen =
  | 'none'
  | 'outline'
  | 'edge'
  | 'thin'
  | 'hair'
  | 'hidden'
  | 'axis'
  | 'dimension'
  | 'accent'
  | 'accentThick'
  | 'warn'
  | 'warnThick'
  | 'water'
  | 'tick'

export type Ink = 'ink' | 'soft' | 'faint' | 'accent' | 'warn' | 'water' | 'sun'

export interface PenLine {
  /** mm on paper. */
  readonly width: number
  readonly ink: Ink
  readonly dash?: readonly number[]
}

export const pens: Readonly<Record<Exclude<Pen, 'none'>, PenLine>> = {
  outline: { width: 0.5, ink: 'ink' },
  edge: { width: 0.3, ink: 'ink' },
  thin: { width: 0.18, ink: 'ink' },
  hair: { width: 0.09, ink: 'faint' },
  hidden: { width: 0.18, ink: 'soft', dash: [1.2, 0.8] },
  axis: { width: 0.13, ink: 'soft', dash: [4, 0.8, 0.6, 0.8] },
  dimension: { width: 0.13, ink: 'soft' },
  accent: { width: 0.3, ink: 'accent' },
  accentThick: { width: 0.7, ink: 'accent' },
  warn: { width: 0.3, ink: 'warn' },
  warnThick: { width: 0.7, ink: 'warn' },
  water: { width: 0.3, ink: 'water' },
  tick: { width: 0.25, ink: 'soft' },
}

/**
 * Fills by meaning. Sections take `section0` … `section5` in turn and always carry their letter too;
 * on paper each is light enough to write on in black, and no two are told apart by hue alone.
 */
export type Fill =
  | Ink
  | 'paper'
  | 'void'
  | 'night'
  | 'shut'
  | 'open'
  | 'lintel'
  | 'cut'
  | 'bead'
  | 'section0'
  | 'section1'
  | 'section2'
  | 'section3'
  | 'section4'
  | 'section5'
  | 'heat0'
  | 'heat1'
  | 'heat2'
  | 'heat3'
  | 'heat4'
  | 'heat5'
  | 'heat6'
  | 'heat7'

export const sectionFill = (index: number): Fill => `section${(index % 6) as 0 | 1 | 2 | 3 | 4 | 5}`

/** Text heights on paper [mm]. */
export type TextHeight = 'tiny' | 'small' | 'normal' | 'large' | 'heading'
export const textHeights: Readonly<Record<TextHeight, number>> = {
  tiny: 1.7,
  small: 2.1,
  normal: 2.6,
  large: 3.5,
  heading: 5,
}

/**
 * Drawings are lettered in a face whose letters are all 0.602 em wide, so the room a text takes is known without
 * measuring it, and is the same on every machine. `textHeights` are em sizes.
 */
export const letterWidth = 0.602
export const textWidth = (text: string, height: TextHeight): number =>
  [...text].length * letterWidth * textHeights[height]
