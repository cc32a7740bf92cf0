import { distance } from '@dawnlift/core/geometry'
import { formatQuantity } from '@dawnlift/core/quantity'
import { Button, Checkbox, Group } from '@mantine/core'
import { LengthField } from '../../../parts/index.js'
import { words } from '../../../words/index.js'
import { lengthText, type Units } from '../edits/length-text.js'
import { withoutCorner } from '../plan/chain.js'
import { pointAtLength } from '../plan/snap-point.js'
import type { Hands } from '../plan/use-hands.js'

/** While a wall is drawn: the length of the piece under way, typed if wanted, and how to end. */
export function DrawStrip({
  hands,
  units,
  finish,
}: {
  readonly hands: Hands
  readonly units: Units
  readonly finish: () => void
}) {
  const { chain, cursor } = hands
  const last = chain.points.at(-1)
  const length = last && cursor ? distance(last, cursor.point) : 0
  return (
    <section className="strip" aria-label={words.walls.tools.wall}>
      <p className="soft">{words.walls.drawKeys}</p>
      <Group gap="md" align="flex-end">
        <LengthField
          label={words.walls.lengthOfPiece}
          onEnterOnly
          value={lengthText(Number(length.toFixed(4)), units)}
          commit={async (_text, metres) => {
            if (!last || !cursor || length === 0)
              return [{ code: 'draw/no-direction', at: '', say: words.walls.noDirection }]
            const point = pointAtLength(last, cursor.point, metres)
            hands.addCorner(point)
            hands.setCursor({ point })
            return []
          }}
        />
        <Checkbox
          label={words.walls.arc}
          checked={hands.arc}
          onChange={event => hands.setArc(event.currentTarget.checked)}
        />
        <Button variant="default" disabled={!last} onClick={() => hands.setChain(withoutCorner)}>
          {words.walls.cornerBack}
        </Button>
        <Button disabled={chain.points.length < 2} onClick={finish}>
          {words.walls.finishWall}
        </Button>
        <span role="status">{words.walls.cornersSet(chain.points.length)}</span>
      </Group>
    </section>
  )
}

/** The distance between two places, along the axes and straight, in both ways of measuring. */
export function MeasureStrip({ hands }: { readonly hands: Hands }) {
  const [from, second] = hands.chain.points
  const to = second ?? hands.cursor?.point
  const both = (value: number) =>
    `${formatQuantity(value, 'length', 'metric', { unit: 'mm', step: 1 })} · ${formatQuantity(value, 'length', 'imperial')}`
  return (
    <section className="strip" aria-label={words.walls.tools.measure}>
      <p className="soft">{words.walls.measureKeys}</p>
      <p role="status">
        {from && to && (
          <>
            <strong>{both(distance(from, to))}</strong>{' '}
            <span className="soft">
              ↔ {both(Math.abs(to[0] - from[0]))}, ↕ {both(Math.abs(to[1] - from[1]))}
            </span>
          </>
        )}
      </p>
    </section>
  )
}
