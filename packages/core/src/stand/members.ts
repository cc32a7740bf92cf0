import type { WebPattern } from '../job/index.js'
import type { MixModel } from '../mix/index.js'
import type { Metres } from '../quantity/index.js'
import { makeInLift } from './bays.js'
import { curvatureGain } from './curvature.js'
import { materialWidth, softLeafLaw, tieSpacing, wallLaw } from './make-up.js'
import type { StandGeometry, StandPanel } from './stand-geometry.js'
import {
  freeShape,
  oneEndShape,
  type StripLaw,
  type StripShape,
  simplySupportedShape,
} from './strip-element.js'

export const GRAVITY = 9.81

/** One way in which one place of a section may buckle. */
export interface Member {
  readonly place: string
  readonly what: 'wall' | 'wythe'
  /** Everything its answers depend on besides mix and ages: members of one place differ from lift to lift. */
  readonly key: string
  /** Width of material that carries the weight, per metre of wall. */
  readonly weight: number
  readonly lawAt: (height: Metres) => StripLaw
  /** Enough elements to follow the waves of a wall this high. */
  readonly elementsAt: (height: Metres) => number
  /** A closed ring stands by its hoop, not as a strip. */
  readonly ring?: { readonly radius: Metres; readonly thickness: Metres }
}

/**
 * What may buckle in a lift between two heights: of every kind of panel the longest only, as a longer one is weaker.
 * A curved wall between two returns, and a curved double wall, count as straight: the curve only helps.
 */
export function membersOf(
  geometry: StandGeometry,
  mix: Pick<MixModel, 'density' | 'poisson'>,
  foot: Metres,
  top: Metres,
): readonly Member[] {
  const active = geometry.panels
    .filter(panel => panel.bottom < top - 1e-9 && panel.top > foot + 1e-9)
    .map(panel => ({ ...panel, make: makeInLift(panel, foot, top) }))
  const longest = new Map<string, StandPanel>()
  for (const panel of active) {
    const key = familyOf(panel)
    const known = longest.get(key)
    if (!known || panel.length > known.length) longest.set(key, panel)
  }
  const walls = [...longest.values()].map(panel => wallMember(panel, mix))
  return [...walls, ...wytheMembers([...longest.values()], mix)]
}

/** A curved leaf without two returns stands by its curve: a shorter arc is the weaker one there, so each counts. */
const standsByCurve = ({ supports, make, radius }: StandPanel): boolean =>
  radius !== undefined && make.kind === 'leaf' && (supports === 'none' || supports === 'one')

const familyOf = (panel: StandPanel): string =>
  JSON.stringify([
    panel.supports,
    panel.make,
    panel.supports === 'ring' || standsByCurve(panel) ? panel.radius : 0,
    standsByCurve(panel) ? panel.length : 0,
  ])

function wallMember(panel: StandPanel, mix: Pick<MixModel, 'density' | 'poisson'>): Member {
  const { make, place, supports, radius } = panel
  const shape = shapeOf(panel)
  const allowance = make.kind === 'double' ? doubleAllowance(make.web) : 1
  return {
    place,
    what: 'wall',
    key: JSON.stringify(['wall', supports, make, radius, panel.length]),
    weight: allowance * mix.density * GRAVITY * materialWidth(make),
    lawAt: height => {
      const law = wallLaw(make, height, mix.poisson, shape)
      return standsByCurve(panel) ? { ...law, own: law.own * gainOf(panel, height) } : law
    },
    elementsAt: height => elementsFor(height, panel),
    ...(supports === 'ring' && radius !== undefined ? { ring: ringOf(make, radius) } : {}),
  }
}

/** Of a double wall one wythe: it carries its own weight and is not helped by the other. */
const ringOf = (make: StandPanel['make'], radius: Metres) => ({
  radius: radius + (make.kind === 'double' ? (make.thickness - make.bead) / 2 : 0),
  thickness: make.kind === 'double' ? make.bead : make.thickness,
})

const gainOf = ({ make: { thickness }, radius, length }: StandPanel, height: Metres): number =>
  curvatureGain({ thickness, radius: radius!, length }, height)

function shapeOf(panel: StandPanel): StripShape {
  const { supports, length } = panel
  if (standsByCurve(panel)) return freeShape
  switch (supports) {
    case 'both':
      return simplySupportedShape(length)
    case 'one':
      return oneEndShape(length)
    case 'none':
    case 'ring':
      return freeShape
  }
}

/**
 * Where bays were not measured: those beside corners and junctions are longer than the web's pitch. And everywhere the
 * ties of one wythe rest on the other one between its own ties, cross ties, a ladder, are softer than their formula, and a
 * wythe and its wall that would buckle at one load buckle together under it: 1.1 without the last, 1.22 with it.
 * On 29 lifts of two whole houses with their boxes and chases, band over band, the weakest strip bears 0.64 to 0.93 of what
 * the shells bear, and on the nearest of them 0.98 of shells twice as fine: there the two modes fall together. It is more than
 * a quarter under them where a wythe alone governs: nothing buckles with it, and the strip has hinges at its ties and the bay
 * from foot to top, while the wythe runs on past them and the bay does not. Up to 36 % under them there.
 */
const BAY_ALLOWANCE = 1.08
const doubleAllowance = (web: WebPattern): number => (web === 'crosstie' ? 1.2 : 1.22)

/** Each wythe as a plate between its ties: the widest bay counts. */
function wytheMembers(
  panels: readonly StandPanel[],
  mix: Pick<MixModel, 'density' | 'poisson'>,
): readonly Member[] {
  const weakest = new Map<number, Member & { readonly bay: Metres }>()
  for (const { make, place, bays } of panels) {
    if (make.kind !== 'double') continue
    const bay = (bays ? 1 : BAY_ALLOWANCE) * tieSpacing(make)
    if ((weakest.get(make.bead)?.bay ?? 0) >= bay) continue
    const shape = simplySupportedShape(bay)
    weakest.set(make.bead, {
      bay,
      place: `${place}, a wythe between its ties`,
      what: 'wythe',
      key: JSON.stringify(['wythe', make.bead, make.web, bay]),
      weight: doubleAllowance(make.web) * mix.density * GRAVITY * make.bead,
      lawAt: height => softLeafLaw(make.bead, height, mix.poisson, shape),
      elementsAt: height => clampElements((5 * height) / tieSpacing(make)),
    })
  }
  return [...weakest.values()]
}

function elementsFor(height: Metres, { supports, length, make }: StandPanel): number {
  if (make.kind === 'double') return clampElements(10 + (5 * height) / (supports === 'both' ? length : 10))
  return clampElements(supports === 'both' ? 8 + (4 * height) / length : 8)
}

const clampElements = (wanted: number): number => Math.max(8, Math.min(48, Math.ceil(wanted)))
