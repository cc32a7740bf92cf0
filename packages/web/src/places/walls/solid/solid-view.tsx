import type { Plan } from '@dawnlift/core/plan'
import { Group, SegmentedControl, Slider, useComputedColorScheme } from '@mantine/core'
import { useEffect, useMemo, useRef, useState } from 'react'
import { useApp } from '../../../state/index.js'
import { words } from '../../../words/index.js'
import { type ColourBy, colourEnds, layerShare, rampColour } from './layer-colours.js'
import type { Standing } from './look.js'
import { openStage, type Stage } from './stage.js'
import { layerClock, standingLayers } from './standing-layers.js'
import './solid.css'

/** The real beads, as they stand at the moment the campaign clock shows. */
export function SolidView({ plan }: { readonly plan: Plan }) {
  const host = useRef<HTMLDivElement>(null)
  const [stage, setStage] = useState<Stage>()
  const moment = useApp(state => state.moment)
  const [by, setBy] = useState<ColourBy>('day')
  const [cut, setCut] = useState(1)
  const [trouble, setTrouble] = useState(false)
  const first = useRef(plan)
  useEffect(() => {
    if (!host.current) return
    const made = openStage(host.current, first.current)
    void made.opened.then(isOpen => (isOpen ? setStage(made) : setTrouble(true)))
    return made.close
  }, [])
  const standing = useStanding(plan, moment, by)
  useEffect(() => stage?.show(standing), [stage, standing])
  useEffect(() => stage?.cut(cut), [stage, cut])
  const scheme = useComputedColorScheme('light')
  // The page wears its new colours one frame after the scheme has changed.
  useEffect(() => {
    const frame = requestAnimationFrame(() => scheme && stage?.follow(plan))
    return () => cancelAnimationFrame(frame)
  }, [stage, plan, scheme])
  if (trouble) return <p className="soft">{words.walls.solid.none}</p>
  return (
    <div>
      <div ref={host} className="solid" data-testid="solid" />
      <p className="soft keys" id="solid-keys">
        {words.walls.solid.keys}
      </p>
      <Group mt="xs" gap="lg">
        <SegmentedControl
          aria-label={words.walls.solid.colourBy}
          value={by}
          onChange={value => setBy(value as ColourBy)}
          data={(['day', 'age', 'strength', 'temperature'] as const).map(value => ({
            value,
            label: words.walls.solid.colours[value],
          }))}
        />
        <ColourKey by={by} />
        <span className="cutter">
          {words.walls.solid.cutOpen}{' '}
          <Slider
            w={160}
            min={0}
            max={1}
            step={0.01}
            value={cut}
            onChange={setCut}
            label={null}
            thumbLabel={words.walls.solid.cutOpen}
          />
        </span>
      </Group>
    </div>
  )
}

/** What stands at this moment, and the colour of each of its layers. */
function useStanding(plan: Plan, moment: number, by: ColourBy): Standing {
  const clock = useMemo(() => layerClock(plan), [plan])
  const shareOf = useMemo(() => layerShare(plan, clock, by), [plan, clock, by])
  return useMemo(
    () =>
      Object.fromEntries(
        Object.entries(clock).map(([section, ends]) => {
          const layers = standingLayers(ends, moment)
          const shares = Array.from({ length: layers }, (_, index) => shareOf(section, index + 1, moment))
          return [section, { layers, shares }] as const
        }),
      ),
    [clock, shareOf, moment],
  )
}

function ColourKey({ by }: { readonly by: ColourBy }) {
  const stops = [0, 0.25, 0.5, 0.75, 1].map(
    share =>
      `rgb(${rampColour(share)
        .map(part => Math.round(part * 255))
        .join(' ')})`,
  )
  return (
    <span className="soft">
      {colourEnds[by][0]}{' '}
      <span className="ramp" style={{ background: `linear-gradient(90deg, ${stops.join(', ')})` }} />{' '}
      {colourEnds[by][1]}
    </span>
  )
}
