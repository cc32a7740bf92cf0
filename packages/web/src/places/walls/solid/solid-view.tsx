import type { Plan } from '@dawnlift/core/plan'
import { Group, SegmentedControl, Slider } from '@mantine/core'
import { useEffect, useRef, useState } from 'react'
import { PerspectiveCamera, WebGLRenderer } from 'three'
import { OrbitControls } from 'three/addons/controls/OrbitControls.js'
import { useApp } from '../../../state/index.js'
import { type ColourBy, colourEnds, rampColour } from './layer-colours.js'
import { type Detail, type HouseScene, houseScene } from './scene.js'

/** The real beads, as they stand at the moment the campaign clock shows. Drawn when something changes, never in between. */
export function SolidView({ plan }: { readonly plan: Plan }) {
  const canvas = useRef<HTMLCanvasElement>(null)
  const stage = useRef<Stage | undefined>(undefined)
  const moment = useApp(state => state.moment)
  const [by, setBy] = useState<ColourBy>('day')
  const [cut, setCut] = useState(1)
  const [trouble, setTrouble] = useState<string>()
  useEffect(() => {
    if (!canvas.current) return
    try {
      const made = openStage(canvas.current, plan)
      stage.current = made
      return () => {
        made.close()
        stage.current = undefined
      }
    } catch {
      setTrouble(
        'This browser draws no solids (WebGL 2 is off). The plan and the elevations below show the same.',
      )
      return
    }
  }, [plan])
  useEffect(() => stage.current?.show(moment, by, cut), [moment, by, cut])
  if (trouble) return <p className="soft">{trouble}</p>
  return (
    <div>
      <canvas
        ref={canvas}
        className="solid"
        aria-label="The house as it stands at the moment of the campaign clock"
        data-testid="solid"
      />
      <Group mt="xs" gap="lg">
        <SegmentedControl
          aria-label="Colour by"
          value={by}
          onChange={value => setBy(value as ColourBy)}
          data={[
            { value: 'day', label: 'print day' },
            { value: 'age', label: 'age' },
            { value: 'strength', label: 'strength' },
            { value: 'temperature', label: 'mix temperature' },
          ]}
        />
        <ColourKey by={by} />
        <span className="cutter">
          cut open{' '}
          <Slider
            w={160}
            min={0}
            max={1}
            step={0.01}
            value={cut}
            onChange={setCut}
            label={null}
            thumbLabel="Cut open"
          />
        </span>
      </Group>
    </div>
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

interface Stage {
  readonly show: (moment: number, by: ColourBy, cut: number) => void
  readonly close: () => void
}

function openStage(canvas: HTMLCanvasElement, plan: Plan): Stage {
  const renderer = new WebGLRenderer({ canvas, antialias: true, alpha: true })
  renderer.localClippingEnabled = true
  const camera = new PerspectiveCamera(38, 1, 0.1, 300)
  camera.up.set(0, 0, 1)
  const controls = new OrbitControls(camera, canvas)
  const ground = getComputedStyle(document.documentElement).getPropertyValue('--line').trim() || '#cfc8b8'
  const house: HouseScene = houseScene(plan, detailFor(renderer), ground)
  controls.target.copy(house.centre)
  let asked = false
  let placed = false
  const draw = () => {
    if (asked) return
    asked = true
    requestAnimationFrame(() => {
      asked = false
      renderer.render(house.scene, camera)
    })
  }
  const fit = () => {
    const { clientWidth, clientHeight } = canvas
    if (clientWidth === 0) return
    renderer.setPixelRatio(Math.min(2, devicePixelRatio))
    renderer.setSize(clientWidth, clientHeight, false)
    camera.aspect = clientWidth / clientHeight
    camera.updateProjectionMatrix()
    if (!placed) {
      placed = true
      // Far enough that the whole slab fits a narrow picture too.
      const away = house.size * Math.max(1.12, 1.75 / camera.aspect)
      camera.position.set(house.centre.x - away * 0.45, house.centre.y - away * 1.0, away * 0.75)
      controls.update()
    }
    draw()
  }
  const watch = new ResizeObserver(fit)
  watch.observe(canvas)
  controls.addEventListener('change', draw)
  return {
    show: (moment, by, cut) => {
      house.show(moment, by)
      house.cut(cut)
      draw()
    },
    close: () => {
      watch.disconnect()
      controls.dispose()
      house.dispose()
      renderer.dispose()
    },
  }
}

/** A processor that draws in software manages slabs smoothly, not three million facets. */
function detailFor(renderer: WebGLRenderer): Detail {
  const context = renderer.getContext()
  const facts = context.getExtension('WEBGL_debug_renderer_info')
  const name = facts ? String(context.getParameter(facts.UNMASKED_RENDERER_WEBGL)) : ''
  return /swiftshader|llvmpipe|software/i.test(name) ? 'bodies' : 'beads'
}
