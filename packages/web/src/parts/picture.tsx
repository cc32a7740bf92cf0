import { type Drawing, toSvg } from '@dawnlift/drawing/paper'
import { useMemo } from 'react'

/** A drawing on the screen, from the same code that draws it on paper. */
export function Picture({
  drawing,
  label,
  className,
}: {
  readonly drawing: Drawing
  readonly label: string
  readonly className?: string
}) {
  const svg = useMemo(() => toSvg(drawing, { theme: 'screen' }), [drawing])
  return (
    <div
      className={`picture ${className ?? ''}`}
      role="img"
      aria-label={label}
      // biome-ignore lint/security/noDangerouslySetInnerHtml: our own drawing code, which escapes every text
      dangerouslySetInnerHTML={{ __html: svg }}
    />
  )
}
