import { type Bounds, type Point, pathBounds } from '@dawnlift/core/geometry'
import type { Plan } from '@dawnlift/core/plan'
import { ActionIcon, Group, SegmentedControl } from '@mantine/core'
import { type ReactNode, useMemo, useRef } from 'react'
import { pathData } from '../../../parts/index.js'
import { useApp } from '../../../state/index.js'
import { words } from '../../../words/index.js'
import { ChangeLine } from '../change-line.js'
import type { Draft } from '../draft.js'
import { applyEdits } from '../edits/apply-edits.js'
import { type Added, newWall } from '../edits/new-parts.js'
import { removeEdits } from '../edits/part-edits.js'
import { bringBackEdits, leftOut, listOf, takeOutEdits } from '../edits/take-out.js'
import { DrawStrip, MeasureStrip } from '../facts/draw-strip.js'
import { FactsStrip } from '../facts/facts-strip.js'
import { useWritten } from '../facts/use-written.js'
import { type PinnedFinding, pinnedFindings } from '../findings.js'
import { FindingsList } from '../findings-list.js'
import { LeftOut } from '../left-out.js'
import { standingLayers } from '../standing.js'
import { findThing, type Thing } from '../thing.js'
import { sayThing } from '../thing-text.js'
import { chainPath } from './chain.js'
import { planKey } from './plan-keys.js'
import { optionId, PlanNames, PlanPins, PlanThings } from './plan-picture.js'
import { SectionTints } from './section-tints.js'
import { type Tool, useHands } from './use-hands.js'
import { useView, type Window } from './use-view.js'
import { toScreen } from './view.js'
import './plan.css'

/** The plan at one layer, to look at and to change, with what is chosen and what the change did under it. */
export function PlanBoard({
  plan,
  draft,
  drawn,
  layer,
  chosen,
  choose,
  beside,
}: {
  readonly plan: Plan
  readonly draft: Draft
  readonly drawn: ReadonlySet<string>
  readonly layer: number
  readonly chosen: Thing | undefined
  readonly choose: (thing: Thing | undefined) => void
  /** What stands at the plan’s side. */
  readonly beside: ReactNode
}) {
  const moment = useApp(state => state.moment)
  const units = useApp(state => state.units)
  const written = useWritten()
  const host = useRef<HTMLDivElement>(null)
  const window = useView(
    host,
    useMemo(() => boundsOf(draft), [draft]),
  )
  const hands = useHands(draft, window, chosen, choose)
  const standing = useMemo(() => standingLayers(plan, moment), [plan, moment])
  const pins = useMemo(() => pinnedFindings(draft, plan.findings), [draft, plan])
  const { view, size } = window
  const frame = `translate(${size.width / 2 - view.middle[0] * view.scale} ${size.height / 2 + view.middle[1] * view.scale}) scale(${view.scale} ${-view.scale})`

  const apply = async (make: Parameters<typeof applyEdits>[0]) => {
    const problems = await applyEdits(make)
    hands.setWrong(problems.length > 0 ? problems.map(each => each.say).join(' ') : undefined)
  }
  const remove = () => void (chosen && apply(raw => takeOutEdits(raw, draft, chosen, drawn)))
  const asDrawn = () => void (chosen && apply(raw => removeEdits(raw, listOf(chosen.kind), chosen.id)))
  const finish = async () => {
    if (hands.chain.points.length < 2) return
    const like = chosen?.kind === 'wall' ? chosen.id : undefined
    let added: Added | undefined
    const problems = await applyEdits(raw => {
      added = newWall(raw, draft, hands.chain, like)
      return added.edits
    })
    if (!added || problems.length > 0) return hands.setWrong(problems.map(each => each.say).join(' '))
    hands.setTool('choose')
    choose(added.thing)
  }
  const goTo = (pin: PinnedFinding) => {
    if (pin.thing) choose(pin.thing)
    if (pin.point) window.show(pin.point)
  }
  const held = hands.inHand && chosen ? sayThing(hands.shown, chosen, units) : undefined
  return (
    <div className="walls-top">
      <section className="sheet plan-sheet" aria-label={words.walls.plan(layer)}>
        <Group justify="space-between" mb="xs">
          <h2>{words.walls.plan(layer)}</h2>
          <Tools tool={hands.tool} setTool={hands.setTool} window={window} />
        </Group>
        <div
          ref={host}
          id="walls-plan"
          className={`plan picture ${hands.tool}`}
          role="listbox"
          tabIndex={0}
          aria-label={words.walls.plan(layer)}
          aria-describedby="walls-plan-keys"
          aria-activedescendant={chosen && findThing(draft, chosen) ? optionId(chosen) : undefined}
          onKeyDown={event =>
            planKey(event, {
              draft,
              chosen,
              choose,
              hands,
              window,
              remove,
              finish: () => void finish(),
            })
          }
          {...hands.pointer}
        >
          <svg width={size.width} height={size.height} role="presentation">
            <g transform={frame}>
              <SectionTints plan={plan} layer={layer} standing={standing} />
              <PlanThings draft={hands.shown} chosen={chosen} layer={layer} units={units} choose={choose} />
              <DrawnChain hands={hands} />
            </g>
            {/* biome-ignore lint/a11y/noAriaHiddenOnFocusable: nothing in it takes the focus; the options and the list of findings say it all */}
            <g aria-hidden="true">
              <PlanNames draft={hands.shown} chosen={chosen} view={view} size={size} />
              <Grips draft={hands.shown} chosen={chosen} window={window} />
              {hands.cursor && <Cross at={toScreen(view, size, hands.cursor.point)} />}
              <PlanPins pins={pins} view={view} size={size} choose={goTo} />
            </g>
          </svg>
        </div>
        <p className="plan-say" role="status">
          {[held, hands.lineUp && `— ${hands.lineUp}`].filter(Boolean).join(' ')}
        </p>
      </section>
      <section className="sheet under-plan" aria-label={words.walls.underPlan}>
        {hands.wrong && (
          <p className="limit" role="alert">
            {hands.wrong}
          </p>
        )}
        <ChangeLine plan={plan} />
        {hands.tool === 'choose' && (
          <FactsStrip
            key={chosen ? optionId(chosen) : 'nothing'}
            draft={draft}
            drawn={drawn}
            chosen={chosen}
            choose={choose}
            hands={hands}
            remove={remove}
            asDrawn={asDrawn}
          />
        )}
        {hands.tool === 'wall' && <DrawStrip hands={hands} units={units} finish={() => void finish()} />}
        {hands.tool === 'measure' && <MeasureStrip hands={hands} />}
        <FindingsList pins={pins} goTo={goTo} />
        <LeftOut ids={leftOut(written)} bringBack={id => void apply(raw => bringBackEdits(raw, id))} />
        <p id="walls-plan-keys" className="soft keys">
          {words.walls.planKeys}
        </p>
      </section>
      <div className="beside-plan">{beside}</div>
    </div>
  )
}

function Tools({
  tool,
  setTool,
  window,
}: {
  readonly tool: Tool
  readonly setTool: (tool: Tool) => void
  readonly window: Window
}) {
  const { tools, zoomIn, zoomOut, zoomAll } = words.walls
  return (
    <Group gap="sm">
      <SegmentedControl
        aria-label={tools.label}
        value={tool}
        onChange={value => setTool(value as Tool)}
        data={(['choose', 'wall', 'measure'] as const).map(value => ({ value, label: tools[value] }))}
      />
      <ActionIcon.Group>
        <ActionIcon variant="default" size={44} onClick={() => window.zoom(0.8)} aria-label={zoomOut}>
          −
        </ActionIcon>
        <ActionIcon variant="default" size={44} onClick={window.fit} aria-label={zoomAll}>
          ⤢
        </ActionIcon>
        <ActionIcon variant="default" size={44} onClick={() => window.zoom(1.25)} aria-label={zoomIn}>
          +
        </ActionIcon>
      </ActionIcon.Group>
    </Group>
  )
}

function DrawnChain({ hands }: { readonly hands: ReturnType<typeof useHands> }) {
  const { chain, cursor, tool } = hands
  const whole = tool === 'measure' && chain.points.length > 1
  const path = chainPath(chain, whole ? undefined : cursor?.point)
  return path ? <path className="chain" d={pathData(path)} /> : null
}

/** What an end of a chosen wall is taken by. */
function Grips({
  draft,
  chosen,
  window: { view, size },
}: {
  readonly draft: Draft
  readonly chosen: Thing | undefined
  readonly window: Window
}) {
  const found = findThing(draft, chosen)
  if (found?.kind !== 'wall' || found.wall.centreline.closed) return null
  const { points } = found.wall.centreline
  return (
    <g className="grips">
      {[points[0]!, points.at(-1)!].map((point, index) => {
        const [x, y] = toScreen(view, size, point)
        return <circle key={index === 0 ? 'start' : 'end'} cx={x} cy={y} r={8} />
      })}
    </g>
  )
}

const Cross = ({ at: [x, y] }: { readonly at: Point }) => (
  <path className="cross" d={`M${x - 14} ${y}H${x + 14}M${x} ${y - 14}V${y + 14}`} />
)

/** Round all walls at their full thickness. */
function boundsOf(draft: Draft): Bounds {
  const boxes = draft.walls.map(wall => ({ ...pathBounds(wall.centreline), half: wall.thickness / 2 }))
  const outer = (axis: 0 | 1, side: 'least' | 'most') =>
    boxes.map(box => box[side][axis] + (side === 'least' ? -box.half : box.half))
  if (boxes.length === 0) return { least: [0, 0], most: [10, 6] }
  return {
    least: [Math.min(...outer(0, 'least')), Math.min(...outer(1, 'least'))],
    most: [Math.max(...outer(0, 'most')), Math.max(...outer(1, 'most'))],
  }
}
