import type { ReactNode } from 'react'

/** A table wider or taller than its place: scrolled with the finger, the wheel or the arrow keys. */
export const Scroller = ({
  label,
  tall = false,
  children,
}: {
  readonly label: string
  readonly tall?: boolean
  readonly children: ReactNode
}) => (
  // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls has to be reached by the keyboard
  <section className={tall ? 'scroller tall' : 'scroller'} aria-label={label} tabIndex={0}>
    {children}
  </section>
)
