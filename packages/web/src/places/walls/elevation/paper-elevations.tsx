import type { Plan } from '@dawnlift/core/plan'
import { figure } from '@dawnlift/drawing/paper'
import { drawWallElevation } from '@dawnlift/drawing/views'
import { useEffect, useState } from 'react'
import { flushSync } from 'react-dom'
import { Picture } from '../../../parts/index.js'
import { words } from '../../../words/index.js'
import { sheetWords } from '../../sheet-words.js'

/** Every wall unrolled, seen from both sides: drawn only when the place goes to paper, by the code that draws the sheets. */
export function PaperElevations({ plan }: { readonly plan: Plan }) {
  if (!usePrinting()) return null
  const sheet = figure(270, 85, sheetWords(plan))
  return (
    <div className="paper-only">
      {plan.job.walls.flatMap(({ id }) =>
        (['right', 'left'] as const).map(side => (
          <Picture
            key={`${id} ${side}`}
            drawing={drawWallElevation(plan, id, sheet, { seenFrom: side })}
            label={words.walls.elevation(id, side)}
          />
        )),
      )}
    </div>
  )
}

/** True from the moment the browser is about to print; drawn at once, since it does not wait. */
function usePrinting(): boolean {
  const [printing, setPrinting] = useState(false)
  useEffect(() => {
    const begin = () => flushSync(() => setPrinting(true))
    const end = () => setPrinting(false)
    addEventListener('beforeprint', begin)
    addEventListener('afterprint', end)
    return () => {
      removeEventListener('beforeprint', begin)
      removeEventListener('afterprint', end)
    }
  }, [])
  return printing
}
