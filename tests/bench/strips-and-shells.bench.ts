import type { Plan } from '@dawnlift/core/plan'
import { type Compared, compare, demoPlan, liftsOf } from './strips-and-shells.js'

const demos = ['tern-cottage', 'torrenubia']

/** Pieces of the plan and rows of the height twice as fine as usual. */
const twiceAsFine = { piece: 0.075, row: 1 / 12 }

/** Lifts nearest to what the shells bear are asked again on the finer mesh. */
const NEAREST = 2

/**
 * Every lift of the demos, strips against shells: minutes. The report names each lift's share, the strip that governs and
 * how often the strips lie more than a quarter under the shells. The sample of `tests/strips-and-shells.test.ts` guards it.
 */
export async function bench() {
  const plans: { readonly demo: string; readonly plan: Plan }[] = []
  for (const demo of demos) plans.push({ demo, plan: await demoPlan(demo) })
  return [
    ...plans.map(({ demo, plan }) => ({
      name: `shells of every lift of ${demo}`,
      once: true,
      run: () => {
        for (const lift of liftsOf(plan)) usual.push({ demo, plan, ...compare(plan, lift) })
      },
    })),
    {
      name: `the ${NEAREST} lifts nearest to their shells, twice as fine`,
      once: true,
      run: () => {
        const nearest = [...usual].sort((a, b) => b.share - a.share).slice(0, NEAREST)
        for (const { demo, plan, lift } of nearest)
          fine.push({ demo, plan, ...compare(plan, lift, twiceAsFine) })
      },
    },
  ]
}

type Row = Compared & { readonly demo: string; readonly plan: Plan }
const usual: Row[] = []
const fine: Row[] = []

export function report(): readonly string[] {
  const shares = usual.map(({ share }) => share)
  const under = usual.filter(({ share }) => share < 0.75)
  return [
    ...usual.map(lineOf),
    `${usual.length} lifts: strips bear ${Math.min(...shares).toFixed(2)} to ${Math.max(...shares).toFixed(2)} of the shells;`,
    `more than a quarter under them on ${under.length}, a wythe governs ${under.filter(({ buckling }) => buckling.quick.what === 'wythe').length} of them`,
    'twice as fine:',
    ...fine.map(lineOf),
  ]
}

const lineOf = ({ demo, lift, buckling, share }: Row): string =>
  `${demo} ${lift.id}, ${lift.lastLayer - lift.firstLayer + 1} layers: ${share.toFixed(3)}, shells ${buckling.factor.toFixed(2)}, strips ${buckling.quick.factor.toFixed(2)} at ${buckling.quick.place}`
