import type { Drawing, DrawingLayer, Mark, PaperPoint } from './drawing.js'
import { type Fill, type Ink, type Pen, pens, textHeights } from './pens.js'
import { darkPalette, type Palette, paperPalette } from './theme.js'

export interface SvgOptions {
  /**
   * `paper`: plain colours, for print and other programs. `screen`: every colour is a CSS variable `--draw-…` with the
   * paper's as its fallback. `dark`: plain colours on a dark ground.
   */
  readonly theme?: 'paper' | 'screen' | 'dark'
}

type Colour = (name: Ink | Fill) => string

/** The drawing as one SVG document. The only place where marks become markup. */
export function toSvg(drawing: Drawing, options: SvgOptions = {}): string {
  const colour = colours(options.theme ?? 'paper')
  const { width, height } = drawing
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${mm(width)}mm" height="${mm(height)}mm" viewBox="0 0 ${mm(width)} ${mm(height)}" role="img" font-family="DejaVu Sans Mono, ui-monospace, Menlo, Consolas, Libertinus Serif, monospace">`,
    `<title>${xmlText(drawing.title)}</title>`,
    `<desc>${xmlText(drawing.says)}</desc>`,
    `<rect width="${mm(width)}" height="${mm(height)}" ${paint('fill', colour('paper'))}/>`,
    ...drawing.layers.map(group => layerSvg(group, height, colour)),
    '</svg>',
    '',
  ].join('\n')
}

function colours(theme: 'paper' | 'screen' | 'dark'): Colour {
  const palette: Palette = theme === 'dark' ? darkPalette : paperPalette
  return theme === 'screen' ? name => `var(--draw-${name}, ${palette[name]})` : name => palette[name]
}

/** CSS variables are only read in styles, not in attributes. */
const paint = (what: 'fill' | 'stroke', colour: string): string =>
  colour.startsWith('var(') ? `style="${what}:${colour}"` : `${what}="${colour}"`

const layerSvg = (group: DrawingLayer, height: number, colour: Colour): string =>
  [
    `<g data-layer="${xmlText(group.name)}">`,
    ...group.marks.map(mark => `  ${markSvg(mark, height, colour)}`),
    '</g>',
  ].join('\n')

function markSvg(mark: Mark, height: number, colour: Colour): string {
  const told = mark.title ? `<title>${xmlText(mark.title)}</title>` : ''
  const ref = mark.ref ? ` data-ref="${xmlText(mark.ref)}"` : ''
  const element = (name: string, attributes: string, content = told): string =>
    content ? `<${name}${ref} ${attributes}>${content}</${name}>` : `<${name}${ref} ${attributes}/>`
  const y = (point: PaperPoint): PaperPoint => [point[0], height - point[1]]
  switch (mark.kind) {
    case 'line':
      return element(
        'path',
        `d="${pathData(mark.points.map(y), mark.bulges, mark.closed)}" ${strokeOf(mark.pen, mark.fill, colour)}`,
      )
    case 'ribbon':
      return element(
        'path',
        `d="${pathData(mark.points.map(y), mark.bulges, mark.closed)}" ${styled([
          ['fill', 'none'],
          ['stroke', colour(mark.fill)],
        ])} stroke-width="${mm(mark.width)}" stroke-linejoin="round" stroke-linecap="round"`,
      )
    case 'region':
      return element(
        'path',
        `d="${mark.rings.map(ring => pathData(ring.map(y), undefined, true)).join(' ')}" fill-rule="evenodd" ${strokeOf(mark.pen, mark.fill, colour)}`,
      )
    case 'circle': {
      const [cx, cy] = y(mark.at)
      return element(
        'circle',
        `cx="${mm(cx)}" cy="${mm(cy)}" r="${mm(mark.radius)}" ${strokeOf(mark.pen, mark.fill, colour)}`,
      )
    }
    case 'text':
      return element('text', textAttributes(mark, y(mark.at), colour), xmlText(mark.text) + told)
  }
}

function textAttributes(mark: Extract<Mark, { kind: 'text' }>, [x, y]: PaperPoint, colour: Colour): string {
  const turn = mark.turn ? ` transform="rotate(${mm(-mark.turn)} ${mm(x)} ${mm(y)})"` : ''
  const anchor = mark.anchor === 'start' ? '' : ` text-anchor="${mark.anchor}"`
  const face = hebrew.test(mark.text) ? ' font-family="Libertinus Serif, serif"' : ''
  const ink = colour(mark.fill ?? 'ink')
  const halo = mark.halo
    ? ` ${styled([
        ['fill', ink],
        ['stroke', colour('paper')],
      ])} stroke-width="0.7" stroke-linejoin="round" paint-order="stroke"`
    : ` ${styled([['fill', ink]])}`
  return `x="${mm(x)}" y="${mm(y)}" font-size="${textHeights[mark.height]}"${anchor}${turn}${face}${halo}`
}

function strokeOf(pen: Pen, fill: Fill | undefined, colour: Colour): string {
  const filled = fill ? colour(fill) : 'none'
  if (pen === 'none') return styled([['fill', filled]])
  const { width, ink, dash } = pens[pen]
  const dashes = dash ? ` stroke-dasharray="${dash.join(' ')}"` : ''
  return `${styled([
    ['fill', filled],
    ['stroke', colour(ink)],
  ])} stroke-width="${width}"${dashes} stroke-linejoin="round"`
}

function styled(pairs: readonly (readonly [string, string])[]): string {
  if (pairs.some(([, value]) => value.startsWith('var(')))
    return `style="${pairs.map(([name, value]) => `${name}:${value}`).join(';')}"`
  return pairs.map(([name, value]) => `${name}="${value}"`).join(' ')
}

/** Points are already turned over (y down), so a bulge that turned left turns right. */
function pathData(
  points: readonly PaperPoint[],
  bulges: readonly number[] | undefined,
  closed: boolean,
): string {
  const first = points[0]
  if (!first) return ''
  const parts = [`M${pair(first)}`]
  points.slice(1).forEach((to, index) => {
    parts.push(stepTo(points[index]!, to, bulges?.[index] ?? 0))
  })
  if (!closed) return parts.join('')
  const back = bulges?.[points.length - 1] ?? 0
  if (back !== 0) parts.push(stepTo(points[points.length - 1]!, first, back))
  return `${parts.join('')}Z`
}

function stepTo(from: PaperPoint, to: PaperPoint, bulge: number): string {
  if (bulge === 0) return `L${pair(to)}`
  const chord = Math.hypot(to[0] - from[0], to[1] - from[1])
  const radius = (chord * (1 + bulge * bulge)) / (4 * Math.abs(bulge))
  const large = Math.abs(bulge) > 1 ? 1 : 0
  return `A${mm(radius)} ${mm(radius)} 0 ${large} ${bulge > 0 ? 0 : 1} ${pair(to)}`
}

const pair = (point: PaperPoint): string => `${mm(point[0])} ${mm(point[1])}`

/** Two decimals, without trailing zeros and without −0. */
function mm(value: number): string {
  const rounded = Math.round(value * 100) / 100
  return String(rounded === 0 ? 0 : rounded)
}

/**
 * The lettering has no Hebrew: such a line is set in the serif as a whole, for a line in two faces is given to whatever
 * face of the machine has all its letters. Hebrew and Arabic in one line still are.
 */
const hebrew = /\p{Script=Hebrew}/u

/** Everything XML 1.0 does not allow: control characters and lone halves of pairs. */
const notXml = /[^\t\n\r\x20-\uD7FF\uE000-\uFFFD\u{10000}-\u{10FFFF}]/gu

const xmlText = (text: string): string =>
  text
    .replace(notXml, '')
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;')
