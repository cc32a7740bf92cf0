import { sayQuantity, type Units } from '../limit/index.js'
import { sayTestValue, stiffness, yieldStress } from '../mix/index.js'
import type { Problem } from '../result/index.js'
import type { StandingInput } from './standing.js'

/** Units are those of the words; metric unless said. */
type Checked = StandingInput & { readonly units?: Units }

/**
 * What makes a standing check meaningless, all at once: `makeStanding` takes for granted that there is nothing here.
 * A mix that never sets is no problem of input: it stands as far as its fresh strength goes.
 */
export function checkStanding(input: Checked): readonly Problem[] {
  return [...growthProblems(input), ...ruleProblems(input), ...geometryProblems(input)]
}

function growthProblems({ mix, band = 'lower', units = 'metric' }: Checked): readonly Problem[] {
  const growth = mix[band]
  const problems: Problem[] = []
  for (const age of [0, mix.testedTo / 2, mix.testedTo]) {
    const [soft, stiff] = [yieldStress(growth.yield, age), stiffness(growth.stiffness, age)]
    if (!(soft > 0 && Number.isFinite(soft)))
      problems.push(problem('stand/no-strength', `mix.${band}.yield`, 'yield stress', soft, age, units))
    if (!(stiff > 0 && Number.isFinite(stiff)))
      problems.push(problem('stand/no-stiffness', `mix.${band}.stiffness`, 'stiffness', stiff, age, units))
  }
  if (!(mix.density > 500 && mix.density < 8000))
    problems.push(
      outside(
        'stand/density',
        'mix.density',
        mix.density,
        `${sayQuantity(500, 'kg/m³', units)} to ${sayQuantity(8000, 'kg/m³', units)}`,
        sayQuantity(mix.density, 'kg/m³', units),
      ),
    )
  if (!(mix.poisson >= 0 && mix.poisson < 0.5))
    problems.push(outside('stand/poisson', 'mix.poisson', mix.poisson, '0 … 0.499'))
  return problems
}

function ruleProblems({ rules, print, units = 'metric' }: Checked): readonly Problem[] {
  const problems: Problem[] = []
  if (!(rules.standSafety.value >= 1))
    problems.push(outside('stand/safety', 'rules.standSafety', rules.standSafety.value, '1 or more'))
  if (!(rules.imperfection.value > 0 && rules.imperfection.value <= 1))
    problems.push(
      outside('stand/imperfection', 'rules.imperfection', rules.imperfection.value, 'above 0 up to 1'),
    )
  if (!(print.layerHeight > 0))
    problems.push(
      outside(
        'stand/layer-height',
        'print.layerHeight',
        print.layerHeight,
        'above nothing',
        size(print.layerHeight, units),
      ),
    )
  return problems
}

function geometryProblems({ sections, units = 'metric' }: Checked): readonly Problem[] {
  return sections.flatMap(({ section, panels }) => {
    const at = `section ${section}`
    if (panels.length === 0)
      return [
        { code: 'stand/no-panel', at, say: `Section ${section} has no wall to stand. Give it a stretch.` },
      ]
    return panels.flatMap(({ make, length, place }) => {
      const thin = make.kind === 'double' ? make.thickness < 2 * make.bead : !(make.thickness > 0)
      return [
        ...(thin
          ? [
              outside(
                'stand/thin',
                place,
                make.thickness,
                'two beads for a double wall',
                size(make.thickness, units),
              ),
            ]
          : []),
        ...(make.kind === 'double' && !(make.pitch > make.bead)
          ? [
              outside(
                'stand/pitch',
                place,
                make.pitch,
                `more than a bead, ${size(make.bead, units)}`,
                size(make.pitch, units),
              ),
            ]
          : []),
        ...(length > 0 ? [] : [outside('stand/length', place, length, 'above nothing', size(length, units))]),
      ]
    })
  })
}

const size = (length: number, units: Units): string => sayQuantity(1000 * length, 'mm', units)

const problem = (
  code: string,
  at: string,
  what: string,
  found: number,
  age: number,
  units: Units,
): Problem => ({
  code,
  at,
  say: `The ${what} ${age === 0 ? 'at the nozzle' : `at an age of ${sayQuantity(age, 's', units)}`} is ${sayTestValue('stress', found, units)}; it has to be above 0. Check the tests the mix was fitted from, or the mix the job writes.`,
  values: { found: String(found), age },
})

const outside = (
  code: string,
  at: string,
  found: number,
  allowed: string,
  said: string = String(found),
): Problem => ({
  code,
  at,
  say: `Found ${said}; allowed is ${allowed}.`,
  values: { found: String(found), allowed },
})
