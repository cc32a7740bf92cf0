import type { Fill, Ink } from './pens.js'

/** A colour for every name. Paper takes the values; a screen may override each by a CSS variable `--draw-<name>`. */
export type Palette = Readonly<Record<Ink | Fill, string>>

/**
 * Six section tints round the wheel, each a clear step darker than the one before: told apart in grey, and so by every
 * kind of colour vision; all light enough to write on in ink.
 * Heat goes from cool and light to hot and dark (in a dark room from dark to light), each step told in grey.
 */
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
  shut: '#e8cbbb',
  open: '#dcebe1',
  lintel: '#d5d2c8',
  cut: '#f6e8c2',
  bead: '#c9cfcd',
  section0: '#d4eaf4',
  section1: '#f4d7aa',
  section2: '#bdd4c2',
  section3: '#d9baca',
  section4: '#9abccb',
  section5: '#c7a67a',
  heat0: '#eef4f8',
  heat1: '#f4ecd8',
  heat2: '#f0dcae',
  heat3: '#e9c88a',
  heat4: '#dfae6c',
  heat5: '#d09155',
  heat6: '#bc7443',
  heat7: '#a05a36',
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
  section0: '#103648',
  section1: '#4d3b1c',
  section2: '#334f3a',
  section3: '#6d4b5d',
  section4: '#3b667a',
  section5: '#856843',
  heat0: '#16232c',
  heat1: '#2b2a22',
  heat2: '#43381f',
  heat3: '#5c4620',
  heat4: '#765224',
  heat5: '#915d2b',
  heat6: '#ad6a36',
  heat7: '#c77a46',
}
