import { useApp } from '../../state/index.js'
import { words } from '../../words/index.js'

/** How the days shown came about, where they were held after an edit. */
export function HeldNote() {
  const heldDays = useApp(state => state.heldDays)
  return (
    <div role="status" data-testid="held-days">
      {heldDays && <p className="soft">{words.heldDays[heldDays]}</p>}
    </div>
  )
}
