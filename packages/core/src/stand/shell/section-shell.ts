import type { Wall } from '../../job/index.js'
import { stiffness } from '../../mix/index.js'
import type { Metres } from '../../quantity/index.js'
import { failure, type Result, success } from '../../result/index.js'
import type { Section } from '../../section/index.js'
import type { Band } from '../../wall/index.js'
import type { StandRules } from '../assess-lift.js'
import { type LiftAge, layerAge } from '../lift-age.js'
import { memberFactor } from '../member-buckling.js'
import { GRAVITY, type Member, membersOf } from '../members.js'
import type { StandGeometry } from '../stand-geometry.js'
import { bandLines } from './band-lines.js'
import { bandMesh } from './band-mesh.js'
import type { ShellLine } from './line-mesh.js'
import type { ModeShape } from './mode-shape.js'
import type { PlanMesh } from './plan-mesh.js'
import { type Progress, shellBuckling } from './shell-buckling.js'

/** A lift of one section with the beads it is printed from. */
export interface SectionLift {
  readonly section: Section
  readonly walls: readonly Wall[]
  readonly bands: readonly Band[]
  readonly geometry: StandGeometry
  readonly firstLayer: number
  readonly age: LiftAge
}

interface QuickModel {
  readonly factor: number
  readonly place: string
  readonly what: Member['what']
}

/** What the shells of a whole section say, beside what the quick model says of the same lift. */
export interface SectionBuckling {
  /** Self-weight may be this many times what it is; perfect geometry, no safety taken off. */
  readonly factor: number
  /** The smallest factor of the strips the scheduler uses, and the strip that has it. */
  readonly quick: QuickModel
  readonly mode: ModeShape
  /** Where the section moves most, in the building frame, and at which height over the lift's foot. */
  readonly where: { readonly x: Metres; readonly y: Metres; readonly height: Metres }
  readonly unknowns: number
  readonly say: string
}

export type SectionAnswer =
  | { readonly kind: 'buckles'; readonly buckling: SectionBuckling }
  | { readonly kind: 'none' }
  | { readonly kind: 'cancelled' }

/**
 * Pieces of the plan and rows of the height. Against twice as fine the shells come out up to 1 % high on plain plans, and
 * 0 to 6 % on four lifts of a house (4 % and 6 % where a wythe and its wall buckle at one load). Pieces as short as a bead
 * is wide no longer settle: beads overlap where their middle lines meet in a point.
 */
export interface ShellMesh {
  readonly piece: Metres
  readonly row: Metres
}
const usualMesh: ShellMesh = { piece: 0.15, row: 1 / 6 }

/**
 * Buckling of a whole section from its actual bead plans, band over band, the lift's layers each at its own age. Where a
 * bead begins over nothing, a lintel or a box bears its weight and holds it no other way; what that hands on to its sides
 * is left out. Solid walls stand on their centrelines with their full thickness, see `bandLines`. A section without a plan
 * at these layers is a problem.
 */
export function sectionBuckling(
  lift: SectionLift,
  rules: StandRules,
  progress: Progress = () => true,
  { piece, row }: ShellMesh = usualMesh,
): Result<SectionAnswer> {
  const plans = plansOf(lift)
  if (plans.length === 0)
    return failure([
      {
        code: 'stand/no-beads',
        at: `section ${lift.section.id}`,
        say: `No bead lies in layers ${lift.firstLayer} to ${lastLayer(lift)}. Ask for layers the section has.`,
      },
    ])
  const layers = lift.age.ends.length
  const height = layers * lift.age.layerHeight
  const rows = rowsOf(plans, Math.min(row, height / 3))
  const mesh = bandMesh(
    plans.map(({ lines }) => lines),
    rows.map(({ plan }) => plan),
    piece,
  )
  const found = shellBuckling(
    {
      mesh,
      height,
      rows: rows.length,
      levels: [0, ...rows.map(({ top }) => top)],
      modulusAt: at => stiffness(rules.growth.stiffness, ageAtHeight(lift.age, at)),
      poisson: rules.poisson,
      density: rules.density,
      gravity: GRAVITY,
    },
    progress,
  )
  if (found.kind !== 'buckles') return success(found)
  const quick = quickFactor(lift, rules)
  const { position, level } = found.mode.largest
  const [x, y] = found.mode.positions[position]!
  return success({
    kind: 'buckles',
    buckling: {
      factor: found.factor,
      quick,
      mode: found.mode,
      where: { x, y, height: found.mode.heights[level]! },
      unknowns: found.unknowns,
      say: `${comparison(found.factor, quick)}${beginsOn(mesh)}`,
    },
  })
}

const lastLayer = ({ firstLayer, age }: SectionLift): number => firstLayer + age.ends.length - 1

function ageAtHeight(age: LiftAge, height: Metres): number {
  const layers = age.ends.length
  const layer = Math.min(layers, Math.floor(height / age.layerHeight) + 1)
  return layerAge(age, layer, layers)
}

/** A stretch of the lift's height with one plan, heights over the lift's foot. */
interface LiftPlan {
  readonly foot: Metres
  readonly top: Metres
  readonly lines: readonly ShellLine[]
}

function plansOf(lift: SectionLift): readonly LiftPlan[] {
  const { layerHeight } = lift.age
  return lift.bands.flatMap(band => {
    const from = Math.max(band.fromLayer, lift.firstLayer)
    const to = Math.min(band.toLayer, lastLayer(lift))
    const lines = to < from ? [] : bandLines(lift.section, lift.walls, band)
    if (lines.length === 0) return []
    return [
      {
        foot: (from - lift.firstLayer) * layerHeight,
        top: (to - lift.firstLayer + 1) * layerHeight,
        lines,
      },
    ]
  })
}

function rowsOf(plans: readonly LiftPlan[], most: Metres): readonly { plan: number; top: Metres }[] {
  return plans.flatMap(({ foot, top }, plan) => {
    const count = Math.ceil((top - foot) / most - 1e-6)
    return Array.from({ length: count }, (_, i) => ({ plan, top: foot + ((top - foot) * (i + 1)) / count }))
  })
}

function quickFactor(lift: SectionLift, rules: StandRules): QuickModel {
  const layers = lift.age.ends.length
  const foot = (lift.firstLayer - 1) * lift.age.layerHeight
  return membersOf(lift.geometry, rules, foot, foot + layers * lift.age.layerHeight)
    .map(member => ({
      place: member.place,
      what: member.what,
      factor: memberFactor(member, lift.age, layers, rules),
    }))
    .reduce((a, b) => (b.factor < a.factor ? b : a))
}

/** What of the beads begins over an opening or a box inside the lift. */
function beginsOn(mesh: PlanMesh): string {
  const isBorne = ({ rows = [], hangs }: PlanMesh['edges'][number]): boolean =>
    !hangs && rows.some((thickness, row) => row > 0 && thickness > 0 && rows[row - 1] === 0)
  if (!mesh.edges.some(isBorne)) return ''
  return ' Beads that begin over an opening or a box are taken to bear on it: a lintel or a form has to be there.'
}

function comparison(shell: number, quick: QuickModel): string {
  const share = quick.factor / shell
  const numbers = `shells ${shell.toFixed(2)}, strips ${quick.factor.toFixed(2)} at ${quick.place}`
  if (share < 0.95)
    return `The quick model is conservative here: shells bear ${(1 / share).toFixed(2)} times this (${numbers}). ${whyConservative[quick.what]}`
  if (share <= 1.05) return `The quick model and the shells agree within 5 % (${numbers}).`
  return `The quick model is ${Math.round((share - 1) * 100)} % over the shells: plan with the shells here (${numbers}).`
}

const whyConservative: Readonly<Record<Member['what'], string>> = {
  wythe:
    'It hinges a wythe at its ties, takes its widest bay from foot to top, and allows for its wall buckling with it.',
  wall: 'It takes the wall as straight, held by its returns alone, and allows for its wythes buckling with it.',
}
