import type { Metres } from '../quantity/index.js'

/** Layer n fills the heights from (n − 1)·h to n·h; its plan is the one at its middle. */
export const layerMiddle = (layer: number, layerHeight: Metres): Metres => (layer - 0.5) * layerHeight

/** Layers whose middle lies below a height: the height snapped to whole layers; halves go down. */
export const layersBelow = (height: Metres, layerHeight: Metres): number =>
  Math.max(0, Math.ceil(height / layerHeight - 0.5 - 1e-9))
