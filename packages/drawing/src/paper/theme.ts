import type { Fill, Ink } from './pens.js'

/** A colour for every name. Paper takes the values; a screen may override each by a CSS variable `--draw-<name>`. */
export type Palette = Readonly<Record<Ink | Fill, string>>

/** Six tints around the wheel with falling lightness: apart for all common colour vision, and in grey. */
export const paperPalette: Palette = {
  ink: '#16201f',
  soft: '#51605d',
  faint: '#9aa6a3',
  accent: '#0b5c8a',
  warn: '#9c3a12',
  water: '#1d6fb8',
  sun: '#b98500',
  paper: '#ffffff',
  void: '#ffffff',
  night: '#e4e7ec',
  shut: '#f0dfd6',
  open: '#dcebe1',
  lintel: '#d5d2c8',
  cut: '#f6e8c2',
  bead: '#c9cfcd',
  section0: '#cfe3ef',
  section1: '#f4dcae',
  section2: '#c3d8c4',
  section3: '#e6cfdd',
  section4: '#a9c3cf',
  section5: '#dcc39a',
}

export const darkPalette: Palette = {
  ink: '#eef3f1',
  soft: '#aab8b4',
  faint: '#5d6b68',
  accent: '#6fc3ee',
  warn: '#f0956b',
  water: '#86bdf2',
  sun: '#f2c44d',
  paper: '#141a19',
  void: '#141a19',
  night: '#1f2833',
  shut: '#43291d',
  open: '#1c3a2b',
  lintel: '#4a483f',
  cut: '#4d4015',
  bead: '#3c4745',
  section0: '#1d4258',
  section1: '#574316',
  section2: '#25452a',
  section3: '#4d2f42',
  section4: '#33525f',
  section5: '#5c4a26',
}
