import type { Plan } from '@dawnlift/core/plan'
import { paperPalette, sectionFill } from '@dawnlift/drawing/paper'
import { memo } from 'react'
import { ringData } from '../../../parts/index.js'

/** The printed body of each section at one layer, in the section’s tint; fainter where this layer does not stand yet. */
export const SectionTints = memo(function SectionTints({
  plan,
  layer,
  standing,
}: {
  readonly plan: Plan
  readonly layer: number
  /** Layers each section has at the moment shown. */
  readonly standing: ReadonlyMap<string, number>
}) {
  return (
    <g>
      {plan.sections.map(({ id }, index) => {
        const bands = plan.bands.find(each => each.section === id)?.bands ?? []
        const band = bands.find(each => each.fromLayer <= layer && layer <= each.toLayer)
        const fill = sectionFill(index)
        return (band?.body ?? []).map((polygon, place) => (
          <path
            // biome-ignore lint/suspicious/noArrayIndexKey: bodies have no name, and their order is fixed
            key={`${id}.${place}`}
            d={[polygon.outer, ...polygon.holes].map(ringData).join('')}
            className="tint"
            fillRule="evenodd"
            style={{ fill: `var(--draw-${fill}, ${paperPalette[fill]})` }}
            opacity={(standing.get(id) ?? 0) >= layer ? 1 : 0.45}
          />
        ))
      })}
    </g>
  )
})
