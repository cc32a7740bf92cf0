export { bandLayerVolume } from './band-volume.js'
export type { Band, Bead, BeadRole, SectionBands, Snap } from './bead.js'
export { beadLengthPerMetre, tieTurn } from './bead-length.js'
export {
  beadArea,
  beadContact,
  beadPerimeter,
  beadVolume,
  faceLoss,
  fillPitch,
  type SolidFill,
  solidFill,
  widthForPitch,
} from './bead-section.js'
export { sectionBody } from './body.js'
export { checkBrushes } from './check-brushes.js'
export { checkWalls } from './check-walls.js'
export { embedAt, embedOutline } from './embed-at.js'
export { formulas } from './formulas.js'
export { bandLimits, heightSnaps, type LayerRange, layerCount } from './heights.js'
export { type Arm, findJunctions, type Junction, junctionTolerance } from './junction.js'
export { type BandCache, type BandPlan, layAllBeads, layBeads } from './lay-beads.js'
export { layerMiddle, layersBelow } from './layers.js'
export { checkOverhang, type KnownSteps } from './overhang.js'
export { contactLap, type WallParts } from './parts.js'
export type { RawBead } from './raw-bead.js'
export { cutsThrough } from './recess.js'
export { reliefAt, reliefLean } from './relief.js'
export { stretchesOfWholePlan } from './section-plan.js'
export { solidLayers } from './solid-layers.js'
export { sayThinPlace } from './thin-words.js'
export { validateBand } from './validate-band.js'
